// Verdicts on trials made by hand.
#include "engine/advise/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/advise/recommendation.h"

namespace voltwright::advise {
namespace {

class Verdicts : public ::testing::Test {
 protected:
  Verdicts() {
    chemistry_.limits.discharge_min_C = -20.0;
    chemistry_.limits.discharge_max_C = 60.0;
    battery_.name = "B";
    battery_.mass_kg = {10.0, 12.0, 14.0};
    battery_.price = {200.0, 300.0, 400.0};
    battery_.continuous_A = 100.0;
    plan_.limits.chance_of_shortfall = units::fraction(0.05);
  }
  /// A trial of `seasons`, the first `short_of` of which ran short.
  Trial trial(int seasons, int short_of, int in_parallel = 1) const {
    Trial t;
    t.candidate.battery = &battery_;
    t.candidate.chemistry = &chemistry_;
    t.candidate.layout = {1, in_parallel, 0.0};
    t.candidate.figures = bank::bank_figures(battery_, t.candidate.layout);
    t.minutes = 43200.0;
    t.lowest_V = 12.0;
    t.highest_V = 14.4;
    t.coldest_C = 5.0;
    t.hottest_C = 30.0;
    for (int i = 0; i < seasons; ++i) {
      SeasonNote note;
      note.season = static_cast<std::uint64_t>(i);
      note.ran_short = i < short_of;
      t.seasons.push_back(note);
    }
    t.wear_shortest.by_calendar = t.wear_typical.by_calendar = t.wear_longest.by_calendar =
        seasons * t.minutes / (60.0 * 8766.0) / 10.0;  // ten years
    return t;
  }
  Verdict of(Matter matter, const Trial& t) const {
    for (const Verdict& v : verdicts_on(plan_, t)) {
      if (v.matter == matter) return v;
    }
    ADD_FAILURE() << "no such verdict";
    return {};
  }

  cell::Chemistry chemistry_;
  bank::Battery battery_;
  Plan plan_;
};

// The interval decides: 0 of 100 lies below 5 %, 20 of 100 above it, 0 of 20 and 4 of 100 contain it.
TEST_F(Verdicts, ShortfallByItsInterval) {
  EXPECT_EQ(of(Matter::kShortfall, trial(100, 0)).holding, Holding::kHolds);
  EXPECT_EQ(of(Matter::kShortfall, trial(73, 0)).holding, Holding::kHolds);
  EXPECT_EQ(of(Matter::kShortfall, trial(72, 0)).holding, Holding::kNotKnown);
  EXPECT_EQ(of(Matter::kShortfall, trial(100, 4)).holding, Holding::kNotKnown);
  EXPECT_EQ(of(Matter::kShortfall, trial(100, 20)).holding, Holding::kFallsShort);
}

TEST_F(Verdicts, EveryMissHasARemedy) {
  Trial t = trial(100, 50);
  t.highest_V = 16.0;
  t.highest_discharge_A = 150.0;
  t.hottest_C = 70.0;
  plan_.limits.mass = units::kilograms(11.0);
  plan_.limits.price = units::money(250.0);
  plan_.limits.life = units::years(15.0);
  int misses = 0;
  for (const Verdict& v : verdicts_on(plan_, t)) {
    if (v.holding == Holding::kHolds) continue;
    ++misses;
    EXPECT_FALSE(v.reason.empty()) << name_of(v.matter);
    EXPECT_FALSE(v.remedy.empty()) << name_of(v.matter);
  }
  EXPECT_EQ(misses, 6);
}

// Electronics open the circuit outside the window, which shows in the shortfall; without them the bank is
// harmed.
TEST_F(Verdicts, TemperatureIsAMissWithoutElectronics) {
  Trial t = trial(100, 0);
  t.hottest_C = 70.0;
  EXPECT_EQ(of(Matter::kTemperature, t).holding, Holding::kHolds);
  battery_.has_protection = false;
  EXPECT_EQ(of(Matter::kTemperature, t).holding, Holding::kFallsShort);
  EXPECT_FALSE(of(Matter::kTemperature, t).remedy.empty());
}

TEST_F(Verdicts, LimitsThatAreNotGivenAreNotAsked) {
  for (const Verdict& v : verdicts_on(plan_, trial(100, 0))) {
    EXPECT_NE(v.matter, Matter::kMass);
    EXPECT_NE(v.matter, Matter::kPrice);
    EXPECT_NE(v.matter, Matter::kLife);
    EXPECT_NE(v.matter, Matter::kStart);
  }
}

TEST_F(Verdicts, LimitsIncludeTheirOwnValue) {
  plan_.limits.mass = units::kilograms(12.0);
  EXPECT_EQ(of(Matter::kMass, trial(100, 0)).holding, Holding::kHolds);
  EXPECT_EQ(of(Matter::kMass, trial(100, 0, 2)).holding, Holding::kFallsShort);
}

// A catalogue price in dollars says nothing about a limit in euros until the plan says what a dollar costs,
// or gives its own price.
TEST_F(Verdicts, PriceInAnotherCurrencyIsNotKnown) {
  battery_.id = "b";
  plan_.currency = "EUR";
  plan_.limits.price = units::money(280.0);
  Verdict v = of(Matter::kPrice, trial(100, 0));
  EXPECT_EQ(v.holding, Holding::kNotKnown);
  EXPECT_TRUE(std::isnan(v.value));
  EXPECT_EQ(v.unit, "EUR");
  EXPECT_NE(v.reason.find("USD of 2025"), std::string::npos) << v.reason;
  EXPECT_NE(v.remedy.find("[[money.price]] with battery = \"b\""), std::string::npos) << v.remedy;
  const Recommendation r = recommend(plan_, {trial(100, 0)});
  EXPECT_EQ(r.best, -1);
  EXPECT_EQ(r.ranking[0].holding, Holding::kNotKnown);
  EXPECT_EQ(r.sentences[0], "Of nothing here it is known that it holds.");
  EXPECT_EQ(price_currency_of(r), "USD");

  plan_.money = cost::Money{};
  plan_.money->per_dollar = 0.9;  // 300 USD are 270 EUR
  v = of(Matter::kPrice, trial(100, 0));
  EXPECT_EQ(v.holding, Holding::kHolds);
  EXPECT_NEAR(v.value, 270.0, 1e-9);
  plan_.money->prices.push_back({"b", {290.0, 290.0, 290.0}});
  v = of(Matter::kPrice, trial(100, 0));
  EXPECT_EQ(v.holding, Holding::kFallsShort);
  EXPECT_NEAR(v.value, 290.0, 1e-9);
}

// Nothing turns the one into the other, so that a sum in the plan's money comes before any in another.
TEST_F(Verdicts, PricesOfTwoCurrenciesAreNotMixed) {
  bank::Battery cheap = battery_;
  cheap.id = "cheap";
  cheap.price = {1.0, 2.0, 3.0};
  plan_.currency = "EUR";
  plan_.money = cost::Money{};
  plan_.money->prices.push_back({"own", {900.0, 900.0, 900.0}});
  battery_.id = "own";
  Trial other = trial(100, 0);
  other.candidate.battery = &cheap;
  other.candidate.figures = bank::bank_figures(cheap, other.candidate.layout);
  for (const Preference by : {Preference::kPrice, Preference::kCostPerYear}) {
    plan_.preference = by;
    const Recommendation r = recommend(plan_, {other, trial(100, 0)});
    EXPECT_EQ(r.ranking[0].price.currency, "EUR");
    EXPECT_EQ(r.ranking[1].price.currency, "USD");
    EXPECT_EQ(price_currency_of(r), "");
    EXPECT_NE(r.sentences[0].find("900\u202FEUR"), std::string::npos) << r.sentences[0];
  }
}

TEST_F(Verdicts, LeadAcidHasNoElectronicCurrentLimit) {
  battery_.has_protection = false;
  Trial t = trial(100, 0);
  t.highest_discharge_A = 500.0;
  EXPECT_EQ(overall(verdicts_on(plan_, t)), Holding::kHolds);
}

TEST_F(Verdicts, OverallIsTheWorst) {
  const auto with = [](Holding a, Holding b) {
    Verdict x, y;
    x.holding = a;
    y.holding = b;
    return std::vector<Verdict>{x, y};
  };
  EXPECT_EQ(overall({}), Holding::kHolds);
  EXPECT_EQ(overall(with(Holding::kHolds, Holding::kNotKnown)), Holding::kNotKnown);
  EXPECT_EQ(overall(with(Holding::kNotKnown, Holding::kFallsShort)), Holding::kFallsShort);
  const auto both = with(Holding::kNotKnown, Holding::kFallsShort);
  EXPECT_EQ(decisive(both), &both[1]);
  EXPECT_EQ(decisive(with(Holding::kHolds, Holding::kHolds)), nullptr);
}

// What holds comes first, the cheaper a year before the dearer; the bank fitted now is named last.
TEST_F(Verdicts, OrderOfTheRanking) {
  Trial now = trial(20, 0);
  now.candidate.fitted_now = true;
  const Recommendation r = recommend(plan_, {now, trial(100, 60), trial(100, 0, 3), trial(100, 0, 2)});
  ASSERT_EQ(r.ranking.size(), 4U);
  EXPECT_EQ(r.best, 0);
  EXPECT_EQ(r.ranking[0].trial.candidate.layout.in_parallel, 2);
  EXPECT_EQ(r.ranking[1].trial.candidate.layout.in_parallel, 3);
  EXPECT_EQ(r.ranking[2].holding, Holding::kFallsShort);
  EXPECT_EQ(r.fitted_now, 3);
  EXPECT_NEAR(r.ranking[0].cost_per_year, 60.0, 1e-9);
}

TEST_F(Verdicts, NothingHoldsSaysSo) {
  const Recommendation r = recommend(plan_, {trial(100, 60), trial(100, 40)});
  EXPECT_EQ(r.best, -1);
  EXPECT_FALSE(r.sentences.empty());
  EXPECT_EQ(r.would_need.size(), 1U);
}

}  // namespace
}  // namespace voltwright::advise
