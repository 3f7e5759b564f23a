#pragma once
// Two plain chemistries with round figures, for tests of the mathematics that must not hang on catalogue
// values.
#include "engine/season/setup.h"

namespace voltwright::season {

inline cell::Chemistry flat_chemistry() {
  cell::Chemistry c;
  c.id = "flat";
  c.nominal_V = 3.2;
  c.ocv_V = {{0.0, 2.5}, {0.05, 3.1}, {0.3, 3.27}, {0.9, 3.32}, {0.98, 3.33}, {1.0, 3.6}};
  c.entropic_mV_per_K = {{0.1, -0.4}, {0.9, 0.06}};
  c.resistance.ohmic_ohm_Ah = 0.066;
  c.resistance.fast_ohm_Ah = 0.034;
  c.resistance.slow_ohm_Ah = 0.022;
  c.resistance.ohmic_by_soc = {{0.0, 2.0}, {0.3, 1.0}, {1.0, 1.0}};
  c.resistance.steady_fraction = 0.3;
  c.capacity_by_temperature = {{-20.0, 0.55}, {0.0, 0.82}, {25.0, 1.0}};
  c.coulombic_efficiency = 0.998;
  c.limits.max_V = 3.65;
  c.limits.min_V = 2.5;
  c.stages = {3.55, 0.0, 3.32, 0.03, 2.0, 0.0};
  c.life = {{2000.0, 3500.0, 8000.0}, 0.8, 1.0, {10.0, 15.0, 20.0}, 10.0};
  return c;
}

inline cell::Chemistry two_tank_chemistry() {
  cell::Chemistry c;
  c.id = "two-tank";
  c.family = cell::Family::kLeadAcid;
  c.nominal_V = 2.0;
  c.ocv_V = {{0.0, 1.967}, {0.25, 2.0}, {0.5, 2.067}, {0.75, 2.1}, {1.0, 2.133}};
  c.resistance.ohmic_ohm_Ah = 0.0807;
  c.resistance.fast_ohm_Ah = 0.04;
  c.resistance.fast_tau_s = 60.0;
  c.resistance.charge_rho_ohm_Ah = 0.3;
  c.resistance.charge_m = 0.888;
  c.availability = {0.42, 0.95, 1.08};
  c.coulombic_efficiency = 0.97;
  c.side_reaction.current_A_per_Ah = 1e-4;
  c.self_discharge_per_month = 0.03;
  c.limits.charge_min_C = -20.0;
  c.limits.charge_max_C = 50.0;
  c.limits.charge_rate_by_C = {{-20.0, 0.3}, {0.0, 0.3}, {0.5, 5.0}};
  c.stages = {2.42, 2.27, 2.13, 0.01, 4.0, -0.004};
  c.usable_depth = 0.5;
  c.life = {{500.0, 900.0, 1200.0}, 0.5, 1.475, {5.0, 8.0, 12.0}, 10.0};
  return c;
}

inline bank::Battery battery_of(const cell::Chemistry& chemistry, double capacity_Ah) {
  bank::Battery b;
  b.id = chemistry.id + "-12v";
  b.chemistry = chemistry.id;
  const bool lead = chemistry.family == cell::Family::kLeadAcid;
  b.cells_in_series = lead ? 6 : 4;
  b.nominal_V = lead ? 12.0 : 12.8;
  b.capacity_Ah = capacity_Ah;
  b.mass_kg = {10.0, lead ? 29.0 : 12.0, 30.0};
  b.volume_L = {8.0, 11.0, 14.0};
  b.price = {200.0, 250.0, 300.0};
  b.continuous_A = capacity_Ah;
  b.peak_A = 3.0 * capacity_Ah;
  b.charge_A = lead ? 0.3 * capacity_Ah : 0.5 * capacity_Ah;
  b.extra_resistance_ohm = lead ? 0.0 : 0.002;
  b.has_protection = !lead;
  b.over_voltage_V = lead ? 0.0 : 14.8;
  b.under_voltage_V = lead ? 10.5 : 10.0;
  b.under_voltage_release_V = lead ? 12.2 : 12.0;
  return b;
}

}  // namespace voltwright::season
