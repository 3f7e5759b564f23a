#pragma once
// What the solar arrays of a minute give at a bus voltage, and what their controllers cannot pass on.
// See docs/method/module.md.
#include "engine/season/system.h"

namespace voltwright::season {

/// Currents [A] and powers [W] of all solar arrays at one bus voltage.
template <class R>
struct SunOutput {
  R current_A;    // at most what the controllers let through
  R slope;        // its derivative by the bus voltage
  R clipped_W;    // what the output limits of the controllers hold back
  R untracked_W;  // what peak tracking would find beyond what directly coupled arrays give
};

/// At a bus voltage above 0. Current times voltage and `clipped_W` together are all that the controllers
/// could put out without a limit.
template <class R>
SunOutput<R> sun_output(const Minute& minute, const R& v) {
  using L = base::Lanes<R>;
  const R zero(0.0);
  const R free_A = R(minute.solar_W) / v;
  SunOutput<R> out{free_A, zero - free_A / v, zero, zero};
  for (const LimitedSun& sun : minute.limited_sun) {
    if (sun.power_W <= 0.0F) continue;
    const R power_W(static_cast<double>(sun.power_W));
    const R limit_A(static_cast<double>(sun.limit_A));
    const R asked_A = power_W / v;
    const auto over = asked_A > limit_A;
    out.current_A = out.current_A + L::select(over, limit_A, asked_A);
    out.slope = out.slope + L::select(over, zero, zero - asked_A / v);
    out.clipped_W = out.clipped_W + L::select(over, power_W - limit_A * v, zero);
  }
  if (minute.solar_A > 0.0) {
    const auto per_V = static_cast<double>(minute.coupled_A_per_V);
    R coupled_A = R(minute.solar_A) + R(per_V) * (v - R(static_cast<double>(minute.coupled_at_V)));
    R slope(per_V);
    const auto none = coupled_A < zero;
    coupled_A = L::select(none, zero, coupled_A);
    slope = L::select(none, zero, slope);
    const R over_A(static_cast<double>(minute.coupled_over_A));
    if (minute.coupled_peak_W > 0.0F) {
      // No point of the modules' curve has more power than its peak.
      const R most_A = R(static_cast<double>(minute.coupled_peak_W)) / v - over_A;
      const auto beyond = most_A < coupled_A;
      const auto nothing = most_A < zero;
      coupled_A = L::select(nothing, zero, L::select(beyond, most_A, coupled_A));
      slope = L::select(nothing, zero, L::select(beyond, zero - (most_A + over_A) / v, slope));
      const R given_W = (coupled_A + over_A) * v;
      out.untracked_W = base::max_of<R>(R(static_cast<double>(minute.coupled_peak_W)) - given_W, zero);
    }
    out.clipped_W = out.clipped_W + over_A * v;
    if (minute.coupled_limit_A > 0.0F) {
      // The straight line rises towards lower voltages, the limit does not.
      const R limit_A(static_cast<double>(minute.coupled_limit_A));
      const auto over = coupled_A > limit_A;
      out.clipped_W = out.clipped_W + L::select(over, (coupled_A - limit_A) * v, zero);
      coupled_A = L::select(over, limit_A, coupled_A);
      slope = L::select(over, zero, slope);
    }
    out.current_A = out.current_A + coupled_A;
    out.slope = out.slope + slope;
  }
  return out;
}

}  // namespace voltwright::season
