// Another bank against what is there.
#include "engine/cost/comparison.h"

#include <gtest/gtest.h>

#include "engine/cost/corner.h"

namespace voltwright::cost {
namespace {

PricedBank bank_of(double price, double life_years) {
  PricedBank bank;
  bank.price = exactly(price);
  bank.life_years = exactly(life_years);
  bank.delivered_kWh_per_year = exactly(100.0);
  return bank;
}

Terms plain_terms() {
  Terms terms;
  terms.horizon_years = 10.0;
  terms.discount_rate = exactly(0.0);
  return terms;
}

TEST(Comparison, PaidBankThatIsWornSoonIsPaidBackWhenItWouldHaveBeenReplaced) {
  PricedBank now = bank_of(300.0, 3.0);
  now.fitted_now = true;
  now.life_left_years = exactly(2.0);
  const auto answer = compare(bank_of(500.0, 10.0), now, plain_terms());
  ASSERT_TRUE(answer.ok());
  // -500; in the years 2 and 5 it saves 300 each; a third in year 8, of which a third is left at 10.
  EXPECT_EQ(answer.value().typical.simple.year, 5.0);
  EXPECT_NEAR(answer.value().net_present_value.typical, 900.0 - 100.0 - 500.0, 1e-9);
}

TEST(Comparison, SpreadsOfBothBanksAreHeldAgainstEachOther) {
  PricedBank candidate = bank_of(500.0, 10.0);
  candidate.price = {400.0, 500.0, 700.0};
  PricedBank now = bank_of(300.0, 5.0);
  now.price = {250.0, 300.0, 320.0};
  const auto answer = compare(candidate, now, plain_terms());
  ASSERT_TRUE(answer.ok());
  EXPECT_NEAR(answer.value().net_present_value.min, 2.0 * 250.0 - 700.0, 1e-9);
  EXPECT_NEAR(answer.value().net_present_value.typical, 2.0 * 300.0 - 500.0, 1e-9);
  EXPECT_NEAR(answer.value().net_present_value.max, 2.0 * 320.0 - 400.0, 1e-9);
  EXPECT_FALSE(answer.value().pessimistic.simple.year);
  EXPECT_EQ(answer.value().typical.simple.year, 5.0);
}

TEST(Comparison, ABankThatIsNeverDearerNeedsNoPayback) {
  const auto answer = compare(bank_of(200.0, 10.0), bank_of(300.0, 10.0), plain_terms());
  ASSERT_TRUE(answer.ok());
  EXPECT_EQ(answer.value().typical.simple.year, 0.0);
  EXPECT_EQ(answer.value().internal_rates.count, RateCount::kNone);
}

TEST(Comparison, ProblemsOfBothAreTold) {
  const auto answer = compare(bank_of(-1.0, 10.0), bank_of(300.0, 0.0), plain_terms());
  ASSERT_FALSE(answer.ok());
  EXPECT_EQ(answer.problems().size(), 2U);
}

}  // namespace
}  // namespace voltwright::cost
