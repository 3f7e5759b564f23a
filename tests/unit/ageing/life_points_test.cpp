#include "engine/ageing/life_points.h"

#include <gtest/gtest.h>

namespace voltwright::ageing {
namespace {

LifePoint point(double low, double high, double temperature_C, double discharge_per_h, double cycles) {
  return {low, high, temperature_C, 0.5, discharge_per_h, {cycles, cycles, cycles}, false};
}

std::vector<LifePoint> points() {
  return {point(0, 1, 25, 0.5, 400),    point(0, 1, 25, 1.0, 500), point(0.375, 0.625, 25, 0.5, 1600),
          point(0, 1, 35, 2.0, 999),    point(0, 1, 35, 1.0, 250), point(0, 1, 15, 3.0, 100),
          point(0.2, 0.8, 25, 3.0, 700)};
}

// The slowest rate at 25 degC gives the depths; a temperature needs its twin at 25 degC.
TEST(LifePoints, CurvesOfASet) {
  const LifePointFigures figures = figures_of(points());
  ASSERT_EQ(figures.full_cycles_by_depth.size(), 3U);
  EXPECT_EQ(figures.full_cycles_by_depth[0].x, 0.25);
  EXPECT_EQ(figures.full_cycles_by_depth[0].y, 1600.0);
  EXPECT_EQ(figures.full_cycles_by_depth[1].y, 700.0);
  EXPECT_EQ(figures.full_cycles_by_depth[2].y, 400.0);
  ASSERT_EQ(figures.life_factor_by_C.size(), 2U);
  EXPECT_EQ(figures.life_factor_by_C[1].x, 35.0);
  EXPECT_EQ(figures.life_factor_by_C[1].y, 0.5);
  EXPECT_TRUE(figures_of({point(0, 1, 35, 1.0, 250)}).full_cycles_by_depth.empty());
}

// ln over ln between the points, ends held: half depth lies halfway from 1600 at a quarter to 400 at one.
TEST(LifePoints, BetweenDepths) {
  LifePointFigures figures;
  figures.full_cycles_by_depth = {{0.25, 1600.0}, {1.0, 400.0}};
  figures.life_factor_by_C = {{25.0, 1.0}, {35.0, 0.5}};
  const LifePoints part(figures, {});
  EXPECT_NEAR(part.full_cycles_to_end(0.5, 25.0), 800.0, 1e-9);
  EXPECT_NEAR(part.full_cycles_to_end(0.1, 25.0), 1600.0, 1e-9);
  EXPECT_NEAR(part.full_cycles_to_end(1.0, 30.0), 300.0, 1e-9);
  EXPECT_NEAR(part.full_cycles_to_end(1.0, 60.0), 200.0, 1e-9);
}

// To the end of life at 90 % after ten years at 25 degC, five at 35, and no slower than at 10 degC in the
// cold.
TEST(LifePoints, ShelfLife) {
  LifePointFigures figures = figures_of(points());
  figures.end_of_life_share = 0.9;
  figures.shelf_years = 10.0;
  figures.shelf_halving_K = 10.0;
  const LifePoints part(figures, {});
  const auto lost = [&](double temperature_C) {
    Exposure year;
    year.dwell = {{temperature_C, 0.5, 8766.0}};
    Aged aged;
    part.wear(aged, year, 1.0);
    return aged.calendar_loss;
  };
  EXPECT_NEAR(lost(25.0), 0.01, 1e-12);
  EXPECT_NEAR(lost(35.0), 0.02, 1e-12);
  EXPECT_EQ(lost(0.0), lost(10.0));
}

}  // namespace
}  // namespace voltwright::ageing
