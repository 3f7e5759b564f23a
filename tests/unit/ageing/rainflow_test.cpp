// The counter on series whose cycles can be seen by eye.
#include "engine/ageing/rainflow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/base/random.h"

namespace voltwright::ageing {
namespace {

std::vector<Cycle> counted(const std::vector<double>& series, double smallest = 0.002) {
  RainflowCounter counter(smallest);
  for (const double v : series) counter.add(v);
  return counter.cycles();
}

TEST(Rainflow, NothingTurnsNothingCounts) {
  EXPECT_TRUE(counted({}).empty());
  EXPECT_TRUE(counted({0.7}).empty());
  EXPECT_TRUE(counted({0.7, 0.7, 0.7}).empty());
}

TEST(Rainflow, OneWayIsHalfACycle) {
  const auto cycles = counted({1.0, 0.8, 0.6});
  ASSERT_EQ(cycles.size(), 1U);
  EXPECT_DOUBLE_EQ(cycles[0].depth, 0.4);
  EXPECT_DOUBLE_EQ(cycles[0].mean, 0.8);
  EXPECT_DOUBLE_EQ(cycles[0].count, 0.5);
}

TEST(Rainflow, EqualDaysAreOneCycleEach) {
  std::vector<double> series;
  for (int day = 0; day < 30; ++day) series.insert(series.end(), {1.0, 0.5});
  series.push_back(1.0);
  double sum = 0.0;
  for (const Cycle& c : counted(series)) {
    EXPECT_DOUBLE_EQ(c.depth, 0.5);
    EXPECT_DOUBLE_EQ(c.mean, 0.75);
    sum += c.count;
  }
  EXPECT_DOUBLE_EQ(sum, 30.0);
}

TEST(Rainflow, SmallCycleInsideALargeOne) {
  double small = 0.0, large = 0.0;
  for (const Cycle& c : counted({1.0, 0.2, 0.5, 0.4, 1.0})) (c.depth < 0.3 ? small : large) += c.count;
  EXPECT_DOUBLE_EQ(small, 1.0);
  EXPECT_DOUBLE_EQ(large, 1.0);
}

TEST(Rainflow, NoiseBelowTheThresholdIsNoCycle) {
  std::vector<double> series;
  for (int i = 0; i < 1000; ++i) series.push_back(0.5 + (i % 2 == 0 ? 0.0005 : -0.0005));
  EXPECT_TRUE(counted(series).empty());
  EXPECT_FALSE(counted(series, 0.0005).empty());
}

// Asking in the middle changes nothing.
TEST(Rainflow, CanBeAskedInTheMiddle) {
  RainflowCounter asked, quiet;
  base::RandomStream random(3);
  for (int i = 0; i < 500; ++i) {
    const double v = random.uniform();
    asked.add(v);
    quiet.add(v);
    (void)asked.cycles();
  }
  const auto a = asked.cycles();
  const auto b = quiet.cycles();
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i].depth, b[i].depth);
}

// Every way down and up is in exactly one half cycle: the ranges times twice their count add up to the length of the
// way between turning points.
TEST(Rainflow, NoWayIsLost) {
  base::RandomStream random(9);
  std::vector<double> series;
  double way = 0.0;
  for (int i = 0; i < 3000; ++i) {
    series.push_back(random.uniform());
    if (i > 0) way += std::fabs(series[series.size() - 1] - series[series.size() - 2]);
  }
  double sum = 0.0;
  for (const Cycle& c : counted(series, 0.0)) sum += 2.0 * c.count * c.depth;
  EXPECT_NEAR(sum, way, 1e-9 * way);
}

}  // namespace
}  // namespace voltwright::ageing
