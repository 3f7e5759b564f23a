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

// Miner's sum: a tenth of the cycles at each of two depths is a fifth of a life.
TEST(Life, WearAddsUp) {
  const std::vector<Cycle> cycles(300, Cycle{0.8, 0.6, 1.0});
  std::vector<Cycle> both = cycles;
  both.insert(both.end(), 1200, Cycle{0.4, 0.8, 0.5});
  const Wear wear = season_wear(figures(), both, 0.05, Spread::kTypical);
  EXPECT_NEAR(wear.by_cycles, 0.2, 1e-12);
  EXPECT_NEAR(wear.by_calendar, 0.05, 1e-12);
  EXPECT_NEAR(wear.total(), 0.25, 1e-12);
}

TEST(Life, SpreadScalesTheCalendarShare) {
  const Wear shortest = season_wear(figures(), {}, 0.04, Spread::kShortest);
  const Wear longest = season_wear(figures(), {}, 0.04, Spread::kLongest);
  EXPECT_NEAR(shortest.by_calendar, 0.06, 1e-12);
  EXPECT_NEAR(longest.by_calendar, 0.03, 1e-12);
}

TEST(Life, YearsAreSeasonsToOne) {
  Wear wear;
  wear.by_cycles = 0.06;
  wear.by_calendar = 0.04;
  EXPECT_NEAR(years_of_life(wear, 0.5), 5.0, 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
