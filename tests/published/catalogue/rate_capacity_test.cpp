// Capacity against rate of the two-tank model (Manwell and McGowan 1993) and against temperature.
#include <gtest/gtest.h>

#include "engine/cell/two_tank.h"
#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

// Lead-acid ends by voltage; the floor of the tanks lies where the 20 h current reaches 1.75 V per cell. It
// must not cut off the rated capacity (20 h to 1.75 or 1.80 V) and leave no more than 2 % beyond it. The
// published rates themselves: tests/published/leadacid/rate_rows_test.cpp.
TEST(RateCapacity, FloorOfTheLeadAcidTanks) {
  for (const char* id : {"agm", "gel", "flooded"}) {
    const double to_the_floor = cell::capacity_in_hours(chemistry(id).availability, 20.0);
    EXPECT_GT(to_the_floor, 0.999) << id;
    EXPECT_LT(to_the_floor, 1.02) << id;
  }
}

TEST(RateCapacity, LithiumGivesAllAtAnyRate) {
  for (const char* id : {"lfp", "nmc", "nca", "lco", "lmo", "lto"}) {
    const cell::Availability& all = chemistry(id).availability;
    EXPECT_DOUBLE_EQ(cell::capacity_in_hours(all, 0.5), all.full_over_rated) << id;
  }
}

// AGM data sheets: 86 % at 0 degC, 74 % at -10 degC, 65 % at -15 degC.
TEST(ColdCapacity, AbsorbentGlassMat) {
  const auto& share = chemistry("agm").capacity_by_temperature;
  EXPECT_DOUBLE_EQ(curve_at(share, 0.0), 0.86);
  EXPECT_DOUBLE_EQ(curve_at(share, -10.0), 0.74);
  EXPECT_DOUBLE_EQ(curve_at(share, -15.0), 0.65);
}

// IEEE Std 485 size factors, table 1 (from memory): 1.19 at 10 degC, 1.52 at -3.9 degC; within 1.5 %.
TEST(ColdCapacity, FloodedAgainstSizeFactors) {
  const auto& share = chemistry("flooded").capacity_by_temperature;
  EXPECT_NEAR(1.0 / curve_at(share, 10.0), 1.19, 0.015 * 1.19);
  EXPECT_NEAR(1.0 / curve_at(share, -3.9), 1.52, 0.015 * 1.52);
}

// Battery University BU-410, table 1: no charge of graphite cells at or below freezing, lead-acid 0.3C.
TEST(ColdCharge, LimitsOfTheKinds) {
  for (const char* id : {"lfp", "nmc", "nca", "lco", "lmo"}) {
    EXPECT_DOUBLE_EQ(curve_at(chemistry(id).limits.charge_rate_by_C, 0.0), 0.0) << id;
    EXPECT_DOUBLE_EQ(curve_at(chemistry(id).limits.charge_rate_by_C, -1.0), 0.0) << id;
    // 0.1 of the capacity an hour up to 5 degC, 0.3 up to 10 degC: common practice, no source.
    EXPECT_DOUBLE_EQ(curve_at(chemistry(id).limits.charge_rate_by_C, 3.0), 0.1) << id;
    EXPECT_DOUBLE_EQ(curve_at(chemistry(id).limits.charge_rate_by_C, 8.0), 0.3) << id;
    EXPECT_GE(curve_at(chemistry(id).limits.charge_rate_by_C, 15.0), 1.0) << id;
  }
  // Titanate charges down to -30 degC (from memory); sodium-ion from -10 degC, at 1C from 0 degC (data sheet
  // in the data set of key sodiumData).
  EXPECT_GE(curve_at(chemistry("lto").limits.charge_rate_by_C, -25.0), 1.0);
  EXPECT_DOUBLE_EQ(curve_at(chemistry("sodium-ion").limits.charge_rate_by_C, -10.0), 0.0);
  EXPECT_GT(curve_at(chemistry("sodium-ion").limits.charge_rate_by_C, -5.0), 0.0);
  EXPECT_DOUBLE_EQ(curve_at(chemistry("sodium-ion").limits.charge_rate_by_C, 0.5), 1.0);
  for (const char* id : {"agm", "gel", "flooded"}) {
    EXPECT_DOUBLE_EQ(curve_at(chemistry(id).limits.charge_rate_by_C, -1.0), 0.3) << id;
  }
}

}  // namespace
}  // namespace voltwright::published
