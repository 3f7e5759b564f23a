#pragma once
// One step of the whole system. The same function serves a single bank (double) and many side by side
// (lanes).
#include <algorithm>

#include "engine/season/bus.h"
#include "engine/season/start.h"
#include "engine/supply/generator.h"

namespace voltwright::season {

namespace detail {

/// Heater power wanted to bring the bank to its switch-on temperature by the end of the step [W].
template <class R>
R heater_demand(const System<R>& system, const bank::Parameters<R>& p, const SystemState<R>& s,
                double surroundings_C) {
  if (system.heater_W <= 0.0) return R(0.0);
  // The temperature at the end of the step is linear in the heater's power: solve for the target.
  const R bank_off_K = s.bank.temperature_C - R(surroundings_C);
  const R enclosure_off_K = s.bank.enclosure_C - R(surroundings_C);
  const R unheated_C = R(surroundings_C) + bank_off_K * p.bank_keep + enclosure_off_K * p.bank_by_enclosure;
  const R settled_K_W = R(1.0) / p.heat_loss_W_K + p.enclosure_K_W;
  const R gain_K_W = settled_K_W * (R(1.0) - p.bank_keep) - p.enclosure_K_W * p.bank_by_enclosure;
  return base::clamp_of<R>((R(system.heater_below_C) - unheated_C) / gain_K_W, R(0.0), R(system.heater_W));
}

/// All that the sources on the bus could give at the last voltage [W].
template <class R>
struct SourcePower {
  R all_W{0.0};    // if they held no voltage
  R awake_W{0.0};  // of those whose charger does not rest above the voltage it holds
};

template <class R>
SourcePower<R> source_power(const BusCase<R>& bus, const R& bus_V) {
  SourcePower<R> power;
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    const R full_A = full_output<R>(bus, kind, bus_V).current_A;
    power.all_W = power.all_W + bus.running[kind] * full_A * bus_V;
    power.awake_W = power.awake_W + bus.running[kind] * awake_A<R>(bus, kind, bus_V, full_A) * bus_V;
  }
  return power;
}

/// Shares the current that loads and bank need among the sources, solar first, and returns what is left over.
template <class R>
R share_sources(const BusCase<R>& bus, const R& bus_V, const R& needed_A, SystemState<R>& s,
                StepReport<R>& report) {
  const R zero(0.0);
  std::array<R, kSourceKinds> given_A;
  given_A.fill(zero);
  R left_A = needed_A;
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    const R full_A = full_output<R>(bus, kind, bus_V).current_A;
    const R most_A = awake_A<R>(bus, kind, bus_V, full_A);
    given_A[kind] = base::clamp_of<R>(left_A, zero, bus.running[kind] * most_A);
    left_A = left_A - given_A[kind];
  }
  report.solar_W = given_A[kSolar] * bus_V;
  if (bus.has(kSolar)) {
    const SunOutput<R> sun = sun_output<R>(bus.minute, bus_V);
    report.solar_left_W = (sun.current_A - given_A[kSolar]) * bus_V;
    report.solar_clipped_W = sun.clipped_W;
    report.solar_untracked_W = sun.untracked_W;
  }
  report.engine_W = given_A[kEngine] * bus_V;
  report.mains_W = given_A[kMains] * bus_V;
  report.wind_W = given_A[kWind] * bus_V;
  report.water_W = given_A[kWater] * bus_V;
  report.generator_W = given_A[kGenerator] * bus_V;
  s.relay_A = bus.system.relay_V > 0.0 ? given_A[kEngine] : zero;
  return left_A;
}

/// Far loads at the voltage that has come out: what they and their cables take, and who drops out.
template <class R>
R report_far_loads(const BusCase<R>& bus, const R& bus_V, const R& loads_on, SystemState<R>& s,
                   StepReport<R>& report) {
  using L = base::Lanes<R>;
  const R zero(0.0);
  const R one(1.0);
  R total_A(0.0);
  report.far_cable_W = zero;
  report.far_off = zero;
  for (std::size_t k = 0; k < bus.system.far_count; ++k) {
    const FarLoad& load = bus.system.far[k];
    const R current_A = cable_draw<R>(bus_V, bus.far_W[k], load.ohm).current_A;
    const R load_V = bus_V - R(load.ohm) * current_A;
    total_A = total_A + current_A;
    report.far_cable_W = report.far_cable_W + R(load.ohm) * current_A * current_A;
    report.direct_W = report.direct_W + load_V * current_A;
    const R on = loads_on * (one - s.far_off[k]);
    const auto wanted = R(static_cast<double>(bus.minute.far_W[k]));
    report.unmet_W = report.unmet_W + wanted * (one - on);
    report.unmet_essential_W =
        report.unmet_essential_W + R(static_cast<double>(bus.minute.essential_far_W[k])) * (one - on);
    report.far_off = L::select(s.far_off[k] > R(0.5) && wanted > zero, one, report.far_off);
    const auto tripped = load_V < R(load.cut_off_V) && bus.far_W[k] > zero;
    s.far_off[k] = bank::detail::latch<R>(s.far_off[k], tripped, bus_V > R(load.restart_V));
  }
  return total_A;
}

/// Whether the generator set runs in this step; its charger begins with bulk whenever it starts.
template <class R>
void run_generator(const System<R>& system, const Minute& minute, SystemState<R>& s) {
  using L = base::Lanes<R>;
  const R zero(0.0);
  const R one(1.0);
  const R before = s.generator;
  s.generator = zero;
  if (system.generator_W <= 0.0) return;
  if (minute.generator != GeneratorMinute::kOff) {
    const R kept = system.generator_start_below > 0.0 ? before : zero;
    R on = L::select(s.bank.charge < R(system.generator_start_below), one, kept);
    if (minute.generator == GeneratorMinute::kScheduled) {
      const R again(system.generator_stop_above - supply::kEmptierBeforeRestart);
      on = L::select(s.bank.charge < again, one, base::max_of<R>(on, before));
    }
    s.generator = L::select(s.bank.charge < R(system.generator_stop_above), on, zero);
  }
  const auto goes_on = before > R(0.5) && s.generator > R(0.5);
  supply::StageState<R>& stage = s.stages[kGenerator];
  stage.stage = L::select(goes_on, stage.stage, zero);
  stage.absorption_s = L::select(goes_on, stage.absorption_s, zero);
}

/// Which sources run and what voltage each holds.
template <class R>
void connect_sources(BusCase<R>& bus, SystemState<R>& s, double step_s) {
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    const supply::Charger<R>& charger = bus.system.chargers[kind];
    const bool there = bus.has(kind);
    supply::notice_source<R>(s.stages[kind], there, step_s);
    bus.running[kind] = charger.wakes ? R(1.0) : R(1.0) - s.guard.dark;
    if (kind == kGenerator) bus.running[kind] = bus.running[kind] * s.generator;
    if (there) bus.set_V[kind] = supply::set_point<R>(charger.stages, s.stages[kind], s.bank.temperature_C);
  }
}

}  // namespace detail

/// Advances the system by one step of the given pace, without looking at what switches within it.
template <class R>
StepReport<R> plain_step(const System<R>& system, std::size_t pace, const Minute& minute, SystemState<R>& s) {
  using base::max_of;
  using L = base::Lanes<R>;
  const R zero(0.0);
  const R one(1.0);
  const bank::Parameters<R>& p = system.paced(pace);
  const bank::Permission<R> permission = bank::permit<R>(system.guard, s.guard, p, s.bank);
  const bank::Terminal<R> t = bank::terminal<R>(p, s.bank);
  const bool steady = minute.has_source();
  const bool sources = steady || minute.generator != GeneratorMinute::kOff;
  StepReport<R> report{};

  detail::run_generator<R>(system, minute, s);
  BusCase<R> bus{system, minute};
  detail::connect_sources<R>(bus, s, L::lane_value(p.step_s, 0));
  detail::SourcePower<R> source;
  if (sources) source = detail::source_power<R>(bus, s.bus_V);

  // Loads run if the bank may discharge or the sources alone carry them with a tenth to spare.
  R loads_W(minute.direct_W + minute.inverter_W);
  for (std::size_t k = 0; k < system.far_count; ++k)
    loads_W = loads_W + R(static_cast<double>(minute.far_W[k]));
  R heater_W = detail::heater_demand<R>(system, p, s, minute.surroundings_C);
  if (system.heater_on_surplus)
    heater_W = base::clamp_of<R>(source.awake_W - loads_W * R(1.1), zero, heater_W);
  R loads_on = L::select(permission.discharge_allowed, one, zero);
  if (sources) loads_on = L::select(source.all_W > (loads_W + heater_W) * R(1.1), one, loads_on);
  const auto switch_loads = [&](const R& on) {
    loads_on = on;
    bus.direct_W = (R(minute.direct_W) + heater_W) * on;
    bus.inverter_W = R(minute.inverter_W) * on * (one - s.inverter_off);
    for (std::size_t k = 0; k < system.far_count; ++k) {
      bus.far_W[k] = R(static_cast<double>(minute.far_W[k])) * on * (one - s.far_off[k]);
    }
  };
  switch_loads(loads_on);

  BusSolution<R> solution = solve_bus<R>(bus, t, s.bus_V);
  report.collapsed = L::select(solution.collapsed, one, zero);
  if (L::any(solution.collapsed)) {
    switch_loads(loads_on * (one - report.collapsed));
    solution = solve_bus<R>(bus, t, t.source_V);
  }

  // Sources give less than they could where the bank's charge limit asks for it. Nor may a step charge beyond
  // the charge whose open-circuit voltage is held: where the curve turns up at full, the slope at the start
  // of the step would let it overshoot.
  R bank_A = solution.bank_A;
  auto full = one < zero;  // false in every lane
  if (sources) {
    R ceiling = zero;
    for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
      if (!bus.has(kind)) continue;
      const R full_charge = system.chargers[kind].stages.full_charge;
      ceiling = max_of<R>(ceiling, kind == kGenerator ? full_charge * s.generator : full_charge);
    }
    const R room_Ah = max_of<R>(ceiling - s.bank.charge, zero) * p.capacity_Ah;
    const R to_full_A = room_Ah * R(3600.0) / p.step_s;
    full = to_full_A < permission.charge_limit_A && bank_A < zero - to_full_A;
    bank_A = max_of<R>(bank_A, zero - base::min_of<R>(permission.charge_limit_A, to_full_A));
  }
  const R bus_V = t.source_V - L::select(bank_A < zero, t.charge_ohm, t.discharge_ohm) * bank_A;

  const R inverter_A = cable_draw<R>(bus_V, bus.inverter_W, system.inverter_cable_ohm).current_A;
  report.bus_V = bus_V;
  report.bank_A = bank_A;
  report.inverter_V = bus_V - R(system.inverter_cable_ohm) * inverter_A;
  report.heater_W = heater_W * loads_on;
  report.direct_W = bus.direct_W - report.heater_W;
  report.inverter_W = inverter_A * report.inverter_V;
  report.inverter_cable_W = R(system.inverter_cable_ohm) * inverter_A * inverter_A;
  const R inverter_on = loads_on * (one - s.inverter_off);
  report.unmet_W = R(minute.direct_W) * (one - loads_on) + R(minute.inverter_W) * (one - inverter_on);
  report.unmet_essential_W =
      R(minute.essential_direct_W) * (one - loads_on) + R(minute.essential_inverter_W) * (one - inverter_on);
  const R far_A = detail::report_far_loads<R>(bus, bus_V, loads_on, s, report);
  const R needed_A = bus.direct_W / bus_V + inverter_A + far_A - bank_A;
  const R relay_before_A = s.relay_A;
  report.residual_W = detail::share_sources<R>(bus, bus_V, needed_A, s, report) * bus_V;
  report.loads_off = one - loads_on;
  report.charge_limit_A = permission.charge_limit_A;
  report.frozen = s.guard.frozen;
  const auto blocked = permission.charge_limit_A <= zero;
  report.load_dump_A = L::select(blocked && s.charge_blocked < R(0.5), relay_before_A, zero);
  s.charge_blocked = L::select(blocked, one, zero);
  report.charge_blocked = s.charge_blocked;
  check_start<R>(bus, t, {bus_V, bank_A, needed_A}, inverter_on, loads_on, report);

  report.bank = bank::advance<R>(p, t, s.bank, bank_A, R(minute.surroundings_C), report.heater_W);
  const R available = s.bank.charge - (one - p.tank_share) * s.bank.imbalance;
  const R fullest_V = bank::fullest_cell_V<R>(p, s.bank, bus_V);
  bank::bleed<R>(p, s.bank, fullest_V);
  // The mean of a step hides what is crossed in its second half. A step that may be taken again in shorter
  // ones is judged by the voltage it comes to, as far beyond the mean as the mean is beyond its start.
  const R charging_ohm = L::select(bank_A < zero, t.charge_extra_ohm, zero);
  const R start_V = t.instant_V - (t.instant_ohm + charging_ohm) * bank_A;
  const R beyond_V = pace < system.finer_count ? bus_V - start_V : zero;
  const R seen_V = bus_V + beyond_V;
  bank::watch<R>(
      system.guard, s.guard,
      {seen_V, fullest_V + beyond_V, t.ocv_V, s.bank.charge, available, t.usable_floor, bank_A, p.step_s});
  // The step in which a temperature is crossed is the one to be taken again, not the one after it.
  bank::feel<R>(system.guard, s.guard, p, s.bank);
  report.over_current = s.guard.over_current;
  report.unwoken = sources ? s.guard.dark * L::select(bank_A < zero, zero, one) : zero;
  if (!steady) report.unwoken = report.unwoken * s.generator;
  report.generator_on = s.generator;
  for (std::size_t kind = 0; kind < kSourceKinds; ++kind) {
    if (!bus.has(kind)) continue;
    const R full_A = full_output<R>(bus, kind, bus_V).current_A;
    const R highest_V = max_of<R>(bus_V, seen_V);
    auto held = full || (bus.set_V[kind] - highest_V) * R(1.0 / system.chargers[kind].lead_ohm) < full_A;
    if (kind == kGenerator) held = held && s.generator > R(0.5);
    supply::next_stage<R>(system.chargers[kind].stages, s.stages[kind], held, seen_V, bank_A, p.step_s);
  }
  const auto tripped = report.inverter_V + beyond_V < R(system.inverter_cut_off_V) && bus.inverter_W > zero;
  s.inverter_off = bank::detail::latch<R>(s.inverter_off, tripped, seen_V > R(system.inverter_restart_V));
  s.bus_V = bus_V;
  return report;
}

}  // namespace voltwright::season
