// What a plan's money and the catalogue's facts make of a bank.
#include "engine/cost/money.h"

#include <gtest/gtest.h>

#include "engine/cost/corner.h"

namespace voltwright::cost {
namespace {

const Sum kCatalogue = {{200.0, 300.0, 400.0}, "USD", 2026, false};

RunningFacts facts() {
  RunningFacts facts;
  facts.L_per_100km_100kg = {0.1, 0.13, 0.15};
  facts.scrap = {{{"agm", "gel"}, {0.2, 0.5, 1.0}, 2024, false}, {{"lfp"}, {-10.0, 0.0, 0.0}, 2024, true}};
  return facts;
}

TEST(Money, APriceInDollarsStaysInDollars) {
  const Sum in_dollars = price_of({}, "USD", "x", 2, kCatalogue);
  EXPECT_EQ(in_dollars.currency, "USD");
  EXPECT_EQ(in_dollars.amount.typical, 300.0);
  const Sum in_euros = price_of({}, "EUR", "x", 2, kCatalogue);
  EXPECT_EQ(in_euros.currency, "USD");
  EXPECT_EQ(in_euros.amount.typical, 300.0);
  EXPECT_EQ(in_euros.year, 2026);
}

TEST(Money, ThePlanSaysWhatADollarCosts) {
  Money money;
  money.per_dollar = 0.5;
  const Sum sum = price_of(money, "EUR", "x", 2, kCatalogue);
  EXPECT_EQ(sum.currency, "EUR");
  EXPECT_EQ(sum.amount.min, 100.0);
  EXPECT_EQ(sum.amount.max, 200.0);
  EXPECT_FALSE(sum.from_plan);
  // A plan in dollars needs no rate, and one that is given must not count twice.
  EXPECT_EQ(price_of(money, "USD", "x", 2, kCatalogue).amount.typical, 300.0);
}

TEST(Money, ThePlansOwnPriceGoesFirst) {
  Money money;
  money.per_dollar = 0.5;
  money.prices = {{"x", {90.0, 100.0, 120.0}}};
  const Sum sum = price_of(money, "EUR", "x", 3, kCatalogue);
  EXPECT_EQ(sum.amount.typical, 300.0);
  EXPECT_EQ(sum.amount.max, 360.0);
  EXPECT_TRUE(sum.from_plan);
  EXPECT_FALSE(price_of(money, "EUR", "y", 3, kCatalogue).from_plan);
}

TEST(Money, ScrapByTheFactsInDollarsOnly) {
  EXPECT_NEAR(scrap_of({}, facts(), "USD", "gel", 30.0, 1e6).typical, 15.0, 1e-12);
  EXPECT_NEAR(scrap_of({}, facts(), "USD", "lfp", 30.0, 1e6).min, -300.0, 1e-12);
  EXPECT_EQ(scrap_of({}, facts(), "EUR", "gel", 30.0, 1e6).max, 0.0);
  EXPECT_EQ(scrap_of({}, facts(), "USD", "unknown", 30.0, 1e6).max, 0.0);
  Money money;
  money.per_dollar = 2.0;
  EXPECT_NEAR(scrap_of(money, facts(), "EUR", "gel", 30.0, 1e6).typical, 30.0, 1e-12);
}

TEST(Money, ScrapByThePlan) {
  Money money;
  money.scrap = {{"", exactly(-1.0)}, {"agm", exactly(0.4)}};
  EXPECT_NEAR(scrap_of(money, facts(), "EUR", "agm", 10.0, 1e6).typical, 4.0, 1e-12);
  EXPECT_NEAR(scrap_of(money, facts(), "EUR", "lfp", 10.0, 1e6).typical, -10.0, 1e-12);
}

TEST(Money, ScrapIsNeverWorthMoreThanTheBank) {
  EXPECT_EQ(scrap_of({}, facts(), "USD", "agm", 30.0, 12.0).max, 12.0);
}

TEST(Money, FuelMakesEnergyCost) {
  Money money;
  EXPECT_EQ(fuel_energy_price(money, 0.5).typical, 0.0);
  money.fuel_per_L = {1.0, 2.0, 3.0};
  EXPECT_NEAR(fuel_energy_price(money, 0.5).max, 1.5, 1e-12);
}

TEST(Money, TermsTakeTheFactForTheMass) {
  Money money;
  money.km_per_year = 5000.0;
  EXPECT_EQ(terms_of(money, facts(), "EUR").carrying.km_per_year, 0.0);  // no price of fuel
  money.fuel_per_L = exactly(2.0);
  const Terms terms = terms_of(money, facts(), "EUR");
  EXPECT_EQ(terms.currency, "EUR");
  EXPECT_EQ(terms.carrying.km_per_year, 5000.0);
  EXPECT_EQ(terms.carrying.L_per_100km_100kg.typical, 0.13);
  money.L_per_100km_100kg = exactly(0.3);
  EXPECT_EQ(terms_of(money, facts(), "EUR").carrying.L_per_100km_100kg.typical, 0.3);
}

}  // namespace
}  // namespace voltwright::cost
