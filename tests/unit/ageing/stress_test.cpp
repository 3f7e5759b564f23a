#include "engine/ageing/stress.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::ageing {
namespace {

// 52.9 kJ/mol double a rate between 25 and 35 degC (own arithmetic from R T1 T2 ln 2 / 10 K).
TEST(Stress, TemperatureFactor) {
  EXPECT_DOUBLE_EQ(arrhenius(52900.0, 25.0), 1.0);
  EXPECT_NEAR(arrhenius(52900.0, 35.0), 2.0, 0.002);
  EXPECT_NEAR(arrhenius(-52900.0, 35.0), 0.5, 0.001);
}

TEST(Stress, SteppingAddsPowers) {
  EXPECT_DOUBLE_EQ(stepped(0.0, 0.5, 9.0), 3.0);
  EXPECT_DOUBLE_EQ(stepped(3.0, 0.5, 16.0), 5.0);
  EXPECT_DOUBLE_EQ(stepped(0.3, 1.0, 0.2), 0.5);
  EXPECT_EQ(stepped(0.3, 0.75, 0.0), 0.3);  // to the last digit: rest without rate is no rounding
}

TEST(Stress, FullCyclesAndEnds) {
  const Swing swing{0.6, 0.6, 0.5, 0.0, 0.0, 25.0};
  EXPECT_DOUBLE_EQ(full_cycles(swing), 0.3);
  EXPECT_DOUBLE_EQ(low_soc(swing), 0.3);
  EXPECT_DOUBLE_EQ(high_soc(swing), 0.9);
  const Swing beyond{0.6, 0.9, 1.0, 0.0, 0.0, 25.0};
  EXPECT_DOUBLE_EQ(high_soc(beyond), 1.0);
  Exposure exposure;
  exposure.swings = {swing, {0.2, 0.5, 1.0, 0.0, 0.0, 25.0}};
  EXPECT_DOUBLE_EQ(full_cycles(exposure), 0.5);
}

// A rising and a falling half cycle are one closed cycle: one depth is charged.
TEST(Stress, ChargeOfHalfCycles) {
  const Swing closed{0.6, 0.5, 1.0, 0.3, 0.4, 25.0};
  const Swing rising{0.6, 0.5, 0.5, 0.3, 0.0, 25.0};
  const Swing falling{0.6, 0.5, 0.5, 0.0, 0.4, 25.0};
  const Swing unknown{0.6, 0.5, 0.5, 0.0, 0.0, 25.0};
  EXPECT_DOUBLE_EQ(charged(closed), 0.6);
  EXPECT_DOUBLE_EQ(discharged(closed), 0.6);
  EXPECT_EQ(discharged(rising), 0.0);
  EXPECT_DOUBLE_EQ(discharged(falling), 0.6);
  // Ten falling half cycles gathered into one swing.
  EXPECT_DOUBLE_EQ(discharged({0.6, 0.5, 5.0, 0.0, 0.4, 25.0}), 6.0);
  EXPECT_DOUBLE_EQ(charged(rising), 0.6);
  EXPECT_EQ(charged(falling), 0.0);
  EXPECT_DOUBLE_EQ(charged(unknown), 0.3);
}

TEST(Stress, RatesThatAreNotKnown) {
  EXPECT_DOUBLE_EQ(mean_rate_per_h({0.5, 0.5, 1.0, 0.2, 0.4, 25.0}), 0.3);
  EXPECT_DOUBLE_EQ(mean_rate_per_h({0.5, 0.5, 1.0, 0.0, 0.4, 25.0}), 0.4);
  EXPECT_EQ(mean_rate_per_h({0.5, 0.5, 1.0, 0.0, 0.0, 25.0}), kRateIfUnknown_per_h);
  EXPECT_EQ(charge_rate_per_h({0.5, 0.5, 1.0, 0.0, 0.4, 25.0}), kRateIfUnknown_per_h);
  EXPECT_DOUBLE_EQ(discharge_rate_per_h({0.5, 0.5, 1.0, 0.0, 0.4, 25.0}), 0.4);
}

}  // namespace
}  // namespace voltwright::ageing
