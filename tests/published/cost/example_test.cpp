// Worked examples with invented prices: 12 years at 4 %, 0.6 kWh delivered daily, charging energy 0.30 per
// kWh; lead-acid for 300, replaced in years 3, 6 and 9, efficiency 0.80, against lithium for 700 that lasts,
// 0.95. Expected values: worked by hand with the equations of docs/method/cost.md (short1995), printed to the
// digits that the tolerances name.
#include <gtest/gtest.h>

#include <map>
#include <utility>

#include "engine/cost/comparison.h"
#include "engine/cost/corner.h"
#include "engine/cost/life_cycle.h"

namespace voltwright::cost {
namespace {

constexpr double kYearly_kWh = 219.0;

Terms terms_for(double horizon_years, double rate = 0.04) {
  Terms terms;
  terms.horizon_years = horizon_years;
  terms.discount_rate = exactly(rate);
  terms.sources = {{"mains", exactly(0.30)}};
  return terms;
}

PricedBank bank_of(double price, double life_years, double efficiency) {
  PricedBank bank;
  bank.price = exactly(price);
  bank.life_years = exactly(life_years);
  bank.delivered_kWh_per_year = exactly(kYearly_kWh);
  bank.charging = {{"mains", 1.0 / efficiency}};
  return bank;
}

PricedBank lead_acid() { return bank_of(300.0, 3.0, 0.80); }
PricedBank lithium() { return bank_of(700.0, 12.0, 0.95); }

TEST(CostExample, AnnuityFactors) {
  EXPECT_NEAR(annuity_factor(0.04, 12.0), 9.3850738, 1e-7 * 9.3850738);
  EXPECT_NEAR(annuity_factor(0.03, 20.0), 14.8774749, 1e-7);
  EXPECT_NEAR(discount_factor(0.03, 10.0), 0.7440939, 1e-7);
  EXPECT_NEAR(annualised(1.0, 0.04, 12.0), 0.1065522, 1e-7);
  EXPECT_NEAR(annualised(1.0, 0.08, 20.0), 0.1018522, 1e-7);
  EXPECT_NEAR(annualised(1.0, 0.05, 10.0), 0.1295046, 1e-7);
}

struct Expected {
  double capital;
  double energy_per_year;
  double present_value;
  double annualised;
  double per_kWh;
  double capital_per_kWh;
  double undiscounted_per_kWh;
};

void expect(const PricedBank& bank, const Expected& e) {
  const auto answer = life_cycle(bank, terms_for(12.0));
  ASSERT_TRUE(answer.ok());
  const Costs& costs = answer.value().typical;
  EXPECT_NEAR(costs.capital, e.capital, 5e-5);
  EXPECT_NEAR(costs.energy / annuity_factor(0.04, 12.0), e.energy_per_year, 5e-5);
  EXPECT_NEAR(costs.present_value, e.present_value, 5e-5);
  EXPECT_NEAR(costs.annualised, e.annualised, 5e-5);
  EXPECT_NEAR(costs.discounted_kWh, 2055.3312, 5e-5);
  EXPECT_NEAR(costs.per_delivered_kWh, e.per_kWh, 1e-5 * e.per_kWh);
  EXPECT_NEAR(costs.capital_per_delivered_kWh, e.capital_per_kWh, 5e-6);
  EXPECT_NEAR(costs_of(bank, terms_for(12.0, 0.0)).capital_per_delivered_kWh, e.undiscounted_per_kWh, 5e-6);
}

TEST(CostExample, LeadAcidOverTwelveYears) {
  expect(lead_acid(), {1014.5693, 82.1250, 1785.3185, 190.2296, 0.86863, 0.49363, 0.45662});
}

TEST(CostExample, LithiumOverTwelveYears) {
  expect(lithium(), {700.0, 69.1579, 1349.0519, 143.7444, 0.65637, 0.34058, 0.26636});
}

TEST(CostExample, LithiumAgainstLeadAcid) {
  const auto answer = compare(lithium(), lead_acid(), terms_for(12.0));
  ASSERT_TRUE(answer.ok());
  const Comparison& c = answer.value();
  EXPECT_NEAR(c.net_present_value.typical, 436.267, 1e-5 * 436.267);
  ASSERT_TRUE(c.internal_rates.only());
  EXPECT_NEAR(*c.internal_rates.only(), 0.19369, 1e-5);
  EXPECT_EQ(c.typical.simple.year, 6.0);
  EXPECT_EQ(c.typical.discounted.year, 6.0);
  // The sum so far after each year.
  std::map<double, double> sum;
  std::map<double, double> discounted;
  double total = 0.0;
  double worth = 0.0;
  for (const Flow& flow : c.savings) {
    sum[flow.year] = total += flow.amount;
    discounted[flow.year] = worth += flow.amount * discount_factor(0.04, flow.year);
  }
  EXPECT_NEAR(sum.at(0.0), -400.0, 1e-9);
  EXPECT_NEAR(sum.at(3.0), -61.099, 5e-4);
  EXPECT_NEAR(sum.at(5.0), -35.164, 5e-4);
  EXPECT_NEAR(sum.at(6.0), 277.803, 5e-4);
  EXPECT_NEAR(discounted.at(5.0), -75.574, 5e-4);
  EXPECT_NEAR(discounted.at(6.0), 171.769, 5e-4);
}

TEST(CostExample, WhatIsLeftOverAfterTenYears) {
  // Two thirds of the last lead-acid bank and a sixth of the lithium one are left.
  EXPECT_NEAR(costs_of(lead_acid(), terms_for(10.0)).capital, 879.4565, 5e-5);
  EXPECT_NEAR(costs_of(lithium(), terms_for(10.0)).capital, 621.1842, 5e-5);
}

TEST(CostExample, ByThroughput) {
  EXPECT_NEAR(cost_per_throughput_kWh(500.0, 1.28, 0.8, 4000.0, 0.9, 0.97), 0.139829, 5e-7);
  EXPECT_NEAR(cost_per_throughput_kWh(200.0, 1.2, 0.5, 600.0, 0.9, 0.9), 0.685871, 5e-7);
}

}  // namespace
}  // namespace voltwright::cost
