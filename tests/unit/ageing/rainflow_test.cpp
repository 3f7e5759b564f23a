// The counter on series whose cycles can be seen by eye.
#include "engine/ageing/rainflow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/base/random.h"

namespace voltwright::ageing {
namespace {

std::vector<Swing> counted(const std::vector<double>& series, double smallest = 0.002) {
  RainflowCounter counter(smallest);
  for (const double v : series) counter.add(v);
  return counter.swings();
}

TEST(Rainflow, NothingTurnsNothingCounts) {
  EXPECT_TRUE(counted({}).empty());
  EXPECT_TRUE(counted({0.7}).empty());
  EXPECT_TRUE(counted({0.7, 0.7, 0.7}).empty());
}

TEST(Rainflow, OneWayIsHalfACycle) {
  const auto swings = counted({1.0, 0.8, 0.6});
  ASSERT_EQ(swings.size(), 1U);
  EXPECT_DOUBLE_EQ(swings[0].depth, 0.4);
  EXPECT_DOUBLE_EQ(swings[0].mean_soc, 0.8);
  EXPECT_DOUBLE_EQ(swings[0].count, 0.5);
}

TEST(Rainflow, EqualDaysAreOneCycleEach) {
  std::vector<double> series;
  for (int day = 0; day < 30; ++day) series.insert(series.end(), {1.0, 0.5});
  series.push_back(1.0);
  double sum = 0.0;
  for (const Swing& c : counted(series)) {
    EXPECT_DOUBLE_EQ(c.depth, 0.5);
    EXPECT_DOUBLE_EQ(c.mean_soc, 0.75);
    sum += c.count;
  }
  EXPECT_DOUBLE_EQ(sum, 30.0);
}

TEST(Rainflow, SmallCycleInsideALargeOne) {
  double small = 0.0, large = 0.0;
  for (const Swing& c : counted({1.0, 0.2, 0.5, 0.4, 1.0})) (c.depth < 0.3 ? small : large) += c.count;
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
    (void)asked.swings();
  }
  const auto a = asked.swings();
  const auto b = quiet.swings();
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i].depth, b[i].depth);
}

// Every way down and up is in exactly one half cycle: the ranges times twice their count add up to the length
// of the way between turning points.
TEST(Rainflow, NoWayIsLost) {
  base::RandomStream random(9);
  std::vector<double> series;
  double way = 0.0;
  for (int i = 0; i < 3000; ++i) {
    series.push_back(random.uniform());
    if (i > 0) way += std::fabs(series[series.size() - 1] - series[series.size() - 2]);
  }
  double sum = 0.0;
  for (const Swing& c : counted(series, 0.0)) sum += 2.0 * c.count * c.depth;
  EXPECT_NEAR(sum, way, 1e-9 * way);
}

// Two days at 10 degC down and 30 degC up, with rests in between that belong to no rate: 5 h down by
// half, 2.5 h up.
TEST(Rainflow, RatesAndTemperature) {
  RainflowCounter counter;
  counter.add(1.0, 20.0, 1.0);
  for (int day = 0; day < 3; ++day) {
    for (int hour = 1; hour <= 5; ++hour) counter.add(1.0 - 0.1 * hour, 10.0, 1.0);
    for (int i = 1; i <= 5; ++i) counter.add(0.5 + 0.1 * i, 30.0, 0.5);
    for (int hour = 0; hour < 10; ++hour) counter.add(1.0, 20.0, 1.0);
  }
  double counts = 0.0;
  for (const Swing& s : counter.swings()) {
    EXPECT_NEAR(s.depth, 0.5, 1e-12);
    EXPECT_NEAR(s.mean_soc, 0.75, 1e-12);
    counts += s.count;
    if (s.charge_per_h > 0.0) {
      EXPECT_NEAR(s.charge_per_h, 0.2, 1e-12);
    }
    if (s.discharge_per_h > 0.0) {
      EXPECT_NEAR(s.discharge_per_h, 0.1, 1e-12);
    }
    EXPECT_TRUE(s.charge_per_h > 0.0 || s.discharge_per_h > 0.0);
    EXPECT_EQ(s.count == 1.0, s.charge_per_h > 0.0 && s.discharge_per_h > 0.0);
    EXPECT_GT(s.temperature_C, 10.0 - 1e-12);
    EXPECT_LT(s.temperature_C, 30.0 + 1e-12);
  }
  EXPECT_DOUBLE_EQ(counts, 3.0);
}

// A trickle of long hours counts by its charge: 0.4 at 0.4 per hour and 0.1 at 0.01 make 0.322, not 0.5 in 11
// h.
TEST(Rainflow, RatesAreMeansOverCharge) {
  RainflowCounter counter;
  counter.add(0.5);
  counter.add(0.9, 25.0, 1.0);
  for (int i = 1; i <= 10; ++i) counter.add(0.9 + 0.01 * i, 25.0, 1.0);
  const auto swings = counter.swings();
  ASSERT_EQ(swings.size(), 1U);
  EXPECT_NEAR(swings[0].charge_per_h, (0.4 * 0.4 + 0.1 * 0.01) / 0.5, 1e-12);
  EXPECT_EQ(swings[0].discharge_per_h, 0.0);
}

// A quick inner swing takes its way out of the slow one around it.
TEST(Rainflow, InnerSwingKeepsItsOwnRates) {
  RainflowCounter counter;
  double soc = 1.0;
  counter.add(soc);
  const auto go = [&](double to, double per_h, double temperature_C) {
    counter.add(to, temperature_C, std::fabs(to - soc) / per_h);
    soc = to;
  };
  go(0.6, 0.05, 10.0);
  go(0.7, 0.8, 30.0);
  go(0.6, 0.4, 30.0);
  go(0.2, 0.05, 10.0);
  go(1.0, 0.1, 20.0);
  const auto swings = counter.swings();
  const auto inner = std::find_if(swings.begin(), swings.end(), [](const Swing& s) { return s.depth < 0.2; });
  ASSERT_NE(inner, swings.end());
  EXPECT_EQ(inner->count, 1.0);
  EXPECT_NEAR(inner->charge_per_h, 0.8, 1e-12);
  // The way back is a fifth of the long way down that closes it: 0.1 at 0.4 and 0.4 at 0.05.
  EXPECT_NEAR(inner->discharge_per_h, (0.1 * 0.4 + 0.4 * 0.05) / 0.5, 1e-12);
  EXPECT_GT(inner->temperature_C, 10.0);
}

// What waits grows with what cannot be paired: not at all in equal days, by one a turn in ever smaller
// swings.
TEST(Rainflow, KeepsOnlyWhatWaits) {
  RainflowCounter days;
  RainflowCounter dying;
  std::size_t most = 0;
  for (int day = 0; day < 1000; ++day) {
    days.add(1.0);
    days.add(0.5 + 0.0001 * (day % 100));
    days.drain([](const Swing&) {});
    most = std::max(most, days.waiting());
    dying.add(0.5 + (day % 2 == 0 ? 1.0 : -1.0) / (3.0 + day));
  }
  EXPECT_LE(most, 4U);
  EXPECT_GT(dying.waiting(), 20U);
}

}  // namespace
}  // namespace voltwright::ageing
