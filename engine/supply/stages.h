#pragma once
// Charging stages of one charger: bulk to the absorption voltage, absorption until the current has tapered or
// the time is up, now and then an equalising charge, then float (or rest) until the voltage falls. Voltages
// are compensated for the bank's temperature with a cap. See docs/method/charging.md.
#include "engine/base/lanes.h"

namespace voltwright::supply {

template <class R>
struct StageSettings {
  R absorption_V{14.2};
  R float_V{13.3};  // for a chemistry without float: the voltage at which sources take over the loads again
  R rebulk_V{13.2};
  R tail_A{2.0};
  R absorption_max_s{14400.0};
  R compensation_V_per_K{0.0};  // whole bank
  R highest_V{15.5};            // cap on the compensated voltage, equalising excepted
  R full_charge{1.0};  // state of charge whose open-circuit voltage is the highest that is held; 2: none
  R equalise_V{0.0};   // 0 = never
  R equalise_s{0.0};   // how long the voltage is held
  R equalise_every_s{0.0};
};

template <class R>
struct StageState {
  R stage{0.0};         // 0 bulk, 1 absorption, 2 float or rest, 3 equalising
  R absorption_s{0.0};  // time spent holding the voltage of this stage
  R since_equalised_s{0.0};
  double without_source_s = 0.0;
};

/// A charger that finds its source again after this long begins with bulk; common practice, no source.
inline constexpr double kNewCharge_s = 3600.0;

/// Tells the stages whether there is a source in the coming step; a source that comes back after a break
/// begins a new charge.
template <class R>
void notice_source(StageState<R>& s, bool source, double step_s) {
  s.since_equalised_s = s.since_equalised_s + R(step_s);
  if (!source) {
    s.without_source_s += step_s;
    return;
  }
  if (s.without_source_s >= kNewCharge_s) {
    s.stage = R(0.0);
    s.absorption_s = R(0.0);
  }
  s.without_source_s = 0.0;
}

/// Compensation ends at these temperatures of the bank; common practice, no source.
inline constexpr double kLeastCompensated_C = -20.0;
inline constexpr double kMostCompensated_C = 50.0;

/// Voltage that the charger holds now [V], compensated for a bank temperature clamped to -20..50 degC.
template <class R>
R set_point(const StageSettings<R>& g, const StageState<R>& s, const R& temperature_C) {
  using base::clamp_of;
  using L = base::Lanes<R>;
  const auto equalising = s.stage > R(2.5);
  R reference = L::select(s.stage > R(1.5), g.float_V, g.absorption_V);
  reference = L::select(equalising, g.equalise_V, reference);
  const R compensated =
      reference + g.compensation_V_per_K *
                      (clamp_of<R>(temperature_C, R(kLeastCompensated_C), R(kMostCompensated_C)) - R(25.0));
  return base::min_of<R>(compensated,
                         L::select(equalising, base::max_of<R>(g.highest_V, g.equalise_V), g.highest_V));
}

/// Moves the stage on after a step.
/// `held` = the voltage was held at the set-point; `current_A` is the bank's, charging negative.
template <class R>
void next_stage(const StageSettings<R>& g, StageState<R>& s, const typename base::Lanes<R>::Mask& held,
                const R& bank_V, const R& current_A, const R& step_s) {
  using L = base::Lanes<R>;
  const auto bulk = s.stage < R(0.5);
  const auto absorbing = s.stage > R(0.5) && s.stage < R(1.5);
  const auto equalising = s.stage > R(2.5);
  const auto floating = s.stage > R(1.5) && s.stage < R(2.5);
  s.absorption_s = L::select((absorbing || equalising) && held, s.absorption_s + step_s, s.absorption_s);
  const auto tapered = held && R(0.0) - current_A < g.tail_A;
  const auto absorbed = absorbing && (tapered || s.absorption_s >= g.absorption_max_s);
  const auto due = g.equalise_V > R(0.0) && s.since_equalised_s >= g.equalise_every_s;
  const auto equalised = equalising && s.absorption_s >= g.equalise_s;
  // A long break in absorption starts over, as the bank has been drawn down.
  const auto broken = (floating || absorbing || equalising) && bank_V < g.rebulk_V;
  const R before = s.stage;
  R stage = L::select(bulk && held, R(1.0), s.stage);
  stage = L::select(broken, R(0.0), stage);
  stage = L::select(absorbed, L::select(due, R(3.0), R(2.0)), stage);
  s.stage = L::select(equalised, R(2.0), stage);
  s.since_equalised_s = L::select(equalised, R(0.0), s.since_equalised_s);
  s.absorption_s = L::select(s.stage < before || s.stage > before, R(0.0), s.absorption_s);
}

/// One regulated source on the bus: stages of its own, and the resistance of the lead between the point where
/// it holds its voltage and the bus.
template <class R>
struct Charger {
  StageSettings<R> stages;
  double lead_ohm = 1e-3;  // > 0
  bool wakes = false;      // starts on a bank that shows no voltage
};

}  // namespace voltwright::supply
