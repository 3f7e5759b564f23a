// Payments of a bank over its horizon, and what cannot be reckoned with.
#include "engine/cost/life_cycle.h"

#include <gtest/gtest.h>

#include <limits>
#include <ostream>

#include "engine/cost/corner.h"

namespace voltwright::cost {
namespace {

PricedBank bank_of(double price, double life_years) {
  PricedBank bank;
  bank.name = "A";
  bank.price = exactly(price);
  bank.life_years = exactly(life_years);
  bank.delivered_kWh_per_year = exactly(100.0);
  return bank;
}

Terms terms_for(double horizon_years) {
  Terms terms;
  terms.horizon_years = horizon_years;
  terms.discount_rate = exactly(0.0);
  return terms;
}

std::vector<double> years_of(const std::vector<ItemFlow>& flows, Item item) {
  std::vector<double> years;
  for (const ItemFlow& one : flows) {
    if (one.item == item) years.push_back(one.flow.year);
  }
  return years;
}

TEST(LifeCycle, ReplacesAtTheEndsOfLives) {
  const auto flows = flows_of(bank_of(100.0, 2.4), terms_for(6.0));
  EXPECT_EQ(years_of(flows, Item::kPurchase), (std::vector<double>{0.0, 2.4, 4.8}));
  EXPECT_EQ(years_of(flows, Item::kScrap), (std::vector<double>{2.4, 4.8}));
  EXPECT_EQ(costs_of(bank_of(100.0, 2.4), terms_for(6.0)).bought, 3);
  // 1.2 of 2.4 years are left of the third.
  EXPECT_NEAR(costs_of(bank_of(100.0, 2.4), terms_for(6.0)).capital, 250.0, 1e-9);
}

TEST(LifeCycle, BuysNoneThatWouldServeNoDay) {
  EXPECT_EQ(costs_of(bank_of(100.0, 3.0), terms_for(12.0)).bought, 4);
  EXPECT_EQ(costs_of(bank_of(100.0, 0.1), terms_for(1.0)).bought, 10);
  EXPECT_NEAR(costs_of(bank_of(100.0, 3.0), terms_for(12.0)).capital, 400.0, 1e-9);
}

TEST(LifeCycle, ScrapComesAtEachEndAndUnderlaysTheStraightLine) {
  PricedBank bank = bank_of(100.0, 4.0);
  bank.scrap = exactly(20.0);
  // 100 - 20 + 100, and at year 6 half way from 100 down to 20.
  EXPECT_NEAR(costs_of(bank, terms_for(6.0)).capital, 180.0 - 60.0, 1e-9);
  bank.scrap = exactly(-20.0);
  EXPECT_NEAR(costs_of(bank, terms_for(6.0)).capital, 220.0 - 40.0, 1e-9);
}

TEST(LifeCycle, WhatIsFittedNowIsPaid) {
  PricedBank bank = bank_of(100.0, 4.0);
  bank.fitted_now = true;
  bank.life_left_years = exactly(1.0);
  const auto flows = flows_of(bank, terms_for(6.0));
  EXPECT_EQ(years_of(flows, Item::kPurchase), (std::vector<double>{1.0, 5.0}));
  EXPECT_NEAR(costs_of(bank, terms_for(6.0)).capital, 200.0 - 75.0, 1e-9);
  bank.life_left_years = exactly(0.0);
  EXPECT_EQ(years_of(flows_of(bank, terms_for(6.0)), Item::kPurchase), (std::vector<double>{0.0, 4.0}));
}

TEST(LifeCycle, PartOfAYearCostsItsPart) {
  PricedBank bank = bank_of(0.0, 100.0);
  bank.upkeep_per_year = exactly(10.0);
  const Costs costs = costs_of(bank, terms_for(2.5));
  EXPECT_NEAR(costs.upkeep, 25.0, 1e-12);
  EXPECT_NEAR(costs.discounted_kWh, 250.0, 1e-12);
  EXPECT_NEAR(costs.per_delivered_kWh, 0.1, 1e-12);
}

TEST(LifeCycle, EnergyComesFromEachSourceAtItsPrice) {
  PricedBank bank = bank_of(0.0, 100.0);
  Terms terms = terms_for(1.0);
  terms.sources = {{"solar", exactly(0.0)}, {"generator", exactly(1.5)}, {"mains", exactly(0.3)}};
  bank.charging = {{"solar", 0.7}, {"mains", 0.2}, {"generator", 0.3}};
  EXPECT_NEAR(costs_of(bank, terms).energy, 100.0 * (0.2 * 0.3 + 0.3 * 1.5), 1e-12);
}

TEST(LifeCycle, FuelForTheMass) {
  PricedBank bank = bank_of(0.0, 100.0);
  bank.mass_kg = 50.0;
  Terms terms = terms_for(2.0);
  terms.carrying = {8000.0, exactly(0.13), exactly(1.8)};
  // 80 times 100 km, half of 100 kg: 5.2 L a year.
  EXPECT_NEAR(costs_of(bank, terms).carrying, 2.0 * 5.2 * 1.8, 1e-9);
}

TEST(LifeCycle, BandSpansTheCorners) {
  PricedBank bank = bank_of(100.0, 4.0);
  bank.price = {80.0, 100.0, 150.0};
  bank.life_years = {2.0, 4.0, 8.0};
  bank.delivered_kWh_per_year = {50.0, 100.0, 125.0};
  bank.usable_kWh = 2.0;
  const auto answer = life_cycle(bank, terms_for(8.0));
  ASSERT_TRUE(answer.ok());
  const LifeCycle& all = answer.value();
  EXPECT_DOUBLE_EQ(all.per_usable_kWh.min, 40.0);
  EXPECT_DOUBLE_EQ(all.per_usable_kWh.max, 75.0);
  // Cheapest: 80 once for 1000 kWh. Dearest: 150 four times for 400 kWh.
  EXPECT_NEAR(all.per_delivered_kWh.min, 0.08, 1e-12);
  EXPECT_NEAR(all.per_delivered_kWh.typical, 0.25, 1e-12);
  EXPECT_NEAR(all.per_delivered_kWh.max, 1.5, 1e-12);
  EXPECT_NEAR(all.annualised.min, 10.0, 1e-12);
  EXPECT_NEAR(all.present_value.max, 600.0, 1e-12);
}

TEST(LifeCycle, WorkingEndsInTheCostOfADeliveredKilowattHour) {
  PricedBank bank = bank_of(300.0, 3.0);
  bank.upkeep_per_year = exactly(5.0);
  bank.scrap = exactly(10.0);
  bank.charging = {{"solar", 0.8}, {"mains", 0.4}};
  Terms terms = terms_for(10.0);
  terms.discount_rate = exactly(0.05);
  terms.sources = {{"mains", exactly(0.25)}, {"solar", exactly(0.0)}};
  const auto answer = life_cycle(bank, terms);
  ASSERT_TRUE(answer.ok());
  double parts = 0.0;
  double total = 0.0;
  double per_kWh = 0.0;
  for (const WorkingLine& line : answer.value().working) {
    EXPECT_FALSE(line.name.empty());
    EXPECT_FALSE(line.words.empty()) << line.name;
    for (const Item item : {Item::kPurchase, Item::kScrap, Item::kLeftOver, Item::kUpkeep}) {
      if (line.name == name_of(item)) parts += line.value;
    }
    if (line.name.starts_with("energy from")) parts += line.value;
    if (line.name == "present value of all costs") total = line.value;
    if (line.name == "cost per delivered kWh") per_kWh = line.value;
  }
  EXPECT_NEAR(parts, total, 1e-9);
  EXPECT_NEAR(total, answer.value().typical.present_value, 1e-9);
  EXPECT_DOUBLE_EQ(per_kWh, answer.value().typical.per_delivered_kWh);
}

struct Wrong {
  const char* field;
  void (*spoil)(PricedBank&, Terms&);
};

void PrintTo(const Wrong& wrong, std::ostream* out) { *out << wrong.field; }

class WrongInput : public testing::TestWithParam<Wrong> {};

TEST_P(WrongInput, IsNamed) {
  PricedBank bank = bank_of(100.0, 4.0);
  Terms terms = terms_for(8.0);
  terms.sources = {{"mains", exactly(0.3)}};
  EXPECT_TRUE(problems_of(bank, terms).empty());
  GetParam().spoil(bank, terms);
  const auto answer = life_cycle(bank, terms);
  ASSERT_FALSE(answer.ok());
  EXPECT_EQ(answer.problems().front().field, GetParam().field);
}

constexpr double kNotANumber = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(
    LifeCycle, WrongInput,
    testing::Values(Wrong{"price", [](PricedBank& b, Terms&) { b.currency = "EUR"; }},
                    Wrong{"price", [](PricedBank& b, Terms&) { b.price = exactly(-1.0); }},
                    Wrong{"price",
                          [](PricedBank& b, Terms&) {
                            b.price = {3.0, 2.0, 4.0};
                          }},
                    Wrong{"price", [](PricedBank& b, Terms&) { b.price = exactly(kNotANumber); }},
                    Wrong{"usable energy", [](PricedBank& b, Terms&) { b.usable_kWh = 0.0; }},
                    Wrong{"delivered energy", [](PricedBank& b, Terms&) { b.delivered_kWh_per_year = {}; }},
                    Wrong{"life",
                          [](PricedBank& b, Terms&) {
                            b.life_years = {0.0, 1.0, 2.0};
                          }},
                    Wrong{"life left",
                          [](PricedBank& b, Terms&) {
                            b.fitted_now = true;
                            b.life_left_years = exactly(-1.0);
                          }},
                    Wrong{"scrap value", [](PricedBank& b, Terms&) { b.scrap = exactly(101.0); }},
                    Wrong{"horizon", [](PricedBank&, Terms& under) { under.horizon_years = 0.5; }},
                    Wrong{"discount rate",
                          [](PricedBank&, Terms& under) { under.discount_rate = exactly(-1.0); }},
                    Wrong{"charging from solar", [](PricedBank& b, Terms&) {
                            b.charging = {{"solar", 1.0}};
                          }}));

TEST(LifeCycle, AnotherCurrencyIsToldWithItsRemedy) {
  PricedBank bank = bank_of(100.0, 4.0);
  Terms terms = terms_for(8.0);
  terms.currency = "NOK";
  const base::Problems problems = problems_of(bank, terms);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems[0].what.find("USD of 2025"), std::string::npos);
  EXPECT_NE(problems[0].remedy.find("NOK"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::cost
