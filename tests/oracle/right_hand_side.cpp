#include "tests/oracle/right_hand_side.h"

#include <algorithm>
#include <cmath>

#include "engine/base/curve.h"

namespace voltwright::oracle {

namespace {

using base::Curve;
using base::curve_at;

constexpr double kPerHour = 1.0 / 3600.0;
constexpr double kGas_J_molK = 8.314462618;
constexpr double kKelvin = 273.15;
constexpr double kReference_C = 25.0;
constexpr double kHoursPerMonth = 730.5;
constexpr double kMostOver_V = 0.6;  // the side reaction grows no further beyond this over its reference

/// k(T): Arrhenius with a steady part.
double cold_factor(const cell::Resistance& r, double temperature_C) {
  const double inverse_K = 1.0 / (temperature_C + kKelvin) - 1.0 / (kReference_C + kKelvin);
  const double moving = std::exp(r.activation_kJ_mol * 1000.0 / kGas_J_molK * inverse_K);
  return r.steady_fraction + (1.0 - r.steady_fraction) * moving;
}

/// Resistances of the whole bank at one instant [ohm].
struct Resistances {
  double ohmic = 0.0, fast = 0.0, slow = 0.0, charging = 0.0;
};

Resistances resistances_of(const Bank& bank, double charge, double available, double temperature_C) {
  const cell::Resistance& r = bank.chemistry->resistance;
  const double size = bank.resistance_factor * bank.cells / bank.rated_Ah;
  const double cold = cold_factor(r, temperature_C);
  const Curve& slow_by_soc = r.slow_by_soc.empty() ? r.relaxing_by_soc : r.slow_by_soc;
  Resistances result;
  result.ohmic = size * cold * r.ohmic_ohm_Ah * curve_at(r.ohmic_by_soc, available, 1.0);
  result.fast = size * cold * r.fast_ohm_Ah * curve_at(r.relaxing_by_soc, available, 1.0);
  result.slow = size * cold * r.slow_ohm_Ah * curve_at(slow_by_soc, available, 1.0);
  const double z = std::max(charge, 0.0);
  result.charging = size * r.charge_rho_ohm_Ah * (1.0 + r.charge_m * z / std::max(r.charge_c - charge, 1e-3));
  return result;
}

/// Loss in both pairs [V]: v1 and v2 + v2^3 / s2^2, where the record curves it.
double pairs_V(const Bank& bank, std::span<const double> y) {
  const double curving_V = bank.chemistry->resistance.slow_curving_V * bank.cells;
  const double share = curving_V > 0.0 ? y[kSlow_V] / curving_V : 0.0;
  return y[kFast_V] + y[kSlow_V] * (1.0 + share * share);
}

double available_of(const Bank& bank, std::span<const double> y) {
  return y[kCharge] - (1.0 - bank.chemistry->availability.fraction) * y[kImbalance];
}

/// N U(z, T) [V].
double open_circuit_V(const Bank& bank, double level, double temperature_C) {
  const double at_25C = curve_at(bank.chemistry->ocv_V, level, bank.chemistry->nominal_V);
  const double per_K = 1e-3 * curve_at(bank.chemistry->entropic_mV_per_K, level, 0.0);
  return bank.cells * (at_25C + per_K * (temperature_C - kReference_C));
}

/// N U of the available level, whose last tenth comes earlier by the share that the temperature takes [V].
double available_V(const Bank& bank, double level, double temperature_C, double lost) {
  const double knee = 1.0 - bank.chemistry->availability.full_over_rated + 0.1;
  return open_circuit_V(bank, std::max(level, knee), temperature_C) +
         open_circuit_V(bank, std::min(level - lost, knee), temperature_C) -
         open_circuit_V(bank, knee, temperature_C);
}

}  // namespace

std::vector<double> tolerances() {
  return {1e-9, 1e-9, 1e-9, 1e-9, 1e-7, 1e-7, 1e-9, 1e-7, 1e-7, 1e-6, 1e-6};
}

double Poles::current_for_A(double power_W) const {
  const double ohm = power_W < 0.0 ? charge_ohm : discharge_ohm;
  return 2.0 * power_W / (source_V + std::sqrt(source_V * source_V - 4.0 * ohm * power_W));
}

Bank make_bank(const bank::Battery& battery, const cell::Chemistry& chemistry, const bank::Layout& layout,
               double cable_ohm, double heat_loss_W_K, const bank::Enclosure& enclosure) {
  const double n = layout.in_series;
  const double m = layout.in_parallel;
  Bank bank;
  bank.chemistry = &chemistry;
  bank.cells = n * battery.cells_in_series;
  bank.rated_Ah = m * battery.capacity_Ah;
  bank.capacity_Ah = bank.rated_Ah * (1.0 - layout.lost_capacity) * (1.0 - layout.weakest_below);
  bank.resistance_factor = layout.resistance_factor;
  bank.fixed_ohm = battery.extra_resistance_ohm * n / m + cable_ohm;
  bank.cable_ohm = cable_ohm;
  bank.heat_capacity_J_K = n * m * battery.mass_kg.typical * chemistry.specific_heat_J_kgK;
  bank.heat_loss_W_K = heat_loss_W_K;
  bank.enclosure = enclosure;
  return bank;
}

Poles poles_of(const Bank& bank, std::span<const double> y) {
  const cell::Availability& tanks = bank.chemistry->availability;
  Poles poles;
  poles.available = available_of(bank, y);
  const Resistances r = resistances_of(bank, y[kCharge], poles.available, y[kTemperature_C]);
  const double share =
      std::min(1.0, curve_at(bank.chemistry->capacity_by_temperature, y[kTemperature_C], 1.0));
  poles.floor = 1.0 - tanks.full_over_rated * share;
  const double lost = tanks.full_over_rated * (1.0 - share);
  poles.ocv_V = available_V(bank, poles.available, y[kTemperature_C], lost);
  poles.side_V =
      y[kSide] * bank.cells * 1e-3 * curve_at(bank.chemistry->hysteresis.half_gap_mV, poles.available, 0.0);
  poles.source_V = poles.ocv_V - poles.side_V - pairs_V(bank, y);
  poles.discharge_ohm = r.ohmic + bank.fixed_ohm;
  poles.charge_ohm = poles.discharge_ohm + r.charging;
  return poles;
}

void slope_of(const Bank& bank, std::span<const double> y, double current_A, double air_C, double heater_W,
              std::span<double> dydt) {
  const cell::Chemistry& c = *bank.chemistry;
  const double temperature_C = y[kTemperature_C];
  const Poles poles = poles_of(bank, y);
  const Resistances r = resistances_of(bank, y[kCharge], poles.available, temperature_C);
  const double voltage_V = poles.voltage_V(current_A);

  // Charge.
  double side_A = 0.0;
  double self_A = 0.0;
  const cell::SideReaction& side = c.side_reaction;
  if (y[kCharge] > 0.0 || current_A < 0.0) {
    const double inside_V = (voltage_V + bank.fixed_ohm * current_A) / bank.cells;
    side_A = side.current_A_per_Ah * bank.rated_Ah *
             std::exp(side.per_V * std::min(inside_V - side.reference_V, kMostOver_V) +
                      side.per_K * (temperature_C - side.reference_C));
  }
  if (y[kCharge] > 0.0) {
    self_A = c.self_discharge_per_month / kHoursPerMonth * bank.rated_Ah *
             std::exp2((temperature_C - kReference_C) / 10.0);
  }
  const double net_A = current_A + side_A + self_A;
  double lost_A = std::max(-net_A, 0.0) * (1.0 - c.coulombic_efficiency);
  // What would exceed the most the cells store goes to the side reaction.
  if (y[kCharge] >= (side.current_A_per_Ah > 0.0 ? 1.0 : cell::kMostTabled)) lost_A = std::max(-net_A, 0.0);
  const double plates_A = net_A + lost_A;
  dydt[kCharge] = -plates_A / bank.capacity_Ah * kPerHour;

  // Two tanks: c, k, d.
  const cell::Availability& tanks = c.availability;
  const double seeping_per_h = tanks.exchange_per_h * y[kImbalance];
  dydt[kImbalance] = (plates_A / (tanks.fraction * bank.capacity_Ah) - seeping_per_h) * kPerHour;

  // Two pairs.
  dydt[kFast_V] = (r.fast * current_A - y[kFast_V]) / c.resistance.fast_tau_s;
  dydt[kSlow_V] = (r.slow * current_A - y[kSlow_V]) / c.resistance.slow_tau_s;

  // Hysteresis: the charge that passes, in either direction, brings the side nearer to that of its direction.
  const double settling_Ah = c.hysteresis.settling_share * bank.capacity_Ah;
  dydt[kSide] = c.hysteresis.half_gap_mV.empty()
                    ? 0.0
                    : (current_A - std::fabs(current_A) * y[kSide]) / settling_Ah * kPerHour;

  // Heat.
  const double bound = y[kCharge] + tanks.fraction * y[kImbalance];
  const double seeping_A = tanks.fraction * (1.0 - tanks.fraction) * seeping_per_h * bank.capacity_Ah;
  const double mixing_W = seeping_A * (open_circuit_V(bank, bound, temperature_C) - poles.ocv_V);
  const double ohm = (current_A < 0.0 ? poles.charge_ohm : poles.discharge_ohm) - bank.cable_ohm;
  const double entropic_V_K = 1e-3 * curve_at(c.entropic_mV_per_K, y[kCharge], 0.0);
  const double heat_W = ohm * current_A * current_A + (pairs_V(bank, y) + poles.side_V) * current_A +
                        poles.ocv_V * (side_A + lost_A + self_A) + mixing_W -
                        current_A * (temperature_C + kKelvin) * bank.cells * entropic_V_K;
  const bool boxed = bank.enclosure.loss_W_K > 0.0;
  const double around_C = boxed ? y[kEnclosure_C] : air_C;
  const double out_W = bank.heat_loss_W_K * (temperature_C - around_C);
  dydt[kTemperature_C] = (heat_W + heater_W - out_W) / bank.heat_capacity_J_K;
  dydt[kEnclosure_C] =
      boxed ? (out_W - bank.enclosure.loss_W_K * (y[kEnclosure_C] - air_C)) / bank.enclosure.capacity_J_K
            : 0.0;

  // Sums.
  dydt[kDischarged_Ah] = std::max(current_A, 0.0) * kPerHour;
  dydt[kCharged_Ah] = std::max(-current_A, 0.0) * kPerHour;
  dydt[kDischarged_Wh] = voltage_V * dydt[kDischarged_Ah];
  dydt[kCharged_Wh] = voltage_V * dydt[kCharged_Ah];
}

}  // namespace voltwright::oracle
