// Cell resistance against data sheets; whole measured discharges and pulses stand in
// tests/published/replay/.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

/// Apparent resistance after `seconds` of constant current from rest.
double after(const cell::Resistance& r, double seconds) {
  return r.ohmic_ohm_Ah + r.fast_ohm_Ah * (1.0 - std::exp(-seconds / r.fast_tau_s)) +
         r.slow_ohm_Ah * (1.0 - std::exp(-seconds / r.slow_tau_s));
}

// Pack data sheets without electronics, 12.8 V 100 to 200 Ah: about 2 mohm; 50 to 75 mohm*Ah per cell.
TEST(Resistance, IronPhosphateOhmic) {
  EXPECT_GE(chemistry("lfp").resistance.ohmic_ohm_Ah, 0.050);
  EXPECT_LE(chemistry("lfp").resistance.ohmic_ohm_Ah, 0.075);
}

// AGM data sheets, 25 rows: 97.5 * C20^-0.659 mohm per 12 V block; 4.7 mohm (3.9 to 5.4) at 100 Ah.
TEST(Resistance, AbsorbentGlassMatBlock) {
  const double block_100Ah = 6.0 * chemistry("agm").resistance.ohmic_ohm_Ah / 100.0;
  EXPECT_NEAR(block_100Ah, 97.5e-3 * std::pow(100.0, -0.659), 0.5e-3);
}

// Titanate data sheet, 40 Ah: 0.71 mohm after 10 s of discharge. The sheet's 0.52 mohm after 10 s of charge
// is not met: the circuit has one resistance for both ways, and the larger is the cautious one.
TEST(Resistance, TitanateAfterTenSeconds) {
  EXPECT_NEAR(after(chemistry("lto").resistance, 10.0) / 40.0, 0.71e-3, 0.02e-3);
}

// Schiffer and others 2007: 2.45 V must give 11.246 times the gassing current of 2.23 V.
TEST(SideReaction, GrowthWithVoltage) {
  const auto& s = chemistry("flooded").side_reaction;
  EXPECT_NEAR(std::exp(s.per_V * (2.45 - s.reference_V)), 11.246, 1e-3);
  EXPECT_NEAR(s.current_A_per_Ah * 100.0, 0.020, 1e-12);
  EXPECT_NEAR(chemistry("agm").side_reaction.current_A_per_Ah * 100.0, 0.010, 1e-12);
}

}  // namespace
}  // namespace voltwright::published
