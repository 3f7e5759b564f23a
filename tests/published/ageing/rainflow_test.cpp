// Rainflow counting against the worked example of the standard.
#include "engine/ageing/rainflow.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace voltwright::ageing {
namespace {

// ASTM E1049-85, figure 6 (from memory): peaks and valleys -2 1 -3 5 -1 3 -4 4 -2 give ranges 3: 0.5, 4: 1.5, 6: 0.5,
// 8: 1.0, 9: 0.5 cycles. Exact.
TEST(Rainflow, WorkedExampleOfTheStandard) {
  RainflowCounter counter;
  for (const double v : {-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0}) counter.add(v);
  std::map<long, double> counted;
  for (const Cycle& c : counter.cycles()) counted[std::lround(c.depth)] += c.count;
  const std::map<long, double> expected{{3, 0.5}, {4, 1.5}, {6, 0.5}, {8, 1.0}, {9, 0.5}};
  EXPECT_EQ(counted, expected);
}

// The same course with every straight part cut into steps: what lies on the way between peaks does not count.
TEST(Rainflow, PointsOnTheWayDoNotCount) {
  RainflowCounter counter(0.01);
  const double peaks[] = {-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0};
  for (std::size_t i = 1; i < std::size(peaks); ++i) {
    for (int k = 0; k <= 50; ++k) counter.add(peaks[i - 1] + (peaks[i] - peaks[i - 1]) * k / 50.0);
  }
  std::map<long, double> counted;
  for (const Cycle& c : counter.cycles()) counted[std::lround(c.depth)] += c.count;
  const std::map<long, double> expected{{3, 0.5}, {4, 1.5}, {6, 0.5}, {8, 1.0}, {9, 0.5}};
  EXPECT_EQ(counted, expected);
}

}  // namespace
}  // namespace voltwright::ageing
