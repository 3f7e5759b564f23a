#include "engine/ageing/exposure_recorder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/base/random.h"

namespace voltwright::ageing {
namespace {

/// A year of hours: days and seasons of temperature, cycles of random depth.
struct Hour {
  double soc, temperature_C;
};

std::vector<Hour> year() {
  base::RandomStream random(11);
  std::vector<Hour> hours;
  double depth = 0.3;
  for (int h = 0; h < 8760; ++h) {
    if (h % 24 == 0) depth = 0.1 + 0.6 * random.uniform();
    const double day = 2.0 * std::numbers::pi * h / 24.0;
    hours.push_back({1.0 - depth * 0.5 * (1.0 - std::cos(day)),
                     15.0 + 10.0 * std::sin(day / 365.0) + 4.0 * std::sin(day)});
  }
  return hours;
}

Exposure recorded(const std::vector<Hour>& hours) {
  ExposureRecorder recorder;
  for (const Hour& h : hours) recorder.add(h.soc, h.temperature_C, 1.0);
  return recorder.exposure();
}

TEST(ExposureRecorder, HoursAndMeansAreExact) {
  const auto hours = year();
  const Exposure exposure = recorded(hours);
  double temperature = 0.0;
  double soc = 0.0;
  for (const Hour& h : hours) {
    temperature += h.temperature_C;
    soc += h.soc;
  }
  double sum_h = 0.0;
  for (const Dwell& d : exposure.dwell) {
    sum_h += d.hours;
    temperature -= d.temperature_C * d.hours;
    soc -= d.soc * d.hours;
  }
  EXPECT_DOUBLE_EQ(exposure.hours, 8760.0);
  EXPECT_NEAR(sum_h, 8760.0, 1e-9);
  EXPECT_NEAR(temperature, 0.0, 1e-7);
  EXPECT_NEAR(soc, 0.0, 1e-8);
  EXPECT_LT(exposure.dwell.size(), 1000U);
}

// What the bins of 2 K cost a law that doubles in 10 K.
TEST(ExposureRecorder, BinsCostAQuarterOfAPercent) {
  double exact = 0.0;
  for (const Hour& h : year()) exact += std::exp2(h.temperature_C / 10.0);
  double binned = 0.0;
  for (const Dwell& d : recorded(year()).dwell) binned += d.hours * std::exp2(d.temperature_C / 10.0);
  EXPECT_NEAR(binned, exact, 0.0025 * exact);
  EXPECT_NE(binned, exact);
}

TEST(ExposureRecorder, SwingsKeepCountAndCharge) {
  RainflowCounter counter;
  for (const Hour& h : year()) counter.add(h.soc, h.temperature_C, 1.0);
  double counts = 0.0;
  double moved = 0.0;
  double powers = 0.0;
  for (const Swing& s : counter.swings()) {
    counts += s.count;
    moved += s.count * s.depth;
    powers += s.count * std::pow(s.depth, 1.5);
  }
  const Exposure exposure = recorded(year());
  for (const Swing& s : exposure.swings) {
    counts -= s.count;
    moved -= s.count * s.depth;
  }
  EXPECT_NEAR(counts, 0.0, 1e-9);
  EXPECT_NEAR(moved, 0.0, 1e-9);
  double binned = 0.0;
  for (const Swing& s : exposure.swings) binned += s.count * std::pow(s.depth, 1.5);
  EXPECT_NEAR(binned, powers, 1e-4 * powers);
  EXPECT_LT(exposure.swings.size(), counter.swings().size());
}

// Ten years of such days take no more bins than a few years do.
TEST(ExposureRecorder, StaysBounded) {
  const auto hours = year();
  ExposureRecorder recorder;
  std::size_t after_three = 0;
  for (int y = 0; y < 10; ++y) {
    for (const Hour& h : hours) recorder.add(h.soc, h.temperature_C, 1.0);
    if (y == 2) after_three = recorder.exposure().swings.size();
  }
  EXPECT_LT(recorder.exposure().swings.size(), after_three + 10);
}

TEST(ExposureRecorder, CanBeAskedInTheMiddle) {
  ExposureRecorder asked;
  const auto hours = year();
  for (std::size_t i = 0; i < hours.size(); ++i) {
    asked.add(hours[i].soc, hours[i].temperature_C, 1.0);
    if (i % 500 == 0) (void)asked.exposure();
  }
  const Exposure a = asked.exposure();
  const Exposure b = recorded(hours);
  ASSERT_EQ(a.swings.size(), b.swings.size());
  ASSERT_EQ(a.dwell.size(), b.dwell.size());
  for (std::size_t i = 0; i < a.swings.size(); ++i) EXPECT_EQ(a.swings[i].count, b.swings[i].count);
}

// A bank that is overfull or overdrawn is recorded as it is.
TEST(ExposureRecorder, BeyondFullAndEmpty) {
  ExposureRecorder recorder;
  recorder.add(1.02, 20.0, 1.0);
  recorder.add(-0.1, -90.0, 1.0);
  recorder.add(-0.1, 200.0, 1.0);
  const Exposure exposure = recorder.exposure();
  double soc = 0.0;
  for (const Dwell& d : exposure.dwell) soc += d.soc * d.hours;
  EXPECT_NEAR(soc, 0.82, 1e-12);
  ASSERT_EQ(exposure.swings.size(), 1U);
  EXPECT_NEAR(exposure.swings[0].depth, 1.12, 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
