#include "engine/bank/assembly.h"

#include <cmath>

namespace voltwright::bank {

namespace {

units::Ranged scaled(const units::Ranged& range, double factor) {
  return {range.min * factor, range.typical * factor, range.max * factor};
}

/// Share of the step over which a relaxation with time constant tau keeps its start value, on average:
/// (tau / dt) (1 - exp(-dt / tau)).
double mean_share(double step_over_tau) { return -std::expm1(-step_over_tau) / step_over_tau; }

/// Two heat nodes in a chain, bank - enclosure - surroundings, over one step: exp(A dt) of
/// A = [[-g1, g1], [g2, -(g2 + g3)]] with g1 = G / C_bank, g2 = G / C_enclosure, g3 = G_enclosure /
/// C_enclosure. Both eigenvalues are real and negative, as g1 g2 > 0.
void set_heat_constants(Parameters<double>& p) {
  const double g1 = p.heat_loss_W_K / p.heat_capacity_J_K;
  if (p.enclosure_K_W <= 0.0) {
    p.bank_keep = std::exp(-g1 * p.step_s);
    p.bank_by_enclosure = 0.0;
    p.enclosure_by_bank = 0.0;
    p.enclosure_keep = 0.0;
    return;
  }
  const double g2 = p.heat_loss_W_K / p.enclosure_capacity_J_K;
  const double g3 = 1.0 / (p.enclosure_K_W * p.enclosure_capacity_J_K);
  const double half_trace = -0.5 * (g1 + g2 + g3);
  const double root = std::sqrt(half_trace * half_trace - g1 * g3);
  // exp(A t) = e^{m t} (cosh(r t) I + sinh(r t) / r (A - m I)).
  const double slow = std::exp((half_trace + root) * p.step_s);
  const double fast = std::exp((half_trace - root) * p.step_s);
  const double even = 0.5 * (slow + fast);
  const double odd = 0.5 * (slow - fast) / root;
  p.bank_keep = even + odd * (-g1 - half_trace);
  p.bank_by_enclosure = odd * g1;
  p.enclosure_by_bank = odd * g2;
  p.enclosure_keep = even + odd * (-(g2 + g3) - half_trace);
}

}  // namespace

BankFigures bank_figures(const Battery& battery, const Layout& layout) {
  const double count = static_cast<double>(layout.in_series) * layout.in_parallel;
  BankFigures figures;
  figures.nominal_V = battery.nominal_V * layout.in_series;
  figures.capacity_Ah =
      battery.capacity_Ah * layout.in_parallel * (1.0 - layout.lost_capacity) * (1.0 - layout.weakest_below);
  figures.nominal_Wh = figures.nominal_V * figures.capacity_Ah;
  figures.mass_kg = scaled(battery.mass_kg, count);
  figures.volume_L = scaled(battery.volume_L, count);
  figures.price = scaled(battery.price, count);
  figures.continuous_A = battery.continuous_A * layout.in_parallel;
  figures.peak_A = battery.peak_A * layout.in_parallel;
  figures.charge_A = battery.charge_A * layout.in_parallel;
  figures.over_voltage_V = battery.over_voltage_V * layout.in_series;
  figures.under_voltage_V = battery.under_voltage_V * layout.in_series;
  figures.under_voltage_release_V = battery.under_voltage_release_V * layout.in_series;
  return figures;
}

Parameters<double> assemble(const Battery& battery, const cell::Chemistry& chemistry,
                            const cell::Tables& tables, const Layout& layout, double cable_ohm,
                            double heat_loss_W_K, double step_s, const Enclosure& enclosure) {
  const double cells = static_cast<double>(battery.cells_in_series) * layout.in_series;
  const double rated_Ah = battery.capacity_Ah * layout.in_parallel;
  const double fresh = (1.0 - layout.lost_capacity) * (1.0 - layout.weakest_below);
  const double ohm_per_ohm_Ah = layout.resistance_factor * cells / rated_Ah;
  const auto& resistance = chemistry.resistance;

  Parameters<double> p;
  p.tables = &tables;
  p.cells = cells;
  p.capacity_Ah = rated_Ah * fresh;
  p.ohmic_ohm = resistance.ohmic_ohm_Ah * ohm_per_ohm_Ah;
  p.fast_ohm = resistance.fast_ohm_Ah * ohm_per_ohm_Ah;
  p.slow_ohm = resistance.slow_ohm_Ah * ohm_per_ohm_Ah;
  p.charge_rho_ohm = resistance.charge_rho_ohm_Ah * ohm_per_ohm_Ah;
  p.charge_m = resistance.charge_m;
  p.charge_c = resistance.charge_c;
  p.cable_ohm = cable_ohm;
  p.fixed_ohm = battery.extra_resistance_ohm * layout.in_series / layout.in_parallel + cable_ohm;
  p.fast_tau_s = resistance.fast_tau_s;
  p.slow_tau_s = resistance.slow_tau_s;
  const double curving_V = resistance.slow_curving_V * cells;
  p.slow_curving_per_V2 = curving_V > 0.0 ? 1.0 / (curving_V * curving_V) : 0.0;
  p.settling_Ah = chemistry.hysteresis.settling_share * p.capacity_Ah;
  p.tank_share = chemistry.availability.fraction;
  p.tank_rate_per_h = chemistry.availability.exchange_per_h;
  p.empty_level = 1.0 - chemistry.availability.full_over_rated;
  p.most_charge = cell::most_charge(chemistry);
  p.coulombic = chemistry.coulombic_efficiency;
  p.side_A = chemistry.side_reaction.current_A_per_Ah * rated_Ah;
  p.side_reference_V = chemistry.side_reaction.reference_V;
  p.side_per_V = chemistry.side_reaction.per_V;
  p.side_per_K = chemistry.side_reaction.per_K;
  p.side_reference_C = chemistry.side_reaction.reference_C;
  p.self_discharge_A = chemistry.self_discharge_per_month * rated_Ah / (365.25 / 12.0 * 24.0);
  const double count = static_cast<double>(layout.in_series) * layout.in_parallel;
  p.heat_capacity_J_K = battery.mass_kg.typical * count * chemistry.specific_heat_J_kgK;
  p.heat_loss_W_K = heat_loss_W_K;
  p.enclosure_K_W = enclosure.loss_W_K > 0.0 ? 1.0 / enclosure.loss_W_K : 0.0;
  p.enclosure_capacity_J_K = enclosure.loss_W_K > 0.0 ? enclosure.capacity_J_K : 0.0;
  p.balance_V = chemistry.limits.balance_V;
  p.bleed_A = chemistry.limits.bleed_A * layout.in_parallel;
  return with_step(p, step_s);
}

Parameters<double> with_step(const Parameters<double>& parameters, double step_s) {
  Parameters<double> p = parameters;
  p.step_s = step_s;
  p.fast_keep = std::exp(-step_s / p.fast_tau_s);
  p.fast_mean = mean_share(step_s / p.fast_tau_s);
  p.slow_keep = std::exp(-step_s / p.slow_tau_s);
  p.slow_mean = mean_share(step_s / p.slow_tau_s);
  const double tank_steps = p.tank_rate_per_h * step_s / 3600.0;
  p.tank_keep = std::exp(-tank_steps);
  p.tank_mean = mean_share(tank_steps);
  set_heat_constants(p);
  return p;
}

double free_standing_loss_W_K(double volume_L) {
  constexpr double kStillAir_W_m2K = 8.0;
  const double side_m = std::cbrt(volume_L * 1e-3);
  return kStillAir_W_m2K * 6.0 * side_m * side_m;
}

}  // namespace voltwright::bank
