// From trials made by hand to costs: what is handed on, what is noted, and what is said.
#include "engine/advise/life_cost.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/advise/cost_words.h"
#include "engine/advise/fuel.h"

namespace voltwright::advise {
namespace {

constexpr double kYear_min = 60.0 * 8766.0;

class LifeCosts : public ::testing::Test {
 protected:
  LifeCosts() {
    iron_.id = "lfp";
    iron_.usable_depth = 0.8;
    lead_.id = "agm";
    lead_.usable_depth = 0.5;
    battery_.id = "b";
    battery_.name = "B";
    battery_.mass_kg = {10.0, 12.0, 14.0};
    battery_.price = {200.0, 300.0, 400.0};
    old_ = battery_;
    old_.id = "o";
    old_.name = "O";
    old_.price = {100.0, 150.0, 200.0};
    facts_.scrap.push_back({{"agm"}, {0.5, 1.0, 1.5}, 2024, false});
  }

  /// Two seasons of half a year each: 100 kWh out of the bank for 110 into it in a mean season.
  Trial trial(const bank::Battery& battery, const cell::Chemistry& chemistry, double life_years,
              double lost_capacity = 0.0) const {
    Trial t;
    t.candidate.battery = &battery;
    t.candidate.chemistry = &chemistry;
    t.candidate.layout = {1, 1, lost_capacity};
    t.candidate.figures = bank::bank_figures(battery, t.candidate.layout);
    t.minutes = kYear_min / 2.0;
    for (const double kWh : {90.0, 110.0}) {
      SeasonNote note;
      note.season = t.seasons.size();
      note.discharged_Wh = 1000.0 * kWh;
      t.seasons.push_back(note);
    }
    t.ledger.discharged_Wh = 200'000.0;
    t.ledger.charged_Wh = 220'000.0;
    t.ledger.solar_Wh = 300'000.0;
    t.ledger.mains_Wh = 100'000.0;
    t.wear_shortest.by_calendar = 2.0 / life_years;
    t.wear_typical.by_calendar = 1.0 / life_years;
    t.wear_longest.by_calendar = 0.5 / life_years;
    return t;
  }

  Recommendation answer(std::vector<Trial> trials) const { return recommend(plan_, std::move(trials)); }

  std::string notes(const LifeCost& costs) const {
    std::string all;
    for (const std::string& note : costs.notes) all += note + "\n";
    return all;
  }

  cell::Chemistry iron_, lead_;
  bank::Battery battery_, old_;
  cost::RunningFacts facts_;
  Plan plan_;
};

TEST_F(LifeCosts, HandsOnWhatTheSeasonsShowed) {
  plan_.arrays.emplace_back();
  plan_.mains = supply::MainsCharger{};
  plan_.mains->efficiency = 0.8;
  plan_.money = cost::Money{};
  plan_.money->mains_per_kWh = units::Ranged{0.2, 0.4, 0.6};
  const LifeCost costs = life_cost(plan_, facts_, answer({trial(battery_, lead_, 8.0)}));
  ASSERT_EQ(costs.banks.size(), 1U);
  const cost::PricedBank& bank = costs.banks[0].bank;
  // 90, 100 and 110 kWh in half a year.
  EXPECT_NEAR(bank.delivered_kWh_per_year.min, 180.0, 1e-9);
  EXPECT_NEAR(bank.delivered_kWh_per_year.typical, 200.0, 1e-9);
  EXPECT_NEAR(bank.delivered_kWh_per_year.max, 220.0, 1e-9);
  EXPECT_NEAR(bank.life_years.min, 4.0, 1e-9);
  EXPECT_NEAR(bank.life_years.typical, 8.0, 1e-9);
  EXPECT_NEAR(bank.usable_kWh, battery_.nominal_V * battery_.capacity_Ah / 1000.0 * 0.5, 1e-9);
  EXPECT_NEAR(bank.mass_kg, 12.0, 1e-9);
  EXPECT_NEAR(bank.scrap.typical, 12.0, 1e-9);  // 12 kg at 1 USD
  // Three quarters sun, one quarter mains, 1.1 kWh for each that comes out.
  ASSERT_EQ(bank.charging.size(), 2U);
  EXPECT_EQ(bank.charging[0].source, "solar");
  EXPECT_NEAR(bank.charging[0].kWh_per_delivered_kWh, 0.825, 1e-9);
  EXPECT_NEAR(bank.charging[1].kWh_per_delivered_kWh, 0.275, 1e-9);
  // 0.4 at the socket are 0.5 behind a charger of 80 %.
  ASSERT_EQ(costs.terms.sources.size(), 2U);
  EXPECT_EQ(costs.terms.sources[0].price_per_kWh.max, 0.0);
  EXPECT_NEAR(costs.terms.sources[1].price_per_kWh.typical, 0.5, 1e-12);
  ASSERT_TRUE(costs.banks[0].known());
  EXPECT_NEAR(costs.banks[0].life_cycle.typical.energy / costs.banks[0].life_cycle.typical.discounted_kWh,
              0.275 * 0.5, 1e-12);
  EXPECT_NE(notes(costs).find("seasons like these"), std::string::npos);
  EXPECT_EQ(notes(costs).find("counts as free"), std::string::npos);
}

TEST_F(LifeCosts, FuelIsPricedByTheLitresForEachKilowattHour) {
  plan_.engine = supply::EngineCharging{};
  Trial t = trial(battery_, iron_, 8.0);
  t.ledger.mains_Wh = 0.0;
  t.ledger.engine_Wh = 100'000.0;
  LifeCost costs = life_cost(plan_, facts_, answer({t}));
  EXPECT_NE(notes(costs).find("[engine] names no fuel"), std::string::npos);
  EXPECT_EQ(costs.terms.sources.at(1).price_per_kWh.typical, 0.0);

  plan_.engine->fuel = supply::Fuel::kDiesel;
  costs = life_cost(plan_, facts_, answer({t}));
  EXPECT_NE(notes(costs).find("gives no price of fuel"), std::string::npos);

  plan_.money = cost::Money{};
  plan_.money->fuel_per_L = units::Ranged{1.0, 2.0, 3.0};
  costs = life_cost(plan_, facts_, answer({t}));
  const double litres = fuel_of(plan_, t.ledger, 2.0).at(0).L_per_kWh();
  EXPECT_GT(litres, 0.2);  // at the shaft 0.220 L/kWh of diesel, EU 2020/728
  EXPECT_NEAR(costs.terms.sources.at(1).price_per_kWh.typical, 2.0 * litres, 1e-12);
  EXPECT_EQ(notes(costs).find("counts as free"), std::string::npos);
}

TEST_F(LifeCosts, WhatIsFittedNowIsPaidAndLastsForWhatIsLeft) {
  Trial now = trial(old_, lead_, 4.0, 0.05);
  now.candidate.fitted_now = true;
  const Recommendation r = answer({trial(battery_, iron_, 12.0), now});
  ASSERT_EQ(r.fitted_now, 1);
  const LifeCost costs = life_cost(plan_, facts_, r);
  const cost::PricedBank& bank = costs.banks[1].bank;
  EXPECT_TRUE(bank.fitted_now);
  EXPECT_NEAR(bank.life_left_years.typical, 3.0, 1e-9);  // 5 of 20 % are lost
  ASSERT_EQ(costs.against.size(), 1U);
  EXPECT_EQ(costs.against[0].other, 1U);
  const std::vector<std::string> sentences = cost_sentences(r, costs);
  ASSERT_EQ(sentences.size(), 4U);
  EXPECT_NE(sentences[0].find("B costs"), std::string::npos) << sentences[0];
  EXPECT_NE(sentences[0].find("Most hangs on the life"), std::string::npos) << sentences[0];
  EXPECT_NE(sentences[1].find("What is fitted now costs"), std::string::npos) << sentences[1];
  EXPECT_NE(sentences[2].find("Against what is fitted now"), std::string::npos) << sentences[2];
  EXPECT_EQ(cost_heading(costs.terms), "Cost over 10\u202Fyears at 3\u202F% a year, money of today");
}

TEST_F(LifeCosts, OtherCurrencyIsNotKnownAndSaysWhatToGive) {
  plan_.currency = "EUR";
  const Recommendation r = answer({trial(battery_, iron_, 12.0), trial(old_, lead_, 4.0)});
  LifeCost costs = life_cost(plan_, facts_, r);
  EXPECT_FALSE(costs.banks[0].known());
  EXPECT_TRUE(costs.against.empty());
  const std::vector<std::string> sentences = cost_sentences(r, costs);
  ASSERT_EQ(sentences.size(), 1U);
  EXPECT_NE(sentences[0].find("is not known. The price is in USD of 2025"), std::string::npos);
  EXPECT_NE(sentences[0].find("dollar in [money]"), std::string::npos) << sentences[0];
  plan_.money = cost::Money{};
  plan_.money->per_dollar = 0.5;
  const Recommendation euros = answer({trial(battery_, iron_, 12.0), trial(old_, lead_, 4.0)});
  costs = life_cost(plan_, facts_, euros);
  ASSERT_TRUE(costs.banks[costs.shown].known());
  EXPECT_EQ(costs.against.size(), 1U);
  const cost::PricedBank& shown = costs.banks[costs.shown].bank;
  EXPECT_NEAR(shown.price.typical, 0.5 * euros.ranking[costs.shown].trial.candidate.figures.price.typical,
              1e-9);
}

TEST_F(LifeCosts, NothingDeliveredHasNoCost) {
  Trial t = trial(battery_, iron_, 12.0);
  t.ledger.discharged_Wh = 0.0;
  for (SeasonNote& s : t.seasons) s.discharged_Wh = 0.0;
  const Recommendation r = answer({t});
  const LifeCost costs = life_cost(plan_, facts_, r);
  EXPECT_FALSE(costs.banks[0].known());
  EXPECT_NE(cost_sentences(r, costs).at(0).find("Nothing is delivered"), std::string::npos);
  EXPECT_TRUE(life_cost(plan_, facts_, {}).banks.empty());
  EXPECT_TRUE(cost_sentences({}, {}).empty());
}

// Lives that were simulated stand in place of those of the trial; without interest a bank that lasts longer
// never costs more: (price - scrap) / life for each year.
TEST_F(LifeCosts, LongerLifeNeverCostsMoreWithoutInterest) {
  plan_.money = cost::Money{};
  plan_.money->discount_rate = {};
  const Recommendation r = answer({trial(battery_, lead_, 8.0)});
  double last = 1e9;
  for (const double years : {0.3, 1.0, 2.5, 4.0, 9.9, 10.0, 10.1, 17.0, 60.0}) {
    const std::optional<units::Ranged> lives[] = {units::Ranged{years, years, years}};
    const LifeCost costs = life_cost(plan_, facts_, r, lives);
    ASSERT_TRUE(costs.banks[0].known());
    const double now = costs.banks[0].life_cycle.typical.per_delivered_kWh;
    EXPECT_NEAR(now, (300.0 - 12.0) / years / 200.0, 1e-9);
    EXPECT_LT(now, last);
    last = now;
  }
}

// Where an assumption turns the order, it is named with the value at which both cost the same.
TEST_F(LifeCosts, NamesTheAssumptionThatTurnsTheOrder) {
  const Recommendation r = answer({trial(battery_, iron_, 9.0), trial(old_, lead_, 4.0)});
  const LifeCost costs = life_cost(plan_, facts_, r);
  ASSERT_EQ(costs.against.size(), 1U);
  ASSERT_TRUE(costs.against[0].ranking.flips());
  const std::string last = cost_sentences(r, costs).back();
  EXPECT_NE(last.find("that turns if the "), std::string::npos) << last;
  EXPECT_NE(last.find(" instead of "), std::string::npos) << last;
}

}  // namespace
}  // namespace voltwright::advise
