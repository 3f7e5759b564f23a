// Ageing that feeds back, by a law that loses in proportion to depth.
#include "engine/advise/ageing_course.h"

#include <gtest/gtest.h>

#include "engine/advise/bank_life.h"

namespace voltwright::advise {
namespace {

using ageing::Aged;
using ageing::Exposure;
using ageing::Reach;
using ageing::YearOfUse;

/// Loses the depth of each swing in per cent, and nothing by time.
class ByDepth : public ageing::Law {
 public:
  void age(Aged& aged, const Exposure& exposure, double times) const override {
    for (const ageing::Swing& swing : exposure.swings)
      aged.cycle_loss += 0.01 * swing.depth * swing.count * times;
  }
  Reach reach(const Exposure&, const Aged&) const override { return Reach::kInside; }
};

YearOfUse year_of_depth(double depth) {
  Exposure e;
  e.swings = {{depth, 0.5, 4.0, 0.1, 0.1, 25.0}};
  return {{e, 1.0}};
}

TEST(AgeingCourse, WithoutFeedbackIsTheStraightLine) {
  const auto course = ageing_course(
      ByDepth(), [](double, double) { return year_of_depth(0.5); }, 0.6, 60.0);
  // 4 x 0.5 x 0.01 = 2 % a year.
  EXPECT_NEAR(years_at(course, 0.8), 10.0, 1e-9);
  EXPECT_NEAR(course.back().aged.capacity(), 0.6, 0.006);
}

// The same energy from less capacity goes deeper: dC/dt = -0.02 / C, so that C^2 = 1 - 0.04 t and 80 % comes
// after 9 years.
TEST(AgeingCourse, FeedbackShortensAsTheEquationSays) {
  const auto course = ageing_course(
      ByDepth(), [](double capacity, double) { return year_of_depth(0.5 / capacity); }, 0.6, 60.0);
  EXPECT_NEAR(years_at(course, 0.8), 9.0, 0.05);
  EXPECT_NEAR(years_at(course, 0.7), 12.75, 0.1);
}

TEST(AgeingCourse, NothingUsedNeverEnds) {
  const auto course = ageing_course(
      ByDepth(), [](double, double) { return YearOfUse(); }, 0.6, 30.0);
  EXPECT_EQ(course.back().years, 30.0);
  EXPECT_EQ(course.back().aged.capacity(), 1.0);
  EXPECT_EQ(years_at(course, 0.8), 30.0);
}

TEST(AgeingCourse, AFastDeathIsFollowedInShortSteps) {
  const auto course = ageing_course(
      ByDepth(), [](double, double) { return year_of_depth(10.0); }, 0.6, 60.0);
  EXPECT_NEAR(years_at(course, 0.8), 0.5, 1e-9);
  EXPECT_GT(course.size(), 30U);
}

TEST(LevelShares, StepDownFromThePresent) {
  const std::vector<double> from_new = level_shares(1.0);
  ASSERT_EQ(from_new.size(), 9U);
  EXPECT_EQ(from_new.front(), 1.0);
  EXPECT_NEAR(from_new[1], 0.95, 1e-12);
  EXPECT_NEAR(from_new.back(), 0.6, 1e-12);
  const std::vector<double> worn = level_shares(0.72);
  EXPECT_EQ(worn.front(), 0.72);
  EXPECT_NEAR(worn[1], 0.7, 1e-12);
  EXPECT_LE(worn.back(), 0.55);
  EXPECT_GE(level_shares(0.15).back(), 0.05);
}

Level level_of(double capacity, double depth) {
  Level level;
  level.capacity = capacity;
  level.seasons = {year_of_depth(depth)[0].exposure, year_of_depth(depth)[0].exposure};
  return level;
}

TEST(YearAt, BetweenLevelsIsAMixture) {
  const std::vector<Level> levels = {level_of(1.0, 0.4), level_of(0.9, 0.6)};
  Exposure rest;
  rest.hours = 100.0;
  const YearOfUse year = year_at(levels, 0.925, 1.0, rest);
  // Two seasons of each level and the rest; a quarter of the way up is the upper one's.
  ASSERT_EQ(year.size(), 5U);
  EXPECT_NEAR(year[0].per_year, 0.125, 1e-9);
  EXPECT_NEAR(year[2].per_year, 0.375, 1e-9);
  EXPECT_EQ(year[4].per_year, 1.0);
  EXPECT_NEAR(ageing::full_cycles_per_year(year), 4.0 * (0.25 * 0.4 + 0.75 * 0.6), 1e-9);
  const YearOfUse one = year_at(levels, 0.5, 2.0, {}, 1);
  ASSERT_EQ(one.size(), 1U);
  EXPECT_NEAR(one[0].per_year, 2.0, 1e-12);
}

}  // namespace
}  // namespace voltwright::advise
