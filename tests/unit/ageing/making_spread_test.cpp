// Lives of cells that differ, and of the banks made of them.
#include "engine/ageing/making_spread.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "engine/bank/spread.h"

namespace voltwright::ageing {
namespace {

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

TEST(MakingSpread, MeanAndVariationOfOneCell) {
  const std::vector<double> lives = bank_lives({1, 1}, 0.136, 7, 20000);
  const double mean = mean_of(lives);
  double squares = 0.0;
  for (const double life : lives) squares += (life - mean) * (life - mean);
  EXPECT_NEAR(mean, 1.0, 0.004);  // four standard errors
  EXPECT_NEAR(std::sqrt(squares / 20000.0) / mean, 0.136, 0.004);
}

// The expected least of n normal numbers is 1 - spread m(n), m(4) = 1.03; a log-normal spread comes a little
// higher.
TEST(MakingSpread, TheWeakestOfFourIsNearTheExpectedExtreme) {
  const double spread = 0.1;
  const double mean = mean_of(bank_lives({4, 1}, spread, 7, 20000));
  EXPECT_NEAR(mean, 1.0 - spread * bank::expected_extreme(4), 0.01);
  EXPECT_GT(mean, 1.0 - spread * bank::expected_extreme(4));
}

TEST(MakingSpread, MoreInSeriesLastLessAndMoreInParallelDifferLess) {
  const units::Ranged four = central_90(bank_lives({4, 1}, 0.136, 7, 4000));
  const units::Ranged sixteen = central_90(bank_lives({16, 1}, 0.136, 7, 4000));
  const units::Ranged side_by_side = central_90(bank_lives({4, 4}, 0.136, 7, 4000));
  EXPECT_LT(sixteen.typical, four.typical);
  EXPECT_LT(side_by_side.max - side_by_side.min, four.max - four.min);
}

TEST(MakingSpread, NoSpreadIsOne) {
  const units::Ranged life = central_90(bank_lives({16, 2}, 0.0, 7, 10));
  EXPECT_EQ(life.min, 1.0);
  EXPECT_EQ(life.max, 1.0);
}

TEST(MakingSpread, SameSeedSameDraws) {
  EXPECT_EQ(bank_lives({4, 2}, 0.2, 11, 50), bank_lives({4, 2}, 0.2, 11, 50));
  EXPECT_NE(bank_lives({4, 2}, 0.2, 11, 50), bank_lives({4, 2}, 0.2, 12, 50));
}

}  // namespace
}  // namespace voltwright::ageing
