#pragma once
// The bus voltage at which sources, loads and the bank balance. See docs/method/bus.md.
#include <cmath>

#include "engine/season/system.h"

namespace voltwright::season {

/// Input current of a constant-power inverter behind a cable: I = 2 P / (V + sqrt(V^2 - 4 R P)) [A].
/// Below the voltage at which no solution exists (V^2 < 4 R P) the root is taken as zero.
template <class R>
struct InverterDraw {
  R current_A;
  R root_V;
};

template <class R>
InverterDraw<R> inverter_draw(const R& bus_V, const R& power_W, double cable_ohm) {
  using std::sqrt;
  const R root_V = sqrt(base::max_of<R>(bus_V * bus_V - power_W * R(4.0 * cable_ohm), R(1e-6)));
  return {power_W * R(2.0) / (bus_V + root_V), root_V};
}

/// Largest current the engine can give at a bus voltage [A].
template <class R>
R engine_current(const System<R>& system, const Minute& minute, const R& bus_V) {
  if (!minute.engine) return R(0.0);
  if (system.relay_V <= 0.0) return R(system.engine_limit_A);
  return base::clamp_of<R>((R(system.relay_V) - bus_V) * R(1.0 / system.relay_ohm), R(0.0),
                           R(system.engine_limit_A));
}

template <class R>
struct BusSolution {
  R bus_V;
  R bank_A;
  typename base::Lanes<R>::Mask collapsed;
};

/// Bus voltage with all sources at full output (or none) by Newton's method from the previous voltage.
/// The balance falls steadily with the voltage wherever a stable working point exists; the iteration is kept
/// inside 0.5 to 1.5 times the source voltage, and a result below 0.6 times is a collapse.
template <class R>
BusSolution<R> solve_bus(const System<R>& system, const Minute& minute, const bank::Terminal<R>& t,
                         const R& direct_W, const R& inverter_W, const R& start_V, const R& sources_on) {
  using base::clamp_of;
  using L = base::Lanes<R>;
  using std::abs;
  using std::fabs;
  const R low = t.source_V * R(0.5);
  const R high = t.source_V * R(1.5);
  R v = clamp_of<R>(start_V, low, high);
  R ohm = t.discharge_ohm;
  const bool sources = minute.has_source();
  const double mains_A = minute.mains ? system.mains_limit_A : 0.0;
  for (int i = 0; i < 8; ++i) {
    ohm = L::select(v < t.source_V, t.discharge_ohm, t.charge_ohm);
    const InverterDraw<R> inverter = inverter_draw<R>(v, inverter_W, system.inverter_cable_ohm);
    R balance_A = (t.source_V - v) / ohm - direct_W / v - inverter.current_A;
    R slope = R(-1.0) / ohm + direct_W / (v * v) + inverter.current_A / inverter.root_V;
    if (sources) {
      const R engine_A = engine_current<R>(system, minute, v);
      balance_A = balance_A + sources_on * (R(minute.solar_W) / v + R(minute.solar_A + mains_A) + engine_A);
      R source_slope = R(-minute.solar_W) / (v * v);
      if (minute.engine && system.relay_V > 0.0) {
        const auto between = engine_A > R(0.0) && engine_A < R(system.engine_limit_A);
        source_slope = source_slope - L::select(between, R(1.0 / system.relay_ohm), R(0.0));
      }
      slope = slope + sources_on * source_slope;
    }
    const R steep = base::min_of<R>(slope, R(-0.05) / ohm);
    const R next = clamp_of<R>(v - balance_A / steep, low, high);
    const R change = next - v;
    v = next;
    if (!L::any(change > R(1e-12) * v || change < R(-1e-12) * v)) break;
  }
  ohm = L::select(v < t.source_V, t.discharge_ohm, t.charge_ohm);
  BusSolution<R> solution;
  solution.bus_V = v;
  solution.bank_A = (t.source_V - v) / ohm;
  solution.collapsed = v < t.source_V * R(0.6);
  return solution;
}

}  // namespace voltwright::season
