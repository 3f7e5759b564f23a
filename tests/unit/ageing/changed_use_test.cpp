// Changed habits of a use: what is moved, and by how much.
#include "engine/ageing/changed_use.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::ageing {
namespace {

Exposure day() {
  Exposure e;
  e.hours = 24.0;
  e.dwell = {{30.0, 1.0, 12.0}, {20.0, 0.4, 12.0}};
  e.swings = {{0.6, 0.7, 1.0, 0.2, 0.1, 25.0}};
  e.plates.hours = 24.0;
  e.plates.drawn = 0.6;
  e.plates.weighted = 0.9;
  e.plates.slow_corrosion = 3.0;
  e.plates.fast_corrosion = 2.0;
  return e;
}

TEST(ChangedUse, CoolerMovesTemperaturesAndCorrosion) {
  const Exposure e = cooler(day(), 15.0, 15.0);
  EXPECT_EQ(e.dwell[0].temperature_C, 15.0);
  EXPECT_EQ(e.swings[0].temperature_C, 10.0);
  // k halves in 15 K (Schiffer et al. 2007); the sum below the knee holds its power of 5/3.
  EXPECT_DOUBLE_EQ(e.plates.fast_corrosion, 1.0);
  EXPECT_NEAR(e.plates.slow_corrosion, 3.0 * std::pow(0.5, 5.0 / 3.0), 1e-12);
  EXPECT_EQ(e.plates.weighted, 0.9);
}

TEST(ChangedUse, StoppingMovesTheCourseDownAndKeepsTheDepth) {
  const Exposure e = stopping_at(day(), 0.9);
  EXPECT_NEAR(e.dwell[0].soc, 0.9, 1e-12);
  EXPECT_NEAR(e.dwell[1].soc, 0.3, 1e-12);
  EXPECT_NEAR(e.swings[0].depth, 0.6, 1e-12);
  EXPECT_NEAR(e.swings[0].mean_soc, 0.6, 1e-12);
}

TEST(ChangedUse, StoppingAboveTheHighestChangesNothing) {
  const Exposure e = stopping_at(day(), 1.0);
  EXPECT_EQ(e.dwell[1].soc, 0.4);
  EXPECT_EQ(e.swings[0].mean_soc, 0.7);
}

TEST(ChangedUse, StoppingLowCutsWhatHasNoRoom) {
  const Exposure e = stopping_at(day(), 0.5);
  EXPECT_EQ(e.dwell[1].soc, 0.0);
  EXPECT_NEAR(e.swings[0].depth, 0.5, 1e-12);
  EXPECT_NEAR(e.swings[0].mean_soc, 0.25, 1e-12);
}

TEST(ChangedUse, TwiceTheBankHalvesDepthAndRate) {
  const Exposure e = shared_by(day(), 2.0);
  EXPECT_DOUBLE_EQ(e.dwell[1].soc, 0.7);
  EXPECT_DOUBLE_EQ(e.swings[0].depth, 0.3);
  EXPECT_DOUBLE_EQ(e.swings[0].mean_soc, 0.85);
  EXPECT_DOUBLE_EQ(e.swings[0].charge_per_h, 0.1);
  EXPECT_DOUBLE_EQ(e.plates.drawn, 0.3);
  EXPECT_DOUBLE_EQ(e.plates.weighted, 0.45);
  EXPECT_EQ(e.plates.fast_corrosion, 2.0);
}

TEST(ChangedUse, StoredKeepsTheSwings) {
  const Exposure e = stored_at(day(), 0.5);
  EXPECT_EQ(e.dwell[0].soc, 0.5);
  EXPECT_EQ(e.dwell[1].soc, 0.5);
  EXPECT_EQ(e.swings[0].mean_soc, 0.7);
}

}  // namespace
}  // namespace voltwright::ageing
