// Cycle life against depth and calendar life against temperature.
#include "engine/ageing/life.h"

#include <gtest/gtest.h>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

using ageing::Spread;

// Glass mat, integrator's note (bib:agmIntegrator): 1000 cycles at 50 % and 500 at 80 %; the power law through both gives
// 360 at 100 %. The record keeps the exponent; tolerance 1 %.
TEST(CycleLife, GlassMatAgainstDepth) {
  const cell::LifeFigures& life = chemistry("agm").life;
  const double half = ageing::cycles_at_depth(life, 0.5, Spread::kLongest);
  EXPECT_NEAR(half, 1000.0, 10.0);
  EXPECT_NEAR(ageing::cycles_at_depth(life, 0.8, Spread::kLongest), 500.0, 5.0);
  EXPECT_NEAR(ageing::cycles_at_depth(life, 1.0, Spread::kLongest), 360.0, 3.6);
}

// Lead-acid life halves for every 10 K above 25 degC (two independent texts): 0.5 at 35, 0.25 at 45 degC. Exact.
TEST(CalendarLife, HalvesEveryTenKelvin) {
  cell::LifeFigures life;
  life.calendar_years = {5.0, 8.0, 12.0};
  life.halving_K = 10.0;
  const double at_25 = ageing::calendar_wear_per_h(life, 25.0);
  EXPECT_DOUBLE_EQ(at_25 * 8.0 * 8766.0, 1.0);
  EXPECT_DOUBLE_EQ(ageing::calendar_wear_per_h(life, 35.0), 2.0 * at_25);
  EXPECT_DOUBLE_EQ(ageing::calendar_wear_per_h(life, 45.0), 4.0 * at_25);
}

}  // namespace
}  // namespace voltwright::published
