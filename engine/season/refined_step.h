#pragma once
// A step in which something switches - protection, a stage, a cut-off - is taken again in ever shorter ones,
// so that the instant is met to a second. See docs/method/ledger.md and docs/method/protection.md.
#include <cmath>

#include "engine/season/step.h"

namespace voltwright::season {

namespace detail {

/// True in the lanes where a latch or a stage differs between two states.
template <class R>
typename base::Lanes<R>::Mask switched(const SystemState<R>& a, const SystemState<R>& b,
                                       std::size_t far_count) {
  const auto differ = [](const R& x, const R& y) { return x < y || y < x; };
  auto any = differ(a.inverter_off, b.inverter_off) || differ(a.charge_blocked, b.charge_blocked);
  for (std::size_t k = 0; k < far_count; ++k) any = any || differ(a.far_off[k], b.far_off[k]);
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    any = any || differ(a.stages[kind].stage, b.stages[kind].stage);
  }
  const bank::GuardState<R>& g = a.guard;
  const bank::GuardState<R>& h = b.guard;
  any = any || differ(g.charge_cold, h.charge_cold) || differ(g.charge_hot, h.charge_hot);
  any = any || differ(g.discharge_cold, h.discharge_cold) || differ(g.discharge_hot, h.discharge_hot);
  any = any || differ(g.over_voltage, h.over_voltage) || differ(g.empty, h.empty);
  return any || differ(g.over_current, h.over_current) || differ(g.frozen, h.frozen) ||
         differ(g.dark, h.dark);
}

/// Calls f(member of a, member of b) for every number of a report that is a mean over the step.
template <class R, class F>
void each_mean(StepReport<R>& a, const StepReport<R>& b, F f) {
  static constexpr R StepReport<R>::*kMeans[] = {&StepReport<R>::bus_V,
                                                 &StepReport<R>::bank_A,
                                                 &StepReport<R>::inverter_V,
                                                 &StepReport<R>::solar_W,
                                                 &StepReport<R>::solar_left_W,
                                                 &StepReport<R>::solar_clipped_W,
                                                 &StepReport<R>::solar_untracked_W,
                                                 &StepReport<R>::engine_W,
                                                 &StepReport<R>::mains_W,
                                                 &StepReport<R>::direct_W,
                                                 &StepReport<R>::wind_W,
                                                 &StepReport<R>::water_W,
                                                 &StepReport<R>::generator_W,
                                                 &StepReport<R>::generator_on,
                                                 &StepReport<R>::inverter_W,
                                                 &StepReport<R>::inverter_cable_W,
                                                 &StepReport<R>::heater_W,
                                                 &StepReport<R>::far_cable_W,
                                                 &StepReport<R>::unmet_W,
                                                 &StepReport<R>::unmet_essential_W,
                                                 &StepReport<R>::residual_W,
                                                 &StepReport<R>::loads_off,
                                                 &StepReport<R>::charge_limit_A,
                                                 &StepReport<R>::over_current,
                                                 &StepReport<R>::charge_blocked,
                                                 &StepReport<R>::frozen,
                                                 &StepReport<R>::unwoken,
                                                 &StepReport<R>::far_off};
  for (const auto member : kMeans) f(a.*member, b.*member);
  using W = bank::StepLosses<R>;
  static constexpr R W::*kLosses[] = {&W::stored_W,   &W::ohmic_W,          &W::cable_W,
                                      &W::relaxing_W, &W::side_W,           &W::self_discharge_W,
                                      &W::side_A,     &W::self_discharge_A, &W::heat_W};
  for (const auto member : kLosses) f(a.bank.*member, b.bank.*member);
}

/// Adds a shorter step's report to that of the whole: means by its share of the time, extremes as they are.
template <class R>
void add_part(StepReport<R>& whole, const StepReport<R>& part, double share) {
  using L = base::Lanes<R>;
  using base::max_of;
  each_mean<R>(whole, part, [share](R& sum, const R& value) { sum = sum + R(share) * value; });
  const auto lower = part.surge_A > R(0.0) && (part.surge_V < whole.surge_V || whole.surge_A <= R(0.0));
  whole.surge_V = L::select(lower, part.surge_V, whole.surge_V);
  whole.surge_A = max_of<R>(whole.surge_A, part.surge_A);
  whole.failed_start = max_of<R>(whole.failed_start, part.failed_start);
  whole.collapsed = max_of<R>(whole.collapsed, part.collapsed);
  whole.load_dump_A = max_of<R>(whole.load_dump_A, part.load_dump_A);
}

/// Lane by lane `yes` or `no`.
template <class R>
void choose(const typename base::Lanes<R>::Mask& mask, StepReport<R>& yes, const StepReport<R>& no) {
  using L = base::Lanes<R>;
  each_mean<R>(yes, no, [&mask](R& a, const R& b) { a = L::select(mask, a, b); });
  for (const auto member : {&StepReport<R>::surge_A, &StepReport<R>::surge_V, &StepReport<R>::failed_start,
                            &StepReport<R>::collapsed, &StepReport<R>::load_dump_A}) {
    yes.*member = L::select(mask, yes.*member, no.*member);
  }
}

/// The same for states.
template <class R>
void choose(const typename base::Lanes<R>::Mask& mask, SystemState<R>& yes, const SystemState<R>& no) {
  using L = base::Lanes<R>;
  const auto pick = [&mask](auto& a, const auto& b, auto... members) {
    ((a.*members = L::select(mask, a.*members, b.*members)), ...);
  };
  using S = SystemState<R>;
  pick(yes, no, &S::bus_V, &S::inverter_off, &S::charge_blocked, &S::relay_A, &S::generator);
  for (std::size_t k = 0; k < kMostFarLoads; ++k)
    yes.far_off[k] = L::select(mask, yes.far_off[k], no.far_off[k]);
  using B = bank::State<R>;
  pick(yes.bank, no.bank, &B::charge, &B::imbalance, &B::fast_V, &B::slow_V, &B::side, &B::ahead, &B::last_A,
       &B::temperature_C, &B::enclosure_C);
  using G = bank::GuardState<R>;
  pick(yes.guard, no.guard, &G::charge_cold, &G::charge_hot, &G::discharge_cold, &G::discharge_hot,
       &G::over_voltage, &G::empty, &G::frozen, &G::dark, &G::overload, &G::over_current, &G::retry_s);
  using T = supply::StageState<R>;
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    pick(yes.stages[kind], no.stages[kind], &T::stage, &T::absorption_s, &T::since_equalised_s);
  }
}

template <class R>
StepReport<R> step_at_pace(const System<R>& system, std::size_t pace, const Minute& minute,
                           SystemState<R>& s) {
  using L = base::Lanes<R>;
  const SystemState<R> before = s;
  StepReport<R> report = plain_step<R>(system, pace, minute, s);
  if (pace >= system.finer_count) return report;
  const auto anew = switched<R>(before, s, system.far_count);
  if (!L::any(anew)) return report;
  SystemState<R> state = before;
  StepReport<R> sum{};
  const double step_s = L::lane_value(system.paced(pace).step_s, 0);
  const double part_s = L::lane_value(system.paced(pace + 1).step_s, 0);
  const auto parts = static_cast<int>(std::lround(step_s / part_s));
  for (int i = 0; i < parts; ++i) {
    add_part<R>(sum, step_at_pace<R>(system, pace + 1, minute, state), 1.0 / parts);
  }
  choose<R>(anew, state, s);
  choose<R>(anew, sum, report);
  s = state;
  return sum;
}

}  // namespace detail

/// Advances the system by one step; where something switches within it, to the second.
template <class R>
StepReport<R> step(const System<R>& system, const Minute& minute, SystemState<R>& s) {
  return detail::step_at_pace<R>(system, 0, minute, s);
}

}  // namespace voltwright::season
