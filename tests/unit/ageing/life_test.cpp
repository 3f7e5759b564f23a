#include "engine/ageing/life.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace voltwright::ageing {
namespace {

cell::LifeFigures figures() {
  cell::LifeFigures life;
  life.cycles = {2000.0, 3000.0, 6000.0};
  life.depth = 0.8;
  life.depth_exponent = 1.0;
  life.calendar_years = {8.0, 12.0, 16.0};
  life.halving_K = 10.0;
  return life;
}

TEST(Life, CyclesAtDepth) {
  EXPECT_DOUBLE_EQ(cycles_at_depth(figures(), 0.8, Spread::kTypical), 3000.0);
  EXPECT_DOUBLE_EQ(cycles_at_depth(figures(), 0.4, Spread::kTypical), 6000.0);
  EXPECT_DOUBLE_EQ(cycles_at_depth(figures(), 0.8, Spread::kShortest), 2000.0);
  EXPECT_DOUBLE_EQ(cycles_at_depth(figures(), 0.8, Spread::kLongest), 6000.0);
  // Swings below 1 % wear like 1 %, so that noise cannot divide by nothing.
  EXPECT_DOUBLE_EQ(cycles_at_depth(figures(), 0.0, Spread::kTypical),
                   cycles_at_depth(figures(), 0.01, Spread::kTypical));
}

Exposure exposure_of(std::vector<Swing> swings, double hours) {
  Exposure exposure;
  exposure.hours = hours;
  exposure.dwell = {{25.0, 0.8, hours}};
  exposure.swings = std::move(swings);
  return exposure;
}

// Miner's sum: a tenth of the cycles at each of two depths is a fifth of a life; a twentieth of the years
// besides.
TEST(Life, WearAddsUp) {
  const Wear wear = wear_of(
      figures(), exposure_of({{0.8, 0.6, 300.0}, {0.4, 0.8, 600.0}}, 0.05 * 12.0 * 8766.0), Spread::kTypical);
  EXPECT_NEAR(wear.by_cycles, 0.2, 1e-12);
  EXPECT_NEAR(wear.by_calendar, 0.05, 1e-12);
  EXPECT_NEAR(wear.total(), 0.25, 1e-12);
}

TEST(Life, SpreadScalesTheCalendarShare) {
  const Exposure exposure = exposure_of({}, 0.04 * 12.0 * 8766.0);
  EXPECT_NEAR(calendar_share(figures(), exposure.dwell), 0.04, 1e-12);
  EXPECT_NEAR(wear_of(figures(), exposure, Spread::kShortest).by_calendar, 0.06, 1e-12);
  EXPECT_NEAR(wear_of(figures(), exposure, Spread::kLongest).by_calendar, 0.03, 1e-12);
}

TEST(Life, YearsAreSeasonsToOne) {
  Wear wear;
  wear.by_cycles = 0.06;
  wear.by_calendar = 0.04;
  EXPECT_NEAR(years_of_life(wear, 0.5), 5.0, 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
