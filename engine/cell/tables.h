#pragma once
// A chemistry on uniform grids, ready for the inner loop.
#include "engine/base/curve.h"
#include "engine/cell/chemistry.h"

namespace voltwright::cell {

/// Intervals over state of charge -0.25..1.15625: 512 for each unit. Tanks drawn below the rated capacity
/// come to lie below 0, overcharged lithium cells above 1.
inline constexpr std::size_t kChargeIntervals = 720;
inline constexpr double kLeastTabled = -0.25;
inline constexpr double kMostTabled = 1.15625;
using ChargeTable = base::UniformTable<kChargeIntervals>;

/// Look-up tables of one cell kind. State of charge runs over -0.25..1.15625, temperature over -60..90 degC.
struct Tables {
  ChargeTable ocv_V;            // at 25 degC
  ChargeTable ohmic_factor;     // on R0
  ChargeTable relaxing_factor;  // on R1
  ChargeTable slow_factor;      // on R2
  ChargeTable entropic_V_per_K;
  ChargeTable half_gap_V;                         // of the hysteresis
  ChargeTable freezing_C;                         // -273.15 if it never freezes
  base::UniformTable<300> resistance_factor;      // against temperature, 1 at 25 degC
  base::UniformTable<300> capacity_factor;        // available share against temperature, at most 1
  base::UniformTable<300> self_discharge_factor;  // doubling per 10 K, 1 at 25 degC
  base::UniformTable<300> charge_rate_per_h;      // permitted charge over rated capacity
};

Tables make_tables(const Chemistry& chemistry);

/// State of charge beyond which a cell stores nothing more: 1 where a side reaction takes over (gassing of
/// lead-acid); lithium cells have none and go on to kMostTabled, far above any protection.
double most_charge(const Chemistry& chemistry);

/// Resistance relative to 25 degC: f + (1 - f) exp(Ea / R (1/T - 1/298.15)), Arrhenius with a steady part
/// [1]. Valid -40..80 degC. Source: docs/method/cell.md.
double resistance_factor(const Resistance& resistance, double temperature_C);

/// Open-circuit voltage of one cell [V] between the two branches of its hysteresis, at a state of charge and
/// a temperature: U(z) at 25 degC + (t - 25) dU/dT. Beyond full the last slope of the curve is continued
/// where cells can be overcharged.
double open_circuit_V(const Chemistry& chemistry, double state_of_charge, double temperature_C = 25.0);

}  // namespace voltwright::cell
