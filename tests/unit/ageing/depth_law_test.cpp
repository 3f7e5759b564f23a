#include "engine/ageing/depth_law.h"

#include <gtest/gtest.h>

namespace voltwright::ageing {
namespace {

cell::LifeFigures figures() {
  cell::LifeFigures life;
  life.cycles = {500.0, 700.0, 1000.0};
  life.depth = 0.5;
  life.depth_exponent = 1.3;
  life.calendar_years = {4.0, 6.0, 10.0};
  life.halving_K = 8.3;
  return life;
}

Exposure week_at(double temperature_C) {
  Exposure exposure;
  exposure.hours = 168.0;
  exposure.dwell = {{temperature_C, 0.9, 168.0}};
  exposure.swings = {{0.5, 0.75, 7.0}, {0.1, 0.9, 0.5}};
  return exposure;
}

// Miner: the loss is 20 % when the wear is 1, whatever the pieces.
TEST(DepthLaw, IsMinersSum) {
  const DepthLaw law(figures());
  const Exposure week = week_at(25.0);
  const Wear wear = wear_of(figures(), week, Spread::kTypical);
  Aged aged;
  law.age(aged, week, 40.0);
  EXPECT_NEAR(aged.cycle_loss, 0.2 * 40.0 * wear.by_cycles, 1e-14);
  EXPECT_NEAR(aged.calendar_loss, 0.2 * 40.0 * wear.by_calendar, 1e-14);
  EXPECT_NEAR(aged.full_cycles, 40.0 * (3.5 + 0.05), 1e-12);
  EXPECT_NEAR(aged.hours, 40.0 * 168.0, 1e-9);
  Aged end;
  law.age(end, week, 1.0 / wear.total());
  EXPECT_NEAR(end.capacity(), 0.8, 1e-12);
}

TEST(DepthLaw, KnowsItsReach) {
  const DepthLaw law(figures());
  EXPECT_EQ(law.reach(week_at(25.0), {}), Reach::kInside);
  EXPECT_EQ(law.reach(week_at(41.0), {}), Reach::kOutside);
  EXPECT_EQ(law.reach(week_at(5.0), {}), Reach::kExtrapolated);
  Aged old;
  old.hours = 10.1 * 8766.0;
  EXPECT_EQ(law.reach(week_at(25.0), old), Reach::kExtrapolated);
}

TEST(DepthLaw, SpreadsAsItsFigures) {
  Aged shortest;
  Aged longest;
  DepthLaw(figures(), Spread::kShortest).age(shortest, week_at(25.0), 10.0);
  DepthLaw(figures(), Spread::kLongest).age(longest, week_at(25.0), 10.0);
  EXPECT_NEAR(shortest.cycle_loss / longest.cycle_loss, 2.0, 1e-12);
  EXPECT_NEAR(shortest.calendar_loss / longest.calendar_loss, 2.5, 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
