// Size factors fall with the temperature and never favour the extremes.
#include "engine/cell/temperature_factor.h"

#include <gtest/gtest.h>

namespace voltwright::cell {
namespace {

TEST(SizeFactors, FallWithTheTemperature) {
  double before = size_factor(-40.0).factor;
  for (double t = -39.9; t < 80.0; t += 0.1) {
    const SizeFactor now = size_factor(t);
    EXPECT_LE(now.factor, before + 1e-12) << t;
    EXPECT_EQ(now.within, t >= -3.9 && t <= 51.7) << t;
    EXPECT_EQ(smooth_size_factor(t).within, now.within) << t;
    before = now.factor;
  }
}

TEST(SizeFactors, MeetTheirOwnRows) {
  EXPECT_EQ(size_factor_table().size(), 22U);
  for (const auto& row : size_factor_table()) EXPECT_DOUBLE_EQ(size_factor(row.x).factor, row.y) << row.x;
}

TEST(SizeFactors, HeatIsNoSavingBeyondTheTable) { EXPECT_DOUBLE_EQ(size_factor(70.0).factor, 0.85); }

}  // namespace
}  // namespace voltwright::cell
