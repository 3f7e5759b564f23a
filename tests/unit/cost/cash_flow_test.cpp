// Present value, annuity, rates and payback at their edges; values worked by hand.
#include "engine/cost/cash_flow.h"

#include <gtest/gtest.h>

namespace voltwright::cost {
namespace {

TEST(CashFlow, NoInterestOnlyAdds) {
  const Flow flows[] = {{0.0, -100.0}, {2.5, 30.0}, {7.0, 80.0}};
  EXPECT_DOUBLE_EQ(net_present_value(flows, 0.0), 10.0);
  EXPECT_DOUBLE_EQ(annuity_factor(0.0, 7.0), 7.0);
  EXPECT_DOUBLE_EQ(annualised(70.0, 0.0, 7.0), 10.0);
}

TEST(CashFlow, OnePaymentIsDividedByTheGrowthUntilThen) {
  const Flow flows[] = {{2.0, 121.0}};
  EXPECT_NEAR(net_present_value(flows, 0.1), 100.0, 1e-12);
  EXPECT_DOUBLE_EQ(net_present_value({}, 0.1), 0.0);
}

TEST(CashFlow, AnnuityIsSmoothAtNoInterest) {
  // PW = n - n (n + 1) r / 2 + ... for small r.
  EXPECT_NEAR(annuity_factor(1e-9, 10.0), 10.0 - 55.0 * 1e-9, 1e-13);
  EXPECT_NEAR(annuity_factor(-1e-9, 10.0), 10.0 + 55.0 * 1e-9, 1e-13);
}

TEST(CashFlow, AnnuityIsTheSumOfItsPayments) {
  double sum = 0.0;
  for (int year = 1; year <= 9; ++year) sum += discount_factor(0.07, year);
  EXPECT_NEAR(annuity_factor(0.07, 9.0), sum, 1e-13);
}

TEST(CashFlow, InflationIsTakenOutAndPutBack) {
  // 1.05 / 1.02 = 1.0294118.
  EXPECT_NEAR(real_rate(0.05, 0.02), 0.0294118, 5e-8);
  EXPECT_NEAR(nominal_rate(real_rate(0.05, 0.02), 0.02), 0.05, 1e-15);
  EXPECT_DOUBLE_EQ(real_rate(0.03, 0.0), 0.03);
}

TEST(CashFlow, SumsThatGrowWithPricesAreWorthAsMuchAtTheNominalRate) {
  const double inflation = 0.025;
  const double real = 0.04;
  std::vector<Flow> today;
  std::vector<Flow> of_the_day;
  for (int year = 0; year <= 8; ++year) {
    today.push_back({static_cast<double>(year), 50.0 - 9.0 * year});
    of_the_day.push_back({static_cast<double>(year), today.back().amount * std::pow(1.0 + inflation, year)});
  }
  EXPECT_NEAR(net_present_value(today, real), net_present_value(of_the_day, nominal_rate(real, inflation)),
              1e-10);
}

TEST(Payback, IsTheYearWhenTheSumIsNoLongerNegative) {
  const Flow flows[] = {{0.0, -100.0}, {1.0, 40.0}, {2.0, 40.0}, {3.0, 40.0}};
  EXPECT_EQ(payback(flows, 0.0).year, 3.0);
  // 40 (1.3^-1 + 1.3^-2 + 1.3^-3) = 72.6 < 100.
  EXPECT_FALSE(payback(flows, 0.3).year);
}

TEST(Payback, ToTheCentIsPaidBack) {
  const Flow flows[] = {{0.0, -0.3}, {1.0, 0.1}, {2.0, 0.1}, {3.0, 0.1}};
  EXPECT_EQ(payback(flows, 0.0).year, 3.0);
}

TEST(Payback, NothingPaidIsPaidBackAtOnce) {
  const Flow flows[] = {{0.0, 10.0}, {1.0, 5.0}};
  EXPECT_EQ(payback(flows, 0.0).year, 0.0);
  EXPECT_EQ(payback({}, 0.0).year, 0.0);
}

TEST(Payback, TellsThatItDoesNotLast) {
  // Another bank is bought in year 3.
  const Flow flows[] = {{0.0, -100.0}, {1.0, 60.0}, {2.0, 60.0}, {3.0, -100.0}, {4.0, 60.0}};
  const Payback found = payback(flows, 0.0);
  EXPECT_EQ(found.year, 2.0);
  EXPECT_FALSE(found.lasts);
}

TEST(Payback, PaymentsOfOneMomentCountTogether) {
  const Flow flows[] = {{1.0, 100.0}, {0.0, -90.0}, {1.0, -20.0}, {2.0, 15.0}};
  EXPECT_EQ(payback(flows, 0.0).year, 2.0);
}

}  // namespace
}  // namespace voltwright::cost
