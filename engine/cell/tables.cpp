#include "engine/cell/tables.h"

#include <cmath>

namespace voltwright::cell {

namespace {
constexpr double kGasConstant_J_molK = 8.314462618;
constexpr double kReference_K = 298.15;
constexpr double kAnyRate_per_h = 1e6;
constexpr double kNeverFreezes_C = -273.15;

/// The curve of the record, its last slope continued beyond full where cells can be overcharged.
double ocv_25C_V(const Chemistry& chemistry, double state_of_charge) {
  const Curve& curve = chemistry.ocv_V;
  const double within_V = base::curve_at(curve, state_of_charge, chemistry.nominal_V);
  if (curve.size() < 2 || state_of_charge <= curve.back().x || most_charge(chemistry) <= 1.0) return within_V;
  const base::CurvePoint& full = curve.back();
  const base::CurvePoint& before = curve[curve.size() - 2];
  return within_V + (state_of_charge - full.x) * (full.y - before.y) / (full.x - before.x);
}
}  // namespace

double resistance_factor(const Resistance& resistance, double temperature_C) {
  const double kelvin = temperature_C + 273.15;
  const double arrhenius = std::exp(resistance.activation_kJ_mol * 1000.0 / kGasConstant_J_molK *
                                    (1.0 / kelvin - 1.0 / kReference_K));
  return resistance.steady_fraction + (1.0 - resistance.steady_fraction) * arrhenius;
}

double most_charge(const Chemistry& chemistry) {
  return chemistry.side_reaction.current_A_per_Ah > 0.0 ? 1.0 : kMostTabled;
}

double open_circuit_V(const Chemistry& chemistry, double state_of_charge, double temperature_C) {
  const double at_25C_V = ocv_25C_V(chemistry, state_of_charge);
  const double mV_per_K = base::curve_at(chemistry.entropic_mV_per_K, state_of_charge, 0.0);
  return at_25C_V + (temperature_C - 25.0) * mV_per_K * 1e-3;
}

Tables make_tables(const Chemistry& chemistry) {
  Tables tables;
  const auto by_charge = [](auto& table, const Curve& curve, double if_empty, double scale) {
    table.fill(kLeastTabled, kMostTabled,
               [&](double z) { return scale * base::curve_at(curve, z, if_empty); });
  };
  tables.ocv_V.fill(kLeastTabled, kMostTabled, [&](double z) { return ocv_25C_V(chemistry, z); });
  by_charge(tables.ohmic_factor, chemistry.resistance.ohmic_by_soc, 1.0, 1.0);
  by_charge(tables.relaxing_factor, chemistry.resistance.relaxing_by_soc, 1.0, 1.0);
  const Curve& slow = chemistry.resistance.slow_by_soc;
  by_charge(tables.slow_factor, slow.empty() ? chemistry.resistance.relaxing_by_soc : slow, 1.0, 1.0);
  by_charge(tables.entropic_V_per_K, chemistry.entropic_mV_per_K, 0.0, 1e-3);
  by_charge(tables.half_gap_V, chemistry.hysteresis.half_gap_mV, 0.0, 1e-3);
  by_charge(tables.freezing_C, chemistry.freezing_C, kNeverFreezes_C, 1.0);
  const auto by_temperature = [](auto& table, auto f) { table.fill(-60.0, 90.0, f); };
  by_temperature(tables.resistance_factor,
                 [&](double t) { return resistance_factor(chemistry.resistance, t); });
  by_temperature(tables.capacity_factor, [&](double t) {
    return std::min(1.0, base::curve_at(chemistry.capacity_by_temperature, t, 1.0));
  });
  by_temperature(tables.charge_rate_per_h, [&](double t) {
    return base::curve_at(chemistry.limits.charge_rate_by_C, t, kAnyRate_per_h);
  });
  by_temperature(tables.self_discharge_factor, [](double t) { return std::exp2((t - 25.0) / 10.0); });
  return tables;
}

}  // namespace voltwright::cell
