// A bank's life at a plan's use, from the text of a plan to the dates.
#include <algorithm>

#include "app/ageing_laws.h"
#include "app/parallel.h"
#include "engine/advise/bank_life.h"
#include "engine/advise/between_seasons.h"
#include "files/climate.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

const files::AgeingCatalogue& laws() {
  static const files::AgeingCatalogue kLaws = files::read_ageing_catalogue().value();
  return kLaws;
}

const files::ClimateTable& climates() {
  static const files::ClimateTable kClimates = files::ClimateTable::built_in().value();
  return kClimates;
}

/// Down every night, filled every day, for a month; the cabin is at 25 degC.
Practice nightly(const std::string& power) {
  Practice practice = nightly_on_mains(power, 30);
  practice.plan().seasons = 8;
  return practice;
}

advise::BankLife life_of(const Practice& practice, const advise::Candidate& candidate, unsigned threads) {
  const advise::Proving proving(practice.plan(), practice.skies(), climates().matrices());
  advise::LifeQuestion question;
  question.plan = &practice.plan();
  question.skies = practice.skies();
  question.proving = &proving;
  question.candidate = candidate;
  question.speaking = app::speaking_for(*candidate.chemistry, laws());
  return advise::bank_life(question, app::on_threads(threads), {});
}

/// Years to 80 % by the leading law if the use of the present level never changed, of the whole bank.
double without_feedback(const Practice& practice, const advise::Candidate& candidate,
                        const advise::BankLife& life, bool with_swings) {
  const ageing::Exposure rest =
      advise::rest_of_year(practice.plan(), practice.skies(), *candidate.chemistry, 1.0);
  ageing::YearOfUse year =
      advise::year_at(life.levels, life.present, advise::seasons_per_year(practice.plan()), rest);
  if (!with_swings) {
    for (ageing::Recurring& part : year) part.exposure.swings.clear();
  }
  const advise::Speaking speaking = app::speaking_for(*candidate.chemistry, laws());
  for (const ageing::Opinion& opinion : speaking.opinions) {
    if (opinion.id == life.leading()->id)
      return life.weakest_life * ageing::years_until(*opinion.law, year, 0.8, 60.0).value_or(60.0);
  }
  return 0.0;
}

TEST(BankLife, OfAnIronPhosphateBank) {
  const Practice practice = nightly("150 W");
  const advise::Candidate bank = practice.bank("lfp-12v-100ah");
  const advise::BankLife life = life_of(practice, bank, 2);
  ASSERT_NE(life.leading(), nullptr);
  EXPECT_TRUE(life.carries_now);
  EXPECT_EQ(life.present, 1.0);
  // 30 nights of 58 Ah, once a year.
  EXPECT_NEAR(life.cycles_per_year, 30.0 * 0.6, 3.0);
  // 80 % comes before 70 %, by every law.
  for (const advise::LawLife& law : life.laws)
    EXPECT_LE(law.ends.at_80.value_or(60.0), law.ends.at_70.value_or(60.0)) << law.id;
  EXPECT_LE(life.at_80.typical, life.at_70.typical);
  EXPECT_LT(life.at_80.min, life.at_80.typical);
  EXPECT_GT(life.at_80.max, life.at_80.typical);
  // Four cells of which the weakest counts: below the mean cell, 1 - 0.136 x 1.03 by the expected extreme.
  EXPECT_NEAR(life.weakest_life, 0.86, 0.03);
  // The whole answer depends on the seed alone.
  const advise::BankLife again = life_of(practice, bank, 1);
  ASSERT_EQ(again.laws.size(), life.laws.size());
  for (std::size_t i = 0; i < life.laws.size(); ++i) {
    ASSERT_EQ(again.laws[i].course.size(), life.laws[i].course.size());
    for (std::size_t k = 0; k < life.laws[i].course.size(); ++k) {
      EXPECT_EQ(again.laws[i].course[k].capacity, life.laws[i].course[k].capacity);
      EXPECT_EQ(again.laws[i].course[k].years, life.laws[i].course[k].years);
    }
  }
  EXPECT_EQ(again.at_80.min, life.at_80.min);
  EXPECT_EQ(again.plan.max, life.plan.max);
}

TEST(BankLife, FeedbackMakesItShorterOrEqual) {
  const Practice practice = nightly("108 W");
  for (const char* battery : {"agm-12v-98ah", "flooded-12v-100ah", "lfp-12v-100ah"}) {
    const advise::Candidate bank = practice.bank(battery);
    const advise::BankLife life = life_of(practice, bank, 2);
    ASSERT_NE(life.leading(), nullptr) << battery;
    // Deeper swings lie lower: where time does most of it that may win back a hundredth.
    EXPECT_LE(life.leading()->ends.at_80.value_or(60.0), 1.01 * without_feedback(practice, bank, life, true))
        << battery;
  }
}

TEST(BankLife, WithoutUseItIsTheCalendarLife) {
  const Practice practice = nightly("0.01 W");
  const advise::Candidate bank = practice.bank("lfp-12v-100ah");
  const advise::BankLife life = life_of(practice, bank, 2);
  ASSERT_NE(life.leading(), nullptr);
  EXPECT_LT(life.cycles_per_year, 0.1);
  const double calendar = without_feedback(practice, bank, life, false);
  EXPECT_NEAR(life.leading()->ends.at_80.value_or(60.0), calendar, 0.05 * calendar);
}

// The plan's own end: a night that takes three quarters of a new bank cannot be carried by 70 % of it.
TEST(BankLife, ThePlanEndsBeforeTheBankDoes) {
  const Practice practice = nightly("180 W");
  const advise::BankLife life = life_of(practice, practice.bank("lfp-12v-100ah"), 2);
  EXPECT_TRUE(life.carries_now);
  ASSERT_TRUE(life.plan_ends);
  EXPECT_LT(life.plan.typical, life.at_70.typical);
  EXPECT_EQ(life.levels.back().chance.events, life.levels.back().chance.seasons);
}

TEST(BankLife, ABankTooSmallDoesNotCarryThePlanNow) {
  const Practice practice = nightly("400 W");
  const advise::BankLife life = life_of(practice, practice.bank("lfp-12v-100ah"), 2);
  EXPECT_FALSE(life.carries_now);
  EXPECT_EQ(life.plan.typical, 0.0);
  EXPECT_TRUE(advise::stated(life.plan).past);
}

TEST(BankLife, OfAWornBankCountsFromNow) {
  const Practice practice = nightly("60 W");
  advise::Candidate bank = practice.bank("agm-12v-98ah");
  const advise::BankLife fresh = life_of(practice, bank, 2);
  bank.layout.lost_capacity = 0.1;
  const advise::BankLife worn = life_of(practice, bank, 2);
  EXPECT_NEAR(worn.present, 0.9, 1e-12);
  EXPECT_LT(worn.at_80.typical, fresh.at_80.typical);
  bank.layout.lost_capacity = 0.25;
  const advise::BankLife old = life_of(practice, bank, 2);
  EXPECT_TRUE(advise::stated(old.at_80).past);
  EXPECT_FALSE(advise::stated(old.at_70).past);
}

TEST(BetweenSeasons, FillTheYear) {
  const Practice practice = nightly("60 W");
  const cell::Chemistry& agm = *catalogue().chemistry("agm");
  const ageing::Exposure rest = advise::rest_of_year(practice.plan(), practice.skies(), agm, 1.0);
  EXPECT_NEAR(rest.hours, ageing::kHoursOfYear - 30.0 * 24.0, 1e-6);
  EXPECT_NEAR(rest.plates.hours, rest.hours, 1e-6);
  double summed = 0.0;
  for (const ageing::Dwell& dwell : rest.dwell) {
    summed += dwell.hours;
    EXPECT_EQ(dwell.soc, 1.0);
  }
  EXPECT_NEAR(summed, rest.hours, 1e-6);
  EXPECT_EQ(advise::seasons_per_year(practice.plan()), 1.0);
}

}  // namespace
}  // namespace voltwright::whole
