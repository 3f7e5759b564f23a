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

/// Sum of the currents into the bus besides the bank's [A], and its derivative by the bus voltage [A/V].
template <class R>
struct BusBalance {
  R current_A;
  R slope;
};

template <class R>
BusBalance<R> bus_balance(const System<R>& system, const Minute& minute, const R& v, const R& direct_W,
                          const R& inverter_W, const R& sources_on) {
  using L = base::Lanes<R>;
  const R per_V = R(1.0) / v;
  const R direct_A = direct_W * per_V;
  const InverterDraw<R> inverter = inverter_draw<R>(v, inverter_W, system.inverter_cable_ohm);
  BusBalance<R> sum{R(0.0) - direct_A - inverter.current_A,
                    direct_A * per_V + inverter.current_A / inverter.root_V};
  if (minute.has_source()) {
    const double mains_A = minute.mains ? system.mains_limit_A : 0.0;
    const R engine_A = engine_current<R>(system, minute, v);
    const R solar_A = R(minute.solar_W) * per_V;
    R slope = R(0.0) - solar_A * per_V;
    if (minute.engine && system.relay_V > 0.0) {
      const auto between = engine_A > R(0.0) && engine_A < R(system.engine_limit_A);
      slope = slope - L::select(between, R(1.0 / system.relay_ohm), R(0.0));
    }
    sum.current_A = sum.current_A + sources_on * (solar_A + R(minute.solar_A + mains_A) + engine_A);
    sum.slope = sum.slope + sources_on * slope;
  }
  return sum;
}

/// Newton's method needs one or two from a good start; halving the bracket in the worst case gives 2^-60 of
/// it.
inline constexpr int kMostIterations = 60;

namespace detail {

/// Bus voltage if the loss in the inverter's cable were that of the voltage `near_V` [V]: the larger root of
/// V^2 - (E + R I) V + R P = 0 with constant current I and net power P taken from the bus. NaN-free: where no
/// root exists the vertex is returned.
template <class R>
R quadratic_bus(const R& source_V, const R& ohm, const R& current_A, const R& power_W) {
  using std::sqrt;
  const R lifted = source_V + ohm * current_A;
  const R root = sqrt(base::max_of<R>(lifted * lifted - R(4.0) * ohm * power_W, R(0.0)));
  return R(0.5) * (lifted + root);
}

}  // namespace detail

/// Bus voltage with all sources at full output (or none): a closed form first, then Newton's method. Whether
/// the bank charges is decided by the balance at its source voltage, as its resistance differs between the
/// two directions. The root stays bracketed, from 0.5 to 1.5 times the source voltage at first; a result
/// below 0.6 times is a collapse.
template <class R>
BusSolution<R> solve_bus(const System<R>& system, const Minute& minute, const bank::Terminal<R>& t,
                         const R& direct_W, const R& inverter_W, const R& start_V, const R& sources_on) {
  using base::clamp_of;
  using L = base::Lanes<R>;
  const BusBalance<R> at_source =
      bus_balance<R>(system, minute, t.source_V, direct_W, inverter_W, sources_on);
  const auto charging = at_source.current_A > R(0.0);
  const R ohm = L::select(charging, t.charge_ohm, t.discharge_ohm);
  const R per_ohm = R(1.0) / ohm;
  R low = L::select(charging, t.source_V, t.source_V * R(0.5));
  R high = L::select(charging, t.source_V * R(1.5), t.source_V);
  R v = start_V;
  if (!(minute.engine && system.relay_V > 0.0)) {
    const double constant_A = minute.solar_A + (minute.mains ? system.mains_limit_A : 0.0) +
                              (minute.engine ? system.engine_limit_A : 0.0);
    const R inverter_A = inverter_W / start_V;
    const R power_W = direct_W + inverter_W + R(system.inverter_cable_ohm) * inverter_A * inverter_A -
                      sources_on * R(minute.solar_W);
    v = detail::quadratic_bus<R>(t.source_V, ohm, sources_on * R(constant_A), power_W);
  }
  v = clamp_of<R>(v, low, high);
  for (int i = 0; i < kMostIterations; ++i) {
    const BusBalance<R> others = bus_balance<R>(system, minute, v, direct_W, inverter_W, sources_on);
    const R balance_A = (t.source_V - v) * per_ohm + others.current_A;
    const auto root_above = balance_A > R(0.0);
    low = L::select(root_above, v, low);
    high = L::select(root_above, high, v);
    const R newton_V = v - balance_A / (others.slope - per_ohm);
    const R next = L::select(newton_V >= low && newton_V <= high, newton_V, R(0.5) * (low + high));
    const R change = next - v;
    v = next;
    // Newton's error is the square of its last change, so this leaves less than rounding.
    if (!L::any(change > R(1e-8) * v || change < R(-1e-8) * v)) break;
  }
  BusSolution<R> solution;
  solution.bus_V = v;
  solution.bank_A = (t.source_V - v) * per_ohm;
  solution.collapsed = v < t.source_V * R(0.6);
  return solution;
}

}  // namespace voltwright::season
