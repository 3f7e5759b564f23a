#pragma once
// The largest start of a minute: what it draws from the bank and how low it pulls the voltage.
#include "engine/season/bus.h"

namespace voltwright::season {

/// What runs when a load starts.
template <class R>
struct BeforeStart {
  R bus_V;
  R bank_A;    // charging negative
  R needed_A;  // of the sources
};

namespace detail {
/// What the sources could give at the bus voltage beyond the current needed of them [A].
template <class R>
R held_back(const BusCase<R>& bus, const R& bus_V, const R& needed_A) {
  R full_A(0.0);
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (bus.has(kind)) full_A = full_A + bus.running[kind] * full_output<R>(bus, kind, bus_V).current_A;
  }
  return base::max_of<R>(full_A - base::max_of<R>(needed_A, R(0.0)), R(0.0));
}
}  // namespace detail

/// Checks the largest start of the minute against the bank's peak current and the load's cut-off, behind the
/// cable of its own; it changes no state. A load without a cut-off fails below 0.6 of the resting voltage.
/// @param bus     the loads that run
/// @param before  the bank and the chargers as they ran before it
template <class R>
void check_start(const BusCase<R>& bus, const bank::Terminal<R>& t, const BeforeStart<R>& before,
                 const R& inverter_on, const R& loads_on, StepReport<R>& report) {
  using base::max_of;
  using L = base::Lanes<R>;
  using std::sqrt;
  const System<R>& system = bus.system;
  const Minute& minute = bus.minute;
  const bool by_inverter = minute.surge_inverter_W > minute.surge_direct_W;
  const double surge_W = by_inverter ? minute.surge_inverter_W : minute.surge_direct_W;
  if (surge_W <= 0.0) return;
  const R on = by_inverter ? inverter_on : loads_on;
  // Chargers give what they held back before the bank gives more: V^2 - (E + R I) V + R P = 0.
  const R held_back_A = detail::held_back<R>(bus, before.bus_V, before.needed_A);
  const R power_W = before.bus_V * before.bank_A + R(surge_W);
  const R lifted_V = t.instant_V + t.instant_ohm * held_back_A;
  const R under_root = lifted_V * lifted_V - R(4.0) * t.instant_ohm * power_W;
  const auto none = under_root < R(0.0);
  const R root = sqrt(max_of<R>(under_root, R(0.0)));
  R voltage_V = R(0.5) * (lifted_V + root);
  const R current_A = power_W / voltage_V - held_back_A;
  R lowest_V = t.instant_V * R(0.6);
  if (by_inverter) {
    const R input_W = bus.inverter_W + R(surge_W);
    voltage_V = voltage_V - R(system.inverter_cable_ohm) *
                                cable_draw<R>(voltage_V, input_W, system.inverter_cable_ohm).current_A;
    lowest_V = R(system.inverter_cut_off_V);
  } else if (minute.surge_far >= 0) {
    const auto k = static_cast<std::size_t>(minute.surge_far);
    const FarLoad& load = system.far[k];
    const R input_W = bus.far_W[k] + R(surge_W);
    voltage_V = voltage_V - R(load.ohm) * cable_draw<R>(voltage_V, input_W, load.ohm).current_A;
    if (load.cut_off_V > 0.0) lowest_V = R(load.cut_off_V);
  }
  report.surge_A = current_A * on;
  report.surge_V = L::select(on > R(0.5), voltage_V, R(0.0));
  report.failed_start = L::select(none || voltage_V < lowest_V || current_A > system.peak_A, on, R(0.0));
}

}  // namespace voltwright::season
