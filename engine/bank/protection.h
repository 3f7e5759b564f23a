#pragma once
// When a bank may charge and discharge: temperature windows, voltage limits, over-current with time and the
// loads' own cut-off, each with its release. Thresholds come from the catalogue record; see
// docs/method/protection.md.
#include "engine/bank/assembly.h"
#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {

template <class R>
struct Guard {
  R charge_min_C{0.0}, charge_max_C{45.0};
  R discharge_min_C{-20.0}, discharge_max_C{60.0};
  R hysteresis_K{3.0};
  R charge_limit_A{50.0};
  R reduced_below_C{-1e9};  // at and below this the charge limit is reduced_A, whatever the chemistry says
  R reduced_A{0.0};
  R over_voltage_V{1e9};   // protection opens for charge
  R under_voltage_V{0.0};  // opens for discharge, or the loads' cut-off
  R under_voltage_release_V{0.0};
  R floor_charge{0.0};    // loads are switched off at this state of charge (depth rule)
  R floor_release{0.05};  // and on again this far above
  R continuous_A{1e9};    // over-current: never opens at or below this
  R peak_A{2e9};          // opens after peak_s of this
  R peak_s{10.0};
  R electronic{0.0};  // 1 = opens by itself; 0 = lead-acid, whose thresholds are the loads' own
};

/// Seconds until protection closes again after an over-current; common practice, no source.
inline constexpr double kRetry_s = 60.0;

/// Latches, 1 = blocked, and what the over-current rule remembers.
template <class R>
struct GuardState {
  R charge_cold{0.0};
  R charge_hot{0.0};
  R discharge_cold{0.0};
  R discharge_hot{0.0};
  R over_voltage{0.0};
  R empty{0.0};         // by voltage, by the available level or by the depth rule
  R frozen{0.0};        // electrolyte frozen: neither charge nor discharge
  R dark{0.0};          // opened on low voltage and not charged since: no voltage for chargers to see
  R overload{0.0};      // 0..1, opens at 1
  R over_current{0.0};  // 1 = opened, closes again after the retry time
  R retry_s{0.0};
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

/// Updates the latches of temperature from the state of the bank.
template <class R>
void feel(const Guard<R>& g, GuardState<R>& s, const Parameters<R>& p, const State<R>& bank) {
  using base::look_up;
  using detail::latch;
  const R& t = bank.temperature_C;
  s.charge_cold = latch<R>(s.charge_cold, t <= g.charge_min_C, t > g.charge_min_C + g.hysteresis_K);
  s.charge_hot = latch<R>(s.charge_hot, t > g.charge_max_C, t < g.charge_max_C - g.hysteresis_K);
  const auto below_discharge = t < g.discharge_min_C;
  s.discharge_cold = latch<R>(s.discharge_cold, below_discharge, t > g.discharge_min_C + g.hysteresis_K);
  s.discharge_hot = latch<R>(s.discharge_hot, t > g.discharge_max_C, t < g.discharge_max_C - g.hysteresis_K);
  const R freezing_C = look_up<R>(p.tables, &cell::Tables::freezing_C, bank.charge).value;
  s.frozen = latch<R>(s.frozen, t<freezing_C, t> freezing_C + R(1.0));
}

/// Updates the latches of temperature from the state before the step and says what the step may do.
template <class R>
Permission<R> permit(const Guard<R>& g, GuardState<R>& s, const Parameters<R>& p, const State<R>& bank) {
  using base::look_up;
  using L = base::Lanes<R>;
  feel<R>(g, s, p, bank);
  const R& t = bank.temperature_C;
  const R rate = look_up<R>(p.tables, &cell::Tables::charge_rate_per_h, t).value;
  const R borne_A = L::select(t > g.reduced_below_C, rate * p.capacity_Ah, g.reduced_A);
  const R limit_A = base::min_of<R>(g.charge_limit_A, borne_A);
  const auto charge_blocked = s.charge_cold + s.charge_hot + s.over_voltage + s.frozen > R(0.5);
  Permission<R> permission;
  permission.charge_limit_A = L::select(charge_blocked, R(0.0), limit_A);
  permission.discharge_allowed =
      s.empty + s.discharge_cold + s.discharge_hot + s.frozen + s.over_current < R(0.5);
  return permission;
}

/// What `watch` looks at after a step.
template <class R>
struct Watched {
  R bank_V;     // mean voltage between the poles
  R fullest_V;  // the same by the fullest cell
  R rest_V;     // without current
  R charge, available, usable_floor;
  R current_A;
  R step_s;
};

/// Updates the latches of voltage, level and current after the step.
template <class R>
void watch(const Guard<R>& g, GuardState<R>& s, const Watched<R>& w) {
  using base::max_of;
  using detail::latch;
  using L = base::Lanes<R>;
  const R zero(0.0);
  s.over_voltage =
      latch<R>(s.over_voltage, w.fullest_V > g.over_voltage_V, w.fullest_V < g.over_voltage_V * R(0.98));
  const R lowest = max_of<R>(g.floor_charge, w.usable_floor);
  const auto drained =
      (w.bank_V < g.under_voltage_V && w.current_A > zero) || w.available <= w.usable_floor + R(1e-3);
  const auto low = drained || w.charge <= g.floor_charge;
  const auto recovered = w.bank_V > g.under_voltage_release_V && w.charge > lowest + g.floor_release &&
                         w.available > w.usable_floor + R(0.02);
  s.empty = latch<R>(s.empty, low, recovered);
  // A sag under load is over once the load is off. Near the end the loads come back and draw the rest too,
  // until the cells stay below the release.
  const auto spent = w.rest_V < g.under_voltage_release_V || w.available < w.usable_floor + g.floor_release;
  const auto woken = w.bank_V > g.under_voltage_release_V && w.current_A < zero;
  s.dark = latch<R>(s.dark, drained && spent && g.electronic > R(0.5), woken);

  // Inverse time between the continuous current (never) and the peak (after peak_s), by the heat both make.
  const R allowed = g.continuous_A * g.continuous_A;
  const R excess = (w.current_A * w.current_A - allowed) / (g.peak_A * g.peak_A - allowed);
  const R rate = L::select(w.current_A > zero, excess, R(-1.0));
  const R overload = max_of<R>(s.overload + rate * w.step_s / g.peak_s, zero);
  const auto trips = overload >= R(1.0 - 1e-9);  // tenths do not add up to one in binary
  s.retry_s = L::select(trips, R(kRetry_s), max_of<R>(s.retry_s - w.step_s, zero));
  s.over_current = latch<R>(s.over_current, trips, s.retry_s <= zero);
  s.overload = L::select(trips, zero, overload);
}

}  // namespace voltwright::bank
