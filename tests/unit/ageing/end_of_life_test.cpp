#include "engine/ageing/end_of_life.h"

#include <gtest/gtest.h>

#include <vector>

namespace voltwright::ageing {
namespace {

/// One point every half year.
std::vector<LifeMoment> curve(const std::vector<double>& capacities) {
  std::vector<LifeMoment> points;
  for (const double c : capacities) points.push_back({0.5 * static_cast<double>(points.size()), c, true});
  return points;
}

TEST(EndOfLife, CrossesBetweenTwoPoints) {
  const auto life = curve({1.0, 0.9, 0.82, 0.78, 0.72, 0.66});
  EXPECT_NEAR(*crossed_for_good(life, 0.8, 0.0), 1.25, 1e-12);
  EXPECT_NEAR(*crossed_for_good(life, 0.7, 0.0), 2.0 + 0.5 / 3.0, 1e-12);
  const LifeEnds ends = life_ends(life);
  EXPECT_NEAR(*ends.at_80, 1.25, 1e-12);
  EXPECT_NEAR(*ends.at_70, 2.0 + 0.5 / 3.0, 1e-12);
  EXPECT_FALSE(ends.plan.has_value());
}

TEST(EndOfLife, ADipDoesNotCount) {
  EXPECT_NEAR(*crossed_for_good(curve({1.0, 0.78, 0.9, 0.85, 0.75}), 0.8, 0.0), 1.75, 1e-12);
  EXPECT_FALSE(crossed_for_good(curve({1.0, 0.78, 0.9, 0.85}), 0.8, 0.0).has_value());
}

// A last reading that is low may still be a dip: the end must have lasted.
TEST(EndOfLife, TheLastReadingMayStillBeADip) {
  EXPECT_FALSE(crossed_for_good(curve({1.0, 0.9, 0.78}), 0.8, 0.4).has_value());
  EXPECT_TRUE(crossed_for_good(curve({1.0, 0.9, 0.78, 0.77}), 0.8, 0.4).has_value());
}

TEST(EndOfLife, AtItsEnds) {
  EXPECT_FALSE(crossed_for_good({}, 0.8, 0.0).has_value());
  EXPECT_EQ(crossed_for_good(curve({0.7, 0.6}), 0.8, 0.0), 0.0);
  EXPECT_FALSE(crossed_for_good(curve({0.9, 0.8}), 0.8, 0.0).has_value());  // at the limit is not below it
}

TEST(EndOfLife, ThePlanMayFailBeforeOrAfter) {
  auto life = curve({1.0, 0.95, 0.9, 0.85, 0.79});
  for (std::size_t i : {1U, 3U, 4U}) life[i].carried = false;  // one bad year in between
  EXPECT_EQ(not_carried_from(life, 0.0), 1.5);
  EXPECT_FALSE(not_carried_from(life, 0.6).has_value());
  EXPECT_EQ(life_ends(life).plan, 1.5);
}

}  // namespace
}  // namespace voltwright::ageing
