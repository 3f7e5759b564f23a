#pragma once
// A chemistry on uniform grids, ready for the inner loop.
#include "engine/base/curve.h"
#include "engine/cell/chemistry.h"

namespace voltwright::cell {

/// Look-up tables of one cell kind. State of charge runs over 0..1, temperature over -60..90 degC.
struct Tables {
  base::UniformTable<512> ocv_V;
  base::UniformTable<512> ohmic_factor;     // on R0, against state of charge
  base::UniformTable<512> relaxing_factor;  // on R1 and R2, against state of charge
  base::UniformTable<512> entropic_V_per_K;
  base::UniformTable<300> resistance_factor;      // against temperature, 1 at 25 degC
  base::UniformTable<300> capacity_factor;        // available share against temperature, at most 1
  base::UniformTable<300> self_discharge_factor;  // doubling per 10 K, 1 at 25 degC
};

Tables make_tables(const Chemistry& chemistry);

/// Resistance relative to 25 degC: f + (1 - f) exp(Ea / R (1/T - 1/298.15)), Arrhenius with a steady part
/// [1]. Valid -40..80 degC. Source: docs/method/cell.md.
double resistance_factor(const Resistance& resistance, double temperature_C);

/// Open-circuit voltage of one cell [V] at a state of charge 0..1.
double open_circuit_V(const Chemistry& chemistry, double state_of_charge);

}  // namespace voltwright::cell
