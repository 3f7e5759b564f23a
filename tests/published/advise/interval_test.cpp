// Score interval of a share, Wilson 1927.
#include "engine/advise/interval.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::advise {
namespace {

// 95 %, worked out independently: 1 of 1000 lies between 0.02 and 0.56 %, 0 of 1000 below 0.383 %, 0 of 100 below
// 3.70 %, 3 of 1000 between 0.10 and 0.88 %. Half a unit of the last digit.
TEST(WilsonInterval, Values) {
  const struct {
    int events, seasons;
    double low, high, tolerance;
  } kRows[] = {{1, 1000, 0.0002, 0.0056, 6e-5}, {0, 1000, 0.0, 0.00383, 5e-6}, {0, 100, 0.0, 0.0370, 5e-5},
               {3, 1000, 0.0010, 0.0088, 5e-5}, {8, 10, 0.490, 0.943, 5e-4},   {100, 100, 0.9630, 1.0, 5e-5}};
  for (const auto& row : kRows) {
    const Chance c = chance_of(row.events, row.seasons);
    EXPECT_NEAR(c.low, row.low, row.tolerance) << row.events << " of " << row.seasons;
    EXPECT_NEAR(c.high, row.high, row.tolerance) << row.events << " of " << row.seasons;
  }
}

// By definition the ends are the shares p from which the observed share is 1.95996 standard errors sqrt(p (1 - p) / n)
// away. Tolerance: rounding.
TEST(WilsonInterval, EndsAreTwoErrorsAway) {
  for (const int seasons : {20, 100, 1000}) {
    for (int events = 1; events < seasons; events += 1 + seasons / 13) {
      const Chance c = chance_of(events, seasons);
      for (const double end : {c.low, c.high}) {
        EXPECT_NEAR(std::fabs(c.share - end), 1.959963985 * std::sqrt(end * (1.0 - end) / seasons), 1e-9);
      }
    }
  }
}

}  // namespace
}  // namespace voltwright::advise
