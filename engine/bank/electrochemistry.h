#pragma once
// The bank between its poles over one step: what voltage a current gives, and what the current does to it.
// Equations and sources: docs/method/cell.md and docs/method/bank.md.
#include <cmath>

#include "engine/bank/assembly.h"
#include "engine/base/curve.h"

namespace voltwright::bank {

template <class R>
struct State {
  R charge{1.0};     // state of charge of the whole, 1 = full, above 1 = overcharged
  R imbalance{0.0};  // bound level minus available level (two-tank)
  R fast_V{0.0};     // voltage over R1
  R slow_V{0.0};     // voltage over R2
  R side{0.0};       // of the hysteresis: +1 after a long discharge, -1 after a long charge
  R ahead{0.0};      // state of charge of the fullest cell above the mean
  R last_A{0.0};     // mean current of the step before, a forecast of the next
  R temperature_C{20.0};
  R enclosure_C{20.0};
};

/// Terminal behaviour over the coming step: mean voltage = source_V - ohm * current.
template <class R>
struct Terminal {
  R source_V;
  R discharge_ohm;
  R charge_ohm;
  R instant_ohm;  // without the relaxing parts: what a starting surge sees
  R instant_V;    // open-circuit voltage minus the relaxing voltages at the start of the step
  R ohmic_ohm;    // R0 with its factors, cells only
  R fast_ohm;
  R slow_ohm;
  R slow_rest_V;    // loss in the slow pair over the step if no current flowed
  R slow_step_ohm;  // what a current adds to it
  R charge_extra_ohm;
  R ocv_V;   // open-circuit voltage at no current, between the branches of the hysteresis
  R side_V;  // by how much the voltage lies below it because of the side
  R half_gap_V;
  R ocv_fall_ohm;  // fall of the mean open-circuit voltage per ampere within the step
  R available;     // level of the available tank, 1 = full
  R usable_floor;  // available level below which nothing more can be drawn at this temperature
};

/// Open-circuit voltage of the bank between the branches of the hysteresis [V] at a level of charge and the
/// temperature of the state, with its slope per unit of level.
template <class R>
base::ValueAndSlope<R> open_circuit(const Parameters<R>& p, const R& level, const R& temperature_C) {
  const auto at_25C = base::look_up<R>(p.tables, &cell::Tables::ocv_V, level);
  const auto entropic = base::look_up<R>(p.tables, &cell::Tables::entropic_V_per_K, level);
  const R above_K = temperature_C - R(25.0);
  return {p.cells * (at_25C.value + entropic.value * above_K),
          p.cells * base::max_of<R>(at_25C.slope + entropic.slope * above_K, R(0.0))};
}

/// Share of the capacity above the level that is empty at 25 degC in which the voltage of a cell falls off.
inline constexpr double kFallingOff = 0.1;

/// Open-circuit voltage of what is available [V], with its slope. Where the temperature leaves less than the
/// capacity, the end of the curve comes earlier by what is `lost`, with its shape kept.
template <class R>
base::ValueAndSlope<R> available_voltage(const Parameters<R>& p, const R& level, const R& temperature_C,
                                         const R& lost) {
  using L = base::Lanes<R>;
  const R knee = p.empty_level + R(kFallingOff);
  const auto near_end = level < knee + lost;
  if (!L::any(near_end)) return open_circuit<R>(p, level, temperature_C);
  const auto above = open_circuit<R>(p, base::max_of<R>(level, knee), temperature_C);
  const auto below = open_circuit<R>(p, base::min_of<R>(level - lost, knee), temperature_C);
  const auto between = open_circuit<R>(p, knee, temperature_C);
  const R zero(0.0);
  return {above.value + below.value - between.value,
          L::select(level > knee, above.slope, zero) + L::select(near_end, below.slope, zero)};
}

template <class R>
Terminal<R> terminal(const Parameters<R>& p, const State<R>& s) {
  using base::look_up;
  using base::max_of;
  Terminal<R> t;
  const R bound_share = R(1.0) - p.tank_share;
  t.available = s.charge - bound_share * s.imbalance;
  const R resting = s.charge - bound_share * s.imbalance * p.tank_mean;  // mean level if no current flowed

  const R share_at_temperature = look_up<R>(p.tables, &cell::Tables::capacity_factor, s.temperature_C).value;
  t.usable_floor = R(1.0) - (R(1.0) - p.empty_level) * share_at_temperature;
  const auto ocv = available_voltage<R>(p, resting, s.temperature_C, t.usable_floor - p.empty_level);
  // Resistances are those of the middle of the step, as the current of the step before foretells it: at the
  // start of the step they lag half a step behind.
  const R half_step_h = p.step_s * R(0.5 / 3600.0);
  const R lag_h = bound_share * (R(1.0) - p.tank_mean) / (p.tank_share * p.tank_rate_per_h);
  const R level_per_A = (half_step_h + lag_h) / p.capacity_Ah;
  const R middle = resting - s.last_A * level_per_A;
  const R middle_charge = s.charge - s.last_A * half_step_h / p.capacity_Ah;
  const R cold = look_up<R>(p.tables, &cell::Tables::resistance_factor, s.temperature_C).value;
  const R ohmic_factor = look_up<R>(p.tables, &cell::Tables::ohmic_factor, middle).value;
  const R relaxing_factor = look_up<R>(p.tables, &cell::Tables::relaxing_factor, middle).value;

  t.ohmic_ohm = p.ohmic_ohm * ohmic_factor * cold;
  t.fast_ohm = p.fast_ohm * relaxing_factor * cold;
  t.slow_ohm = p.slow_ohm * look_up<R>(p.tables, &cell::Tables::slow_factor, middle).value * cold;
  t.charge_extra_ohm = p.charge_rho_ohm * (R(1.0) + p.charge_m * max_of<R>(middle_charge, R(0.0)) /
                                                        max_of<R>(p.charge_c - middle_charge, R(1e-3)));
  t.ocv_V = ocv.value;
  t.half_gap_V = p.cells * look_up<R>(p.tables, &cell::Tables::half_gap_V, resting).value;
  t.side_V = t.half_gap_V * s.side;

  // Mean level over the step falls by this much per ampere: half the charge drawn, plus what the tanks lag.
  t.ocv_fall_ohm = ocv.slope * level_per_A;

  // The slow loss v + v^3 / s^2 along its chord between no current and the current of the step before: exact
  // at both.
  const R slow_V = p.slow_mean * s.slow_V;
  const R following_ohm = t.slow_ohm * (R(1.0) - p.slow_mean);
  const R foretold_V = slow_V + following_ohm * s.last_A;
  const R squares = slow_V * slow_V + slow_V * foretold_V + foretold_V * foretold_V;
  t.slow_rest_V = slow_V * (R(1.0) + p.slow_curving_per_V2 * slow_V * slow_V);
  t.slow_step_ohm = following_ohm * (R(1.0) + p.slow_curving_per_V2 * squares);
  t.source_V = t.ocv_V - t.side_V - p.fast_mean * s.fast_V - t.slow_rest_V;
  const R relaxing_ohm = t.fast_ohm * (R(1.0) - p.fast_mean) + t.slow_step_ohm;
  t.instant_ohm = t.ohmic_ohm + p.fixed_ohm;
  const R slow_bend = p.slow_curving_per_V2 * s.slow_V * s.slow_V;
  t.instant_V = t.ocv_V - t.side_V - s.fast_V - s.slow_V * (R(1.0) + slow_bend);
  t.discharge_ohm = t.instant_ohm + relaxing_ohm + t.ocv_fall_ohm;
  t.charge_ohm = t.discharge_ohm + t.charge_extra_ohm;
  return t;
}

/// Where the energy and charge of one step went [W, A], means over the step.
template <class R>
struct StepLosses {
  R stored_W;  // rate at which stored energy falls (discharge positive)
  R ohmic_W;   // cells and protection, without the main cable
  R cable_W;
  R relaxing_W;  // given to the relaxation branches and the hysteresis, lost by mixing of the tanks, as heat
  R side_W;      // side reaction, coulombic loss
  R self_discharge_W;
  R side_A;  // charge that did not charge
  R self_discharge_A;
  R heat_W;  // warms the bank
};

/// Advances the state by one step at a constant bank current (discharge positive) and accounts for it.
/// Sum over the step: terminal power = stored_W - ohmic_W - cable_W - relaxing_W - side_W - self_discharge_W.
template <class R>
StepLosses<R> advance(const Parameters<R>& p, const Terminal<R>& t, State<R>& s, const R& current_A,
                      const R& surroundings_C, const R& heater_W) {
  using base::look_up;
  using base::max_of;
  using base::min_of;
  using L = base::Lanes<R>;
  using std::exp;
  const R zero(0.0);
  const auto charging = current_A < zero;
  const R charge_ohm_now = L::select(charging, t.charge_extra_ohm, zero);
  const R ocv_mean_V = t.ocv_V - t.ocv_fall_ohm * current_A;
  const R inner_V =
      t.source_V - t.discharge_ohm * current_A + p.fixed_ohm * current_A - charge_ohm_now * current_A;

  // The side reaction takes its current at any voltage: from the charger while charging, from the plates at
  // rest.
  R side_A = zero;
  if (L::any(p.side_A > zero)) {
    const R over_V = min_of<R>(inner_V / p.cells - p.side_reference_V, R(0.6));
    side_A = p.side_A * exp(p.side_per_V * over_V + p.side_per_K * (s.temperature_C - p.side_reference_C));
  }
  const R step_h = p.step_s * R(1.0 / 3600.0);
  R self_A =
      p.self_discharge_A * look_up<R>(p.tables, &cell::Tables::self_discharge_factor, s.temperature_C).value;
  const auto something_left = s.charge > R(0.0);
  self_A = L::select(something_left, self_A, zero);
  side_A = L::select(charging || something_left, side_A, zero);
  const R net_A = current_A + side_A + self_A;
  const R uncharged_A = max_of<R>(zero - net_A, zero) * (R(1.0) - p.coulombic);
  const R drawn_A = net_A + uncharged_A;
  R charge = s.charge - drawn_A * step_h / p.capacity_Ah;
  // What the cells cannot store any more is lost to the side reaction.
  const R excess = max_of<R>(charge - p.most_charge, zero);
  charge = charge - excess;
  const R excess_A = excess * p.capacity_Ah / step_h;
  side_A = side_A + uncharged_A + excess_A;
  const R into_plates_A = drawn_A + excess_A;

  StepLosses<R> w;
  w.side_A = side_A;
  w.self_discharge_A = self_A;
  w.stored_W = ocv_mean_V * into_plates_A;
  w.cable_W = p.cable_ohm * current_A * current_A;
  w.ohmic_W = (t.ohmic_ohm + charge_ohm_now + p.fixed_ohm - p.cable_ohm) * current_A * current_A;
  const R fast_settled_V = t.fast_ohm * current_A;
  const R slow_settled_V = t.slow_ohm * current_A;
  const R fast_mean_V = fast_settled_V + (s.fast_V - fast_settled_V) * p.fast_mean;
  const R slow_loss_V = t.slow_rest_V + t.slow_step_ohm * current_A;
  w.relaxing_W = (fast_mean_V + slow_loss_V + t.side_V) * current_A;
  w.side_W = ocv_mean_V * side_A;
  w.self_discharge_W = ocv_mean_V * self_A;

  const R entropic =
      look_up<R>(p.tables, &cell::Tables::entropic_V_per_K, R(0.5) * (s.charge + charge)).value;
  const R reversible_W = zero - current_A * (s.temperature_C + R(273.15)) * entropic * p.cells;
  w.heat_W = w.ohmic_W + w.relaxing_W + w.side_W + w.self_discharge_W + reversible_W;

  s.fast_V = fast_settled_V + (s.fast_V - fast_settled_V) * p.fast_keep;
  s.slow_V = slow_settled_V + (s.slow_V - slow_settled_V) * p.slow_keep;
  if (L::any(t.half_gap_V > zero)) {
    const R magnitude_A = L::select(charging, zero - current_A, current_A);
    const R towards = L::select(charging, R(-1.0), L::select(current_A > zero, R(1.0), s.side));
    s.side = towards + (s.side - towards) * exp(zero - magnitude_A * step_h / p.settling_Ah);
  }
  const R settled = into_plates_A / (p.tank_share * p.tank_rate_per_h * p.capacity_Ah);
  const R imbalance = settled + (s.imbalance - settled) * p.tank_keep;
  if (L::any(p.tank_share < R(1.0))) {
    // Charge that seeps between the tanks falls from one open-circuit voltage to the other.
    const R bound_before = s.charge + p.tank_share * s.imbalance;
    const R bound_after = charge + p.tank_share * imbalance;
    const R seeping_A = (R(1.0) - p.tank_share) * (bound_before - bound_after) * p.capacity_Ah / step_h;
    const R bound_V = open_circuit<R>(p, R(0.5) * (bound_before + bound_after), s.temperature_C).value;
    const R mixing_W = seeping_A * (bound_V - ocv_mean_V);
    w.relaxing_W = w.relaxing_W + mixing_W;
    w.stored_W = w.stored_W + mixing_W;
    w.heat_W = w.heat_W + mixing_W;
  }
  s.imbalance = imbalance;
  s.last_A = current_A;
  s.charge = charge;

  const R into_bank_W = w.heat_W + heater_W;
  const R enclosure_rest_C = surroundings_C + into_bank_W * p.enclosure_K_W;
  const R bank_rest_C = enclosure_rest_C + into_bank_W / p.heat_loss_W_K;
  const R bank_off_K = s.temperature_C - bank_rest_C;
  const R enclosure_off_K = s.enclosure_C - enclosure_rest_C;
  s.temperature_C = bank_rest_C + bank_off_K * p.bank_keep + enclosure_off_K * p.bank_by_enclosure;
  s.enclosure_C = enclosure_rest_C + bank_off_K * p.enclosure_by_bank + enclosure_off_K * p.enclosure_keep;
  return w;
}

}  // namespace voltwright::bank
