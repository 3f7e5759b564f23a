#pragma once
// The bus voltage at which sources, loads and the bank balance. See docs/method/bus.md.
#include <algorithm>
#include <cmath>

#include "engine/season/sun_output.h"
#include "engine/season/system.h"

namespace voltwright::season {

/// Input current of a constant-power load behind a cable: I = 2 P / (V + sqrt(V^2 - 4 R P)) [A].
/// Below the voltage at which no solution exists (V^2 < 4 R P) the root is taken as zero.
template <class R>
struct CableDraw {
  R current_A;
  R root_V;
};

template <class R>
CableDraw<R> cable_draw(const R& bus_V, const R& power_W, double cable_ohm) {
  using std::sqrt;
  const R root_V = sqrt(base::max_of<R>(bus_V * bus_V - power_W * R(4.0 * cable_ohm), R(1e-6)));
  return {power_W * R(2.0) / (bus_V + root_V), root_V};
}

/// What stands on the bus in one step besides the bank.
template <class R>
struct BusCase {
  const System<R>& system;
  const Minute& minute;
  std::array<R, kSourceKinds> set_V{};    // what each charger holds at its own terminals
  std::array<R, kSourceKinds> running{};  // 1 = connected and awake
  R direct_W{0.0};
  R inverter_W{0.0};
  std::array<R, kMostFarLoads> far_W{};

  bool has(std::size_t kind) const {
    if (kind == kSolar) return minute.has_sun();
    if (kind == kWind) return minute.wind_W > 0.0F;
    if (kind == kWater) return minute.water_W > 0.0F;
    if (kind == kGenerator) return system.generator_W > 0.0 && minute.generator != GeneratorMinute::kOff;
    return kind == kEngine ? minute.engine : minute.mains;
  }
  /// Whether the source comes through a relay, which has no voltage of its own to hold.
  bool by_relay(std::size_t kind) const { return kind == kEngine && system.relay_V > 0.0; }
};

/// A current with its derivative by the bus voltage.
template <class R>
struct CurrentAndSlope {
  R current_A;
  R slope;
};

/// A source of `power_W`, or `limit_A` if that is less.
template <class R>
CurrentAndSlope<R> by_power(double power_W, double limit_A, const R& v) {
  using L = base::Lanes<R>;
  const R current_A = R(power_W) / v;
  const auto limited = current_A > R(limit_A);
  return {L::select(limited, R(limit_A), current_A), L::select(limited, R(0.0), R(0.0) - current_A / v)};
}

/// All that a source could give at a bus voltage if its charger did not hold a voltage [A].
template <class R>
CurrentAndSlope<R> full_output(const BusCase<R>& bus, std::size_t kind, const R& v) {
  using L = base::Lanes<R>;
  const System<R>& system = bus.system;
  const R zero(0.0);
  if (kind == kSolar) {
    const SunOutput<R> sun = sun_output<R>(bus.minute, v);
    return {sun.current_A, sun.slope};
  }
  if (kind == kMains) return {R(system.mains_limit_A), zero};
  const Minute& minute = bus.minute;
  const auto no_limit = static_cast<double>(kNoLimit);
  if (kind == kWind) return by_power<R>(static_cast<double>(minute.wind_W), no_limit, v);
  if (kind == kWater) return by_power<R>(static_cast<double>(minute.water_W), no_limit, v);
  if (kind == kGenerator) return by_power<R>(system.generator_W, system.mains_limit_A, v);
  const double set_A = minute.engine_low ? system.engine_low_limit_A : system.engine_limit_A;
  const double limit_A = std::min(set_A, static_cast<double>(minute.engine_most_A));
  if (system.relay_V <= 0.0) {
    if (minute.engine_most_W >= kNoLimit) return {R(limit_A), zero};
    return by_power<R>(static_cast<double>(minute.engine_most_W), limit_A, v);
  }
  double behind_V = minute.engine_low ? system.relay_low_V : system.relay_V;
  if (minute.engine_V > 0.0F) behind_V = static_cast<double>(minute.engine_V);
  const R driven_A = (R(behind_V) - v) * R(1.0 / system.relay_ohm);
  const auto between = driven_A > zero && driven_A < R(limit_A);
  return {base::clamp_of<R>(driven_A, zero, R(limit_A)),
          L::select(between, R(-1.0 / system.relay_ohm), zero)};
}

/// Of all that a source could give at a bus voltage, what its charger would let through [A]: nothing while it
/// rests above the voltage it holds.
template <class R>
R awake_A(const BusCase<R>& bus, std::size_t kind, const R& v, const R& full_A) {
  using L = base::Lanes<R>;
  return bus.by_relay(kind) ? full_A : L::select(v < bus.set_V[kind], full_A, R(0.0));
}

/// What a source gives at a bus voltage: all it can, less as its charger nears the voltage it holds, nothing
/// beyond.
template <class R>
CurrentAndSlope<R> output(const BusCase<R>& bus, std::size_t kind, const R& v) {
  using L = base::Lanes<R>;
  const R zero(0.0);
  CurrentAndSlope<R> full = full_output<R>(bus, kind, v);
  if (bus.by_relay(kind)) return full;
  const double per_ohm = 1.0 / bus.system.chargers[kind].lead_ohm;
  const R held_A = (bus.set_V[kind] - v) * R(per_ohm);
  const auto holds = held_A < full.current_A;
  const auto silent = held_A < zero;
  full.current_A = L::select(silent, zero, L::select(holds, held_A, full.current_A));
  full.slope = L::select(silent, zero, L::select(holds, R(-per_ohm), full.slope));
  return full;
}

/// Sum of the currents into the bus besides the bank's [A], and its derivative by the bus voltage [A/V].
template <class R>
CurrentAndSlope<R> bus_balance(const BusCase<R>& bus, const R& v) {
  const R direct_A = bus.direct_W / v;
  const CableDraw<R> inverter = cable_draw<R>(v, bus.inverter_W, bus.system.inverter_cable_ohm);
  CurrentAndSlope<R> sum{R(0.0) - direct_A - inverter.current_A,
                         direct_A / v + inverter.current_A / inverter.root_V};
  for (std::size_t k = 0; k < bus.system.far_count; ++k) {
    const CableDraw<R> far = cable_draw<R>(v, bus.far_W[k], bus.system.far[k].ohm);
    sum.current_A = sum.current_A - far.current_A;
    sum.slope = sum.slope + far.current_A / far.root_V;
  }
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    const CurrentAndSlope<R> source = output<R>(bus, kind, v);
    sum.current_A = sum.current_A + bus.running[kind] * source.current_A;
    sum.slope = sum.slope + bus.running[kind] * source.slope;
  }
  return sum;
}

template <class R>
struct BusSolution {
  R bus_V;
  R bank_A;
  typename base::Lanes<R>::Mask collapsed;
};

/// Newton's method needs one or two from a good start; halving the bracket in the worst case gives 2^-60 of
/// it. After the first few every second is a halving: where the sources' curves bend, Newton can run in a
/// circle.
inline constexpr int kMostIterations = 120;
inline constexpr int kNewtonAlone = 6;

namespace detail {

/// Bus voltage if no charger held back and the losses in cables were those of the voltage `near_V` [V]: the
/// larger root of V^2 - (E + R I) V + R P = 0 with constant current I and net power P taken from the bus.
/// NaN-free: where no root exists the vertex is returned.
template <class R>
R quadratic_bus(const BusCase<R>& bus, const R& source_V, const R& ohm, const R& near_V) {
  using std::sqrt;
  R power_W = bus.direct_W + bus.inverter_W;
  const R inverter_A = bus.inverter_W / near_V;
  power_W = power_W + R(bus.system.inverter_cable_ohm) * inverter_A * inverter_A;
  for (std::size_t k = 0; k < bus.system.far_count; ++k) {
    const R far_A = bus.far_W[k] / near_V;
    power_W = power_W + bus.far_W[k] + R(bus.system.far[k].ohm) * far_A * far_A;
  }
  R constant_A(0.0);
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    if (kind == kSolar) {
      power_W = power_W - bus.running[kind] * R(bus.minute.solar_W);
      const R beyond_A = sun_output<R>(bus.minute, near_V).current_A - R(bus.minute.solar_W) / near_V;
      constant_A = constant_A + bus.running[kind] * beyond_A;
    } else {
      constant_A = constant_A + bus.running[kind] * full_output<R>(bus, kind, near_V).current_A;
    }
  }
  const R lifted = source_V + ohm * constant_A;
  const R root = sqrt(base::max_of<R>(lifted * lifted - R(4.0) * ohm * power_W, R(0.0)));
  return R(0.5) * (lifted + root);
}

}  // namespace detail

/// Bus voltage: a closed form first, then Newton's method. Whether the bank charges is decided by the balance
/// at its source voltage, as its resistance differs between the two directions. The root stays bracketed,
/// from 0.5 to 1.5 times the source voltage at first; a result below 0.6 times is a collapse.
template <class R>
BusSolution<R> solve_bus(const BusCase<R>& bus, const bank::Terminal<R>& t, const R& start_V) {
  using base::clamp_of;
  using L = base::Lanes<R>;
  const auto charging = bus_balance<R>(bus, t.source_V).current_A > R(0.0);
  const R ohm = L::select(charging, t.charge_ohm, t.discharge_ohm);
  const R per_ohm = R(1.0) / ohm;
  R low = L::select(charging, t.source_V, t.source_V * R(0.5));
  R high = L::select(charging, t.source_V * R(1.5), t.source_V);
  R v = detail::quadratic_bus<R>(bus, t.source_V, ohm, start_V);
  R held_V(0.0);
  bool may_hold = false;
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    may_hold = true;
    held_V = base::max_of<R>(held_V, bus.by_relay(kind) ? R(1e9) : bus.set_V[kind]);
  }
  if (may_hold) v = base::min_of<R>(v, held_V);
  v = clamp_of<R>(v, low, high);
  for (int i = 0; i < kMostIterations; ++i) {
    const CurrentAndSlope<R> others = bus_balance<R>(bus, v);
    const R balance_A = (t.source_V - v) * per_ohm + others.current_A;
    const auto root_above = balance_A > R(0.0);
    low = L::select(root_above, v, low);
    high = L::select(root_above, high, v);
    const R newton_V = v - balance_A / (others.slope - per_ohm);
    const R middle = R(0.5) * (low + high);
    R next = L::select(newton_V >= low && newton_V <= high, newton_V, middle);
    const R newton_change = newton_V - v;
    const auto settled = newton_change < R(1e-8) * v && newton_change > R(-1e-8) * v;
    if (i >= kNewtonAlone && i % 2 == 1) next = L::select(settled, newton_V, middle);
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
