// Cell resistance against measurements and data sheets.
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

// GitHub batterysim/equiv-circ-model, pouch cell of 30.6 Ah, 30 A pulse from 48 % charge at 25 degC.
TEST(Resistance, PulseOfThePouchCell) {
  const auto& r = chemistry("lmo").resistance;
  constexpr double kCapacity_Ah = 30.6;
  EXPECT_NEAR(after(r, 0.5) / kCapacity_Ah, 1.567e-3, 0.1e-3);
  EXPECT_NEAR(after(r, 27.5) / kCapacity_Ah, 2.467e-3, 0.1e-3);
}

// BPX validation of the 12.5 Ah pouch cell: (model - measured)/12.5 A at 1000 to 3000 s of 1C is 8.66 to 9.94
// mohm.
TEST(Resistance, NickelManganeseCobaltAtOneC) {
  const double whole = after(chemistry("nmc").resistance, 2000.0) / 12.5;
  EXPECT_GT(whole, 8.66e-3);
  EXPECT_LT(whole, 9.94e-3);
}

// About:Energy validation data, 2.0745 Ah iron-phosphate cell at 25 degC: 1C lies at 3.2024 V at 80 %
// and 3.1629 V at 50 % charge. The catalogue is a generic energy cell: 25 mV.
TEST(Resistance, IronPhosphateAtOneC) {
  const auto& c = chemistry("lfp");
  const double rate = 2.0 / 2.0745;  // 1C of the 2 Ah rating
  EXPECT_NEAR(curve_at(c.ocv_V, 0.8) - rate * after(c.resistance, 720.0), 3.2024, 0.025);
  EXPECT_NEAR(curve_at(c.ocv_V, 0.5) - rate * after(c.resistance, 1800.0), 3.1629, 0.025);
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

// Titanate data sheet, 40 Ah: 0.71 mohm after 10 s of discharge.
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
