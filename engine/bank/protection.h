#pragma once
// When a bank may charge and discharge: temperature windows, voltage limits and the loads' own cut-off, each
// with its release. Thresholds come from the catalogue record; see docs/method/protection.md.
#include "engine/bank/assembly.h"
#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {

template <class R>
struct Guard {
  R charge_min_C{0.0}, charge_max_C{45.0};
  R discharge_min_C{-20.0}, discharge_max_C{60.0};
  R hysteresis_K{3.0};
  R charge_limit_A{50.0};
  R cold_below_C{0.0};  // below this the charge limit is cold_limit_A
  R cold_limit_A{0.0};
  R over_voltage_V{1e9};   // protection opens for charge
  R under_voltage_V{0.0};  // opens for discharge, or the loads' cut-off
  R under_voltage_release_V{0.0};
  R floor_charge{0.0};    // loads are switched off at this state of charge (depth rule)
  R floor_release{0.05};  // and on again this far above
};

/// Latches, 1 = blocked.
template <class R>
struct GuardState {
  R charge_cold{0.0};
  R charge_hot{0.0};
  R discharge_cold{0.0};
  R discharge_hot{0.0};
  R over_voltage{0.0};
  R empty{0.0};  // by voltage, by the available level or by the depth rule
};

template <class R>
struct Permission {
  R charge_limit_A;  // 0 = no charge
  typename base::Lanes<R>::Mask discharge_allowed;
};

namespace detail {
/// A latch that sets when `set` holds and clears when `clear` holds.
template <class R>
R latch(const R& old, const typename base::Lanes<R>::Mask& set, const typename base::Lanes<R>::Mask& clear) {
  using L = base::Lanes<R>;
  return L::select(set, R(1.0), L::select(clear, R(0.0), old));
}
}  // namespace detail

/// Updates the latches from the temperature before the step and says what the step may do.
template <class R>
Permission<R> permit(const Guard<R>& g, GuardState<R>& s, const R& temperature_C) {
  using detail::latch;
  using L = base::Lanes<R>;
  s.charge_cold = latch<R>(s.charge_cold, temperature_C <= g.charge_min_C,
                           temperature_C > g.charge_min_C + g.hysteresis_K);
  s.charge_hot =
      latch<R>(s.charge_hot, temperature_C > g.charge_max_C, temperature_C < g.charge_max_C - g.hysteresis_K);
  s.discharge_cold = latch<R>(
      s.discharge_cold, temperature_C<g.discharge_min_C, temperature_C> g.discharge_min_C + g.hysteresis_K);
  s.discharge_hot = latch<R>(s.discharge_hot, temperature_C > g.discharge_max_C,
                             temperature_C < g.discharge_max_C - g.hysteresis_K);
  const R cold_capped = L::select(temperature_C < g.cold_below_C,
                                  base::min_of<R>(g.cold_limit_A, g.charge_limit_A), g.charge_limit_A);
  const auto charge_blocked = s.charge_cold + s.charge_hot + s.over_voltage > R(0.5);
  Permission<R> permission;
  permission.charge_limit_A = L::select(charge_blocked, R(0.0), cold_capped);
  permission.discharge_allowed = s.empty + s.discharge_cold + s.discharge_hot < R(0.5);
  return permission;
}

/// Updates the voltage and level latches after the step.
/// `bank_V` is the mean voltage between the poles, `available` the available level now.
template <class R>
void watch(const Guard<R>& g, GuardState<R>& s, const R& bank_V, const R& charge, const R& available,
           const R& usable_floor, const R& current_A) {
  using detail::latch;
  s.over_voltage = latch<R>(s.over_voltage, bank_V > g.over_voltage_V, bank_V < g.over_voltage_V * R(0.98));
  const R lowest = base::max_of<R>(g.floor_charge, usable_floor);
  const auto low = (bank_V < g.under_voltage_V && current_A > R(0.0)) || charge <= g.floor_charge ||
                   available <= usable_floor + R(1e-3);
  const auto recovered = bank_V > g.under_voltage_release_V && charge > lowest + g.floor_release &&
                         available > usable_floor + R(0.02);
  s.empty = latch<R>(s.empty, low, recovered);
}

}  // namespace voltwright::bank
