#pragma once
// One step of the whole system. The same function serves a single bank (double) and many side by side
// (lanes).
#include <algorithm>

#include "engine/season/bus.h"

namespace voltwright::season {

namespace detail {

/// Heater power wanted to bring the bank to its switch-on temperature by the end of the step [W].
template <class R>
R heater_demand(const System<R>& system, const SystemState<R>& s, double surroundings_C) {
  if (system.heater_W <= 0.0) return R(0.0);
  const auto& p = system.bank;
  // Solve T_end = target for the exact exponential of the heat node.
  const R target = R(system.heater_below_C);
  const R settled = (target - s.bank.temperature_C * p.heat_keep) / (R(1.0) - p.heat_keep);
  return base::clamp_of<R>((settled - R(surroundings_C)) * p.heat_loss_W_K, R(0.0), R(system.heater_W));
}

/// The largest start in this minute: what it draws from the bank and how low it pulls the voltage.
template <class R>
void check_start(const System<R>& system, const Minute& minute, const bank::Terminal<R>& t,
                 const R& running_W, const R& inverter_W, const R& loads_on, StepReport<R>& report) {
  using base::max_of;
  using L = base::Lanes<R>;
  using std::sqrt;
  report.surge_A = R(0.0);
  report.surge_V = R(0.0);
  report.failed_start = R(0.0);
  const double surge_W = std::max(minute.surge_direct_W, minute.surge_inverter_W);
  if (surge_W <= 0.0) return;
  const R power_W = running_W + R(surge_W);
  const R under_root = t.instant_V * t.instant_V - R(4.0) * t.instant_ohm * power_W;
  const auto none = under_root < R(0.0);
  const R root = sqrt(max_of<R>(under_root, R(0.0)));
  const R current_A = R(2.0) * power_W / (t.instant_V + root);
  R voltage_V = t.instant_V - t.instant_ohm * current_A;
  if (minute.surge_inverter_W > 0.0) {
    const R input_W = inverter_W + R(minute.surge_inverter_W);
    voltage_V = voltage_V - R(system.inverter_cable_ohm) *
                                inverter_draw<R>(voltage_V, input_W, system.inverter_cable_ohm).current_A;
  }
  const auto too_low = minute.surge_inverter_W > 0.0 ? voltage_V < R(system.inverter_cut_off_V)
                                                     : voltage_V < t.instant_V * R(0.6);
  report.surge_A = current_A * loads_on;
  report.surge_V = L::select(loads_on > R(0.5), voltage_V, R(0.0));
  report.failed_start = L::select(none || too_low || current_A > system.peak_A, loads_on, R(0.0));
}

}  // namespace detail

/// Advances the system by one step.
template <class R>
StepReport<R> step(const System<R>& system, const Minute& minute, SystemState<R>& s) {
  using base::max_of;
  using base::min_of;
  using L = base::Lanes<R>;
  const R zero(0.0);
  const R one(1.0);
  const bank::Permission<R> permission = bank::permit<R>(system.guard, s.guard, s.bank.temperature_C);
  const bank::Terminal<R> t = bank::terminal<R>(system.bank, s.bank);
  const bool sources = minute.has_source();
  const double mains_A = minute.mains ? system.mains_limit_A : 0.0;

  // Loads run if the bank may discharge or the sources alone carry them with a tenth to spare.
  const R heater_W = detail::heater_demand<R>(system, s, minute.surroundings_C);
  const R wanted_W = R(minute.direct_W + minute.inverter_W) + heater_W;
  R loads_on = L::select(permission.discharge_allowed, one, zero);
  if (sources) {
    const R source_W = R(minute.solar_W) +
                       (R(minute.solar_A + mains_A) + engine_current<R>(system, minute, s.bus_V)) * s.bus_V;
    loads_on = L::select(source_W > wanted_W * R(1.1), one, loads_on);
  }
  R direct_W = (R(minute.direct_W) + heater_W) * loads_on;
  R inverter_W = R(minute.inverter_W) * loads_on * (one - s.inverter_off);

  BusSolution<R> bus = solve_bus<R>(system, minute, t, direct_W, inverter_W, s.bus_V, one);
  R collapsed = L::select(bus.collapsed, one, zero);
  if (L::any(bus.collapsed)) {
    loads_on = loads_on * (one - collapsed);
    direct_W = direct_W * (one - collapsed);
    inverter_W = inverter_W * (one - collapsed);
    bus = solve_bus<R>(system, minute, t, direct_W, inverter_W, t.source_V, one);
  }

  R bank_A = bus.bank_A;
  auto held = one < zero;  // false in every lane
  supply::notice_source<R>(s.stages, sources, base::Lanes<R>::lane_value(system.bank.step_s, 0));
  const R set_V = supply::set_point<R>(system.stages, s.stages, s.bank.temperature_C);
  if (sources) {
    // Chargers give less than they could where the set-point or the bank's charge limit asks for it.
    const R at_set_A = (t.source_V - set_V) / L::select(t.source_V < set_V, t.charge_ohm, t.discharge_ohm);
    // No more charge than brings the open-circuit voltage to the absorption voltage by the end of the step:
    // where the curve turns up at full, the slope at the start of the step would let it overshoot.
    const R room_Ah = max_of<R>(system.stages.full_charge - s.bank.charge, zero) * system.bank.capacity_Ah;
    const R to_full_A = zero - room_Ah * R(3600.0) / system.bank.step_s;
    const R ceiling_A = max_of<R>(at_set_A, to_full_A);
    const R limited_A = max_of<R>(max_of<R>(bank_A, ceiling_A), zero - permission.charge_limit_A);
    held = ceiling_A > bank_A && ceiling_A > zero - permission.charge_limit_A;
    bank_A = limited_A;
    if (L::any(limited_A > bus.bank_A)) {
      const R v = t.source_V - L::select(bank_A < zero, t.charge_ohm, t.discharge_ohm) * bank_A;
      const R load_A = direct_W / v + inverter_draw<R>(v, inverter_W, system.inverter_cable_ohm).current_A;
      const auto needless = load_A < bank_A;
      if (L::any(needless)) {
        const R sources_on = L::select(needless, zero, one);
        const BusSolution<R> alone = solve_bus<R>(system, minute, t, direct_W, inverter_W, v, sources_on);
        bank_A = L::select(needless, alone.bank_A, bank_A);
      }
    }
  }

  StepReport<R> report;
  const R bus_V = t.source_V - L::select(bank_A < zero, t.charge_ohm, t.discharge_ohm) * bank_A;
  const R inverter_A = inverter_draw<R>(bus_V, inverter_W, system.inverter_cable_ohm).current_A;
  R need_A = direct_W / bus_V + inverter_A - bank_A;
  const R solar_available_A = R(minute.solar_W) / bus_V + R(minute.solar_A);
  const R solar_A = base::clamp_of<R>(need_A, zero, solar_available_A);
  need_A = need_A - solar_A;
  const R engine_A = base::clamp_of<R>(need_A, zero, engine_current<R>(system, minute, bus_V));
  need_A = need_A - engine_A;
  const R charger_A = base::clamp_of<R>(need_A, zero, R(mains_A));
  need_A = need_A - charger_A;

  report.bus_V = bus_V;
  report.bank_A = bank_A;
  report.inverter_V = bus_V - R(system.inverter_cable_ohm) * inverter_A;
  report.solar_W = solar_A * bus_V;
  report.solar_left_W = (solar_available_A - solar_A) * bus_V;
  report.engine_W = engine_A * bus_V;
  report.mains_W = charger_A * bus_V;
  report.residual_W = need_A * bus_V;
  report.heater_W = heater_W * loads_on;
  report.direct_W = direct_W - report.heater_W;
  report.inverter_W = inverter_A * report.inverter_V;
  report.inverter_cable_W = R(system.inverter_cable_ohm) * inverter_A * inverter_A;
  const R inverter_on = loads_on * (one - s.inverter_off);
  report.unmet_W = R(minute.direct_W) * (one - loads_on) + R(minute.inverter_W) * (one - inverter_on);
  report.unmet_essential_W =
      R(minute.essential_direct_W) * (one - loads_on) + R(minute.essential_inverter_W) * (one - inverter_on);
  report.collapsed = collapsed;
  report.loads_off = one - loads_on;
  report.charge_limit_A = permission.charge_limit_A;
  detail::check_start<R>(system, minute, t, bus_V * bank_A, inverter_W, inverter_on, report);

  report.bank = bank::advance<R>(system.bank, t, s.bank, bank_A, R(minute.surroundings_C), report.heater_W);
  const R available = s.bank.charge - (one - system.bank.tank_share) * s.bank.imbalance;
  bank::watch<R>(system.guard, s.guard, bus_V, s.bank.charge, available, t.usable_floor, bank_A);
  supply::next_stage<R>(system.stages, s.stages, held, bus_V, bank_A, system.bank.step_s);
  const auto tripped = report.inverter_V < R(system.inverter_cut_off_V) && inverter_W > zero;
  const auto back = bus_V > R(system.inverter_restart_V);
  s.inverter_off = L::select(tripped, one, L::select(back, zero, s.inverter_off));
  s.bus_V = bus_V;
  return report;
}

}  // namespace voltwright::season
