// A converter behind a cable.
#include "engine/supply/dc_dc.h"

#include <gtest/gtest.h>

namespace voltwright::supply {
namespace {

// 20 A at 13.8 V and 90 % are 307 W at the input. 13.6 V behind 79 mohm (12 AWG, 7.6 m each way): 26.7 A, 2.1
// V lost, 11.5 V left. Behind 20 mohm: 23.4 A, 0.46 V lost. The quadratic solved independently;
// practitioners' case.
TEST(DcDcInput, DrawsMoreThanItGives) {
  const DcDcInput thin = dc_dc_input(13.6, 0.079, 20.0 * 13.8, 0.9);
  ASSERT_TRUE(thin.possible);
  EXPECT_NEAR(thin.current_A, 26.7, 0.05);
  EXPECT_NEAR(thin.input_V, 11.5, 0.05);
  const DcDcInput thick = dc_dc_input(13.6, 0.020, 20.0 * 13.8, 0.9);
  EXPECT_NEAR(thick.current_A, 23.4, 0.05);
  EXPECT_NEAR(13.6 - thick.input_V, 0.46, 0.015);
}

TEST(DcDcInput, KeepsPower) {
  for (const double ohm : {0.0, 0.01, 0.05, 0.1}) {
    const DcDcInput input = dc_dc_input(14.2, ohm, 250.0, 0.88);
    EXPECT_NEAR(input.current_A * input.input_V, 250.0 / 0.88, 1e-9);
  }
}

// No more than V^2 / 4R gets through a cable.
TEST(DcDcInput, NothingBeyondTheMost) {
  const double most_W = 13.6 * 13.6 / (4.0 * 0.079);
  EXPECT_TRUE(dc_dc_input(13.6, 0.079, most_W * 0.899, 0.9).possible);
  EXPECT_FALSE(dc_dc_input(13.6, 0.079, most_W * 0.901, 0.9).possible);
}

TEST(DcDcInput, StopsBelowItsLockOut) {
  EXPECT_FALSE(dc_dc_runs(13.6, 0.079, 276.0, 0.9, 12.0));
  EXPECT_TRUE(dc_dc_runs(13.6, 0.020, 276.0, 0.9, 12.0));
  EXPECT_TRUE(dc_dc_runs(13.6, 0.079, 276.0, 0.9, 0.0)) << "no lock-out known";
}

}  // namespace
}  // namespace voltwright::supply
