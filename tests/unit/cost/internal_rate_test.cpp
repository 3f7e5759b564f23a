// One, none, several and every internal rate; payments made from rates that are known.
#include "engine/cost/internal_rate.h"

#include <gtest/gtest.h>

namespace voltwright::cost {
namespace {

TEST(InternalRate, OneChangeOfSignGivesOne) {
  const Flow flows[] = {{0.0, -1000.0}, {1.0, 1100.0}};
  const InternalRates found = internal_rates(flows);
  EXPECT_EQ(found.count, RateCount::kOne);
  EXPECT_NEAR(*found.only(), 0.1, 1e-12);
  EXPECT_EQ(sign_changes(flows), 1U);
}

TEST(InternalRate, MayBeNegative) {
  const Flow flows[] = {{0.0, -1000.0}, {2.0, 250.0}};
  EXPECT_NEAR(*internal_rates(flows).only(), -0.5, 1e-12);
}

TEST(InternalRate, PaymentsOneWayHaveNone) {
  const Flow flows[] = {{0.0, -1000.0}, {1.0, -20.0}};
  const InternalRates found = internal_rates(flows);
  EXPECT_EQ(found.count, RateCount::kNone);
  EXPECT_TRUE(found.rates.empty());
  EXPECT_FALSE(found.only());
}

TEST(InternalRate, TwoChangesOfSignMayHaveNone) {
  // 1 - 2 x + 2 x^2 is never 0.
  const Flow flows[] = {{0.0, 1.0}, {1.0, -2.0}, {2.0, 2.0}};
  EXPECT_EQ(internal_rates(flows).count, RateCount::kNone);
  EXPECT_EQ(sign_changes(flows), 2U);
}

TEST(InternalRate, TwoRatesAreBothTold) {
  // -(1 - 1.1 x)(1 - 1.3 x): 10 % and 30 %.
  const Flow flows[] = {{0.0, -1.0}, {1.0, 2.4}, {2.0, -1.43}};
  const InternalRates found = internal_rates(flows);
  ASSERT_EQ(found.rates.size(), 2U);
  EXPECT_EQ(found.count, RateCount::kSeveral);
  EXPECT_NEAR(found.rates[0], 0.1, 1e-10);
  EXPECT_NEAR(found.rates[1], 0.3, 1e-10);
  EXPECT_FALSE(found.only());
}

TEST(InternalRate, ADoubleRateIsMet) {
  // (1 - 1.2 x)^2 touches 0 at 20 % and does not cross it.
  const Flow flows[] = {{0.0, 100.0}, {1.0, -240.0}, {2.0, 144.0}};
  const InternalRates found = internal_rates(flows);
  ASSERT_EQ(found.rates.size(), 1U);
  EXPECT_NEAR(found.rates[0], 0.2, 1e-7);
}

TEST(InternalRate, NothingAtAllHasEveryRate) {
  const Flow flows[] = {{0.0, 5.0}, {0.0, -5.0}, {3.0, 0.0}};
  EXPECT_EQ(internal_rates(flows).count, RateCount::kEvery);
  EXPECT_EQ(internal_rates({}).count, RateCount::kEvery);
}

TEST(InternalRate, BeyondTheRangeThereIsNone) {
  const Flow flows[] = {{0.0, -1.0}, {1.0, 1000.0}};
  EXPECT_EQ(internal_rates(flows).count, RateCount::kNone);
}

TEST(InternalRate, LongAndLargeDoesNotOverflow) {
  std::vector<Flow> flows = {{0.0, -1e9}};
  for (int year = 1; year <= 60; ++year)
    flows.push_back({static_cast<double>(year), year % 7 == 0 ? -3e8 : 1e8});
  const InternalRates found = internal_rates(flows);
  EXPECT_LE(found.rates.size(), sign_changes(flows));
  for (const double rate : found.rates) {
    double size = 0.0;
    for (const Flow& flow : flows) size += std::abs(flow.amount) * discount_factor(rate, flow.year);
    EXPECT_NEAR(net_present_value(flows, rate), 0.0, 1e-11 * size);
  }
}

}  // namespace
}  // namespace voltwright::cost
