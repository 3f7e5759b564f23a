// Open-circuit voltages against what is said of their kinds; published tables are rows of
// tests/published/cells/checks.json.
#include <gtest/gtest.h>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

// AGM 12.80 to 12.90 V full and 12.30 to 12.40 V at half charge, rested (from memory).
TEST(OpenCircuit, AbsorbentGlassMatBlock) {
  EXPECT_NEAR(6.0 * curve_at(chemistry("agm").ocv_V, 1.0), 12.85, 0.05);
  EXPECT_NEAR(6.0 * curve_at(chemistry("agm").ocv_V, 0.5), 12.35, 0.0501);
}

// Measured dU/dT of the BPX iron-phosphate cell: negative below 60 %, positive above 70 %. Half and nine
// tenths of its charge at C/20, 1.0372 of the rating.
TEST(OpenCircuit, EntropyOfIronPhosphate) {
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.4814), -0.039, 1e-3);
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.8963), 0.067, 1e-3);
}

}  // namespace
}  // namespace voltwright::published
