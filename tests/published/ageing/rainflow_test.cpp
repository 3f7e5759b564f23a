// Rainflow counting against the worked example of the standard, and Miner's sum over counted swings.
#include "engine/ageing/rainflow.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <tuple>

#include "engine/ageing/life.h"

namespace voltwright::ageing {
namespace {

std::vector<Swing> counted(const std::vector<double>& series, double smallest = kSmallestSwing) {
  RainflowCounter counter(smallest);
  for (const double v : series) counter.add(v);
  return counter.swings();
}

// ASTM E1049-85, figure 6 (two open implementations and their issue tracker agree): peaks and valleys
// -2 1 -3 5 -1 3 -4 4 -2 give ranges 3: 0.5, 4: 1.5, 6: 0.5, 8: 1.0, 9: 0.5 cycles, in this order and with
// these means. Exact.
TEST(Rainflow, WorkedExampleOfTheStandard) {
  const auto swings = counted({-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0});
  const double expected[][3] = {{3, -0.5, 0.5}, {4, -1, 0.5}, {4, 1, 1},  {8, 1, 0.5},
                                {9, 0.5, 0.5},  {8, 0, 0.5},  {6, 1, 0.5}};
  ASSERT_EQ(swings.size(), std::size(expected));
  for (std::size_t i = 0; i < swings.size(); ++i) {
    EXPECT_EQ(swings[i].depth, expected[i][0]) << i;
    EXPECT_EQ(swings[i].mean_soc, expected[i][1]) << i;
    EXPECT_EQ(swings[i].count, expected[i][2]) << i;
  }
}

// The same course with every straight part cut into steps: what lies on the way between peaks does not count.
TEST(Rainflow, PointsOnTheWayDoNotCount) {
  const double peaks[] = {-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0};
  std::vector<double> series;
  for (std::size_t i = 1; i < std::size(peaks); ++i) {
    for (int k = 0; k <= 50; ++k) series.push_back(peaks[i - 1] + (peaks[i] - peaks[i - 1]) * k / 50.0);
  }
  std::map<long, double> ranges;
  for (const Swing& s : counted(series, 0.01)) ranges[std::lround(s.depth)] += s.count;
  const std::map<long, double> expected{{3, 0.5}, {4, 1.5}, {6, 0.5}, {8, 1.0}, {9, 0.5}};
  EXPECT_EQ(ranges, expected);
}

// Two courses of charge worked by hand: full cycles of 1.80 and 1.10 capacities.
TEST(Rainflow, CoursesOfCharge) {
  std::map<std::tuple<long, long>, double> per_mille;
  double moved = 0.0;
  for (const Swing& s : counted({1.0, 0.5, 0.8, 0.2, 1.0, 0.6, 0.9, 0.6, 1.0})) {
    per_mille[{std::lround(1000.0 * s.depth), std::lround(1000.0 * s.mean_soc)}] += s.count;
    moved += s.count * s.depth;
  }
  const std::map<std::tuple<long, long>, double> expected{
      {{300, 650}, 1.0}, {{300, 750}, 1.0}, {{400, 800}, 1.0}, {{800, 600}, 1.0}};
  EXPECT_EQ(per_mille, expected);
  EXPECT_NEAR(moved, 1.80, 1e-12);
  moved = 0.0;
  for (const Swing& s : counted({1.0, 0.6, 0.7, 0.5, 0.9, 0.4, 1.0})) moved += s.count * s.depth;
  EXPECT_NEAR(moved, 1.10, 1e-12);
}

cell::LifeFigures power_curve(double full_cycles, double exponent) {
  cell::LifeFigures life;
  life.cycles = {full_cycles, full_cycles, full_cycles};
  life.depth = 1.0;
  life.depth_exponent = exponent;
  life.calendar_years = {10.0, 10.0, 10.0};
  return life;
}

// N = 500 D^-1.2: the first course above does 0.003139410 of a life (computed from the formula).
TEST(Miner, SumOverACourse) {
  Exposure exposure;
  exposure.swings = counted({1.0, 0.5, 0.8, 0.2, 1.0, 0.6, 0.9, 0.6, 1.0});
  EXPECT_NEAR(wear_of(power_curve(500.0, 1.2), exposure, Spread::kTypical).by_cycles, 0.003139410, 1e-9);
}

// Miner's sum of a law Q = k(D) sqrt(FEC) is (Q / Q_end)^2: at half C the published iron-phosphate law gives
// 5.3153 % after 1000 cycles of 80 % and 5000 of 20 %, and 0.07063 of a life to 20 %. Between two depths a
// straight line in logarithms is the curve of that law.
TEST(Miner, OfASquareRootLawIsTheSquareOfItsLoss) {
  const auto k = [](double depth) {
    return (0.0630 * 0.5 + 0.0971) * (4.0253 * std::pow(depth - 0.6, 3.0) + 1.0923);
  };
  const auto cycles = [&](double depth) { return std::pow(20.0 / k(depth), 2.0) / depth; };
  const double exponent = std::log(cycles(0.2) / cycles(0.8)) / std::log(0.8 / 0.2);
  cell::LifeFigures life = power_curve(cycles(0.8), exponent);
  life.depth = 0.8;
  Exposure exposure;
  exposure.swings = {{0.8, 0.5, 1000.0}, {0.2, 0.5, 5000.0}};
  const double damage = wear_of(life, exposure, Spread::kTypical).by_cycles;
  const double loss = std::sqrt(800.0 * std::pow(k(0.8), 2.0) + 1000.0 * std::pow(k(0.2), 2.0));
  EXPECT_NEAR(loss, 5.3153, 1e-4);
  EXPECT_NEAR(damage, 0.07063, 1e-5);
  EXPECT_NEAR(damage, std::pow(loss / 20.0, 2.0), 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
