// Heat of a bank and its temperature.
#include <gtest/gtest.h>

#include "tests/published/bank/plain_bank.h"

namespace voltwright::published {
namespace {

// Joule's law: 50 A through 15 mohm give 37.5 W. Bernardi, Pawlikowski and Newman 1985: reversible heat -I T dU/dT, four
// cells with -0.04 mV/K at 298.15 K and 50 A: 2.385 W are released. Tolerance 1 mW.
TEST(Heat, JouleAndReversible) {
  cell::Chemistry c = plain_chemistry(3.3);
  c.entropic_mV_per_K = {{0.0, -0.04}, {1.0, -0.04}};
  c.resistance.ohmic_ohm_Ah = 0.015 * 100.0 / 4.0;
  PlainBank plain(c, 100.0);
  plain.battery.cells_in_series = 4;
  const auto p = plain.parameters(60.0);
  bank::State<double> s;
  s.temperature_C = 25.0;
  const auto losses = run(p, s, 50.0);
  EXPECT_NEAR(losses.ohmic_W, 37.5, 1e-9);
  EXPECT_NEAR(losses.heat_W, 37.5 + 2.3852, 1e-3);
  s.temperature_C = 25.0;
  EXPECT_NEAR(run(p, s, -50.0).heat_W, 37.5 - 2.3852, 1e-3);
}

// One heat node: 5 kg, 1000 J/kgK, 1.5 W/K, 8 W, surroundings 25 degC: 25.8786, 28.5222 and 29.7183 degC after 600,
// 3600 and 7200 s (exact exponential), in steps of any length. Tolerance: the digits given.
TEST(Heat, OneNodeWarming) {
  PlainBank plain(plain_chemistry(3.3), 100.0);
  plain.battery.mass_kg.typical = 5.0;
  plain.chemistry.specific_heat_J_kgK = 1000.0;
  for (const double step_s : {60.0, 600.0}) {
    const auto p =
        bank::assemble(plain.battery, plain.chemistry, plain.tables, {1, 1, 0.0}, 0.0, 1.5, step_s);
    bank::State<double> s;
    s.temperature_C = 25.0;
    double t_s = 0.0;
    for (const auto& [at_s, expected_C] : {std::pair{600.0, 25.8786}, {3600.0, 28.5222}, {7200.0, 29.7183}}) {
      for (; t_s < at_s - 1.0; t_s += step_s) run(p, s, 0.0, 25.0, 8.0);
      EXPECT_NEAR(s.temperature_C, expected_C, 1e-4) << at_s;
    }
  }
}

}  // namespace
}  // namespace voltwright::published
