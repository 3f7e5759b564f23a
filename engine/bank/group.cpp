// One step of parallel batteries that differ: who opens, what the rest carry, how each goes on.
#include "engine/bank/group.h"

#include <algorithm>
#include <limits>

#include "engine/bank/balancing.h"
#include "engine/bank/group_stage.h"

namespace voltwright::bank {

namespace {

using detail::electronic;
using detail::flow_if_allowed;
using detail::Stage;

constexpr double kNever_s = std::numeric_limits<double>::infinity();

double pole_V(const Terminal<double>& t, double current_A) {
  return t.source_V - (current_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * current_A;
}

/// Growth of the guard's overload per second at a current, see `watch`.
double overload_per_s(const Guard<double>& g, double current_A) {
  if (current_A <= 0.0) return -1.0 / g.peak_s;
  const double allowed = g.continuous_A * g.continuous_A;
  return (current_A * current_A - allowed) / (g.peak_A * g.peak_A - allowed) / g.peak_s;
}

/// How far each battery is on the way to opening by current, followed through the step.
struct Memory {
  std::vector<double> overload;
  std::vector<double> charge_above_s;
};

/// How soon a current opens a battery, and how far it is above the limit.
struct Overload {
  double in_s = kNever_s;
  double over = 0.0;
  TripReason reason = TripReason::kPeakCurrent;
};

Overload overload_of(const GroupBattery& b, const Permission<double>& permission, const Memory& memory,
                     std::size_t k, double current_A) {
  const Guard<double>& g = b.guard;
  if (!electronic(b)) return {};
  if (current_A > g.peak_A) return {0.0, current_A / g.peak_A, TripReason::kPeakCurrent};
  if (current_A > g.continuous_A) {
    const double in_s = std::max(1.0 - memory.overload[k], 0.0) / overload_per_s(g, current_A);
    return {in_s, current_A / g.continuous_A, TripReason::kLongCurrent};
  }
  if (permission.charge_limit_A > 0.0 && -current_A > permission.charge_limit_A) {
    const double in_s = std::max(g.peak_s - memory.charge_above_s[k], 0.0);
    return {in_s, -current_A / permission.charge_limit_A, TripReason::kChargeCurrent};
  }
  return {};
}

void pass(const Group& group, const Stage& stage, const Flow& now, double passing_s, Memory& memory) {
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    const double current_A = now.current_A[k];
    const double grown = overload_per_s(group.batteries[k].guard, current_A) * passing_s;
    memory.overload[k] = std::max(memory.overload[k] + grown, 0.0);
    const bool above = -current_A > stage.permissions[k].charge_limit_A;
    memory.charge_above_s[k] = above ? memory.charge_above_s[k] + passing_s : 0.0;
  }
}

Trip trip_of(const Group& group, const Stage& stage, std::size_t k, TripReason reason, double current_A,
             double time_s) {
  Trip trip;
  trip.battery = k;
  trip.time_s = time_s;
  trip.reason = reason;
  trip.opened = electronic(group.batteries[k]) || reason == TripReason::kFrozen;
  trip.current_A = current_A;
  trip.voltage_V = pole_V(stage.terminals[k], current_A);
  trip.temperature_C = group.batteries[k].state.temperature_C;
  return trip;
}

/// Writes what the others carry into the trips that wait for it.
void fill(std::vector<Trip>& trips, const Flow& after) {
  for (Trip& trip : trips) {
    if (!trip.then_A.empty()) continue;
    trip.then_A = after.current_A;
    trip.carried = after.carried;
  }
}

/// Shuts the direction in which a current opened battery k, `moment_s` into the step. The guard takes the
/// whole step off the time to the next try.
void open(Group& group, Stage& stage, std::size_t k, TripReason reason, double moment_s) {
  GroupBattery& b = group.batteries[k];
  if (reason == TripReason::kChargeCurrent) {
    stage.branches[k].charge_ohm = Branch::kBlocked;
    b.charge_retry_s = kRetry_s + moment_s;
    return;
  }
  stage.branches[k].discharge_ohm = Branch::kBlocked;
  b.latches.over_current = 1.0;
  b.latches.retry_s = kRetry_s + moment_s;
}

/// Writes the memory back so that the guard, which adds the step at its last current, ends at the same.
void remember(Group& group, const Flow& now, const Memory& memory) {
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    GroupBattery& b = group.batteries[k];
    b.latches.overload = memory.overload[k] - overload_per_s(b.guard, now.current_A[k]) * group.step_s;
    b.charge_above_s = memory.charge_above_s[k];
    b.charge_retry_s = std::max(b.charge_retry_s - group.step_s, 0.0);
  }
}

/// Opens batteries by over-current, one after the other in time, until the rest carry the total to the end of
/// the step.
Flow settle_currents(Group& group, Stage& stage, double total_A, std::vector<Trip>& trips) {
  Memory memory;
  for (const GroupBattery& b : group.batteries) {
    memory.overload.push_back(b.latches.overload);
    memory.charge_above_s.push_back(b.charge_above_s);
  }
  double moment_s = 0.0;
  for (;;) {
    Flow now = flow_if_allowed(stage, group.wiring, total_A);
    fill(trips, now);
    Overload first;
    std::size_t which = 0;
    for (std::size_t k = 0; k < group.batteries.size(); ++k) {
      const Overload here =
          overload_of(group.batteries[k], stage.permissions[k], memory, k, now.current_A[k]);
      if (here.in_s < first.in_s || (here.in_s == first.in_s && here.over > first.over)) {
        first = here;
        which = k;
      }
    }
    if (moment_s + first.in_s >= group.step_s) {
      pass(group, stage, now, group.step_s - moment_s, memory);
      remember(group, now, memory);
      return now;
    }
    pass(group, stage, now, first.in_s, memory);
    moment_s += first.in_s;
    trips.push_back(
        trip_of(group, stage, which, first.reason, now.current_A[which], group.time_s + moment_s));
    open(group, stage, which, first.reason, moment_s);
    memory.overload[which] = 0.0;
    memory.charge_above_s[which] = 0.0;
  }
}

bool set_now(double before, double after) { return before < 0.5 && after > 0.5; }

std::vector<TripReason> by_temperature(const GuardState<double>& before, const GuardState<double>& after) {
  std::vector<TripReason> reasons;
  if (set_now(before.charge_cold, after.charge_cold)) reasons.push_back(TripReason::kChargeCold);
  if (set_now(before.charge_hot, after.charge_hot)) reasons.push_back(TripReason::kChargeHot);
  if (set_now(before.discharge_cold, after.discharge_cold)) reasons.push_back(TripReason::kDischargeCold);
  if (set_now(before.discharge_hot, after.discharge_hot)) reasons.push_back(TripReason::kDischargeHot);
  if (set_now(before.frozen, after.frozen)) reasons.push_back(TripReason::kFrozen);
  return reasons;
}

/// Looks at voltage and level after the step; trips made here lack `then_A`.
void watch_all(Group& group, const Stage& stage, const GroupReport& report, std::vector<Trip>& trips) {
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    GroupBattery& b = group.batteries[k];
    const GuardState<double> before = b.latches;
    const double available = b.state.charge - (1.0 - b.parameters.tank_share) * b.state.imbalance;
    const double fullest_V = fullest_cell_V<double>(b.parameters, b.state, report.battery_V[k]);
    bleed<double>(b.parameters, b.state, fullest_V);
    const Terminal<double>& t = stage.terminals[k];
    watch<double>(b.guard, b.latches,
                  {report.battery_V[k], fullest_V, t.ocv_V, b.state.charge, available, t.usable_floor,
                   report.current_A[k], group.step_s});
    const auto add = [&](TripReason reason) {
      trips.push_back(trip_of(group, stage, k, reason, report.current_A[k], group.time_s));
    };
    if (set_now(before.over_voltage, b.latches.over_voltage)) add(TripReason::kOverVoltage);
    if (set_now(before.over_current, b.latches.over_current)) add(TripReason::kLongCurrent);
    if (set_now(before.empty, b.latches.empty)) {
      add(report.battery_V[k] < b.guard.under_voltage_V ? TripReason::kUnderVoltage : TripReason::kEmpty);
    }
  }
}

}  // namespace

GroupReport step(Group& group, double total_A, double surroundings_C) {
  std::vector<GuardState<double>> before;
  for (const GroupBattery& b : group.batteries) before.push_back(b.latches);
  Stage stage = detail::prepare(group);
  GroupReport report;
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    for (const TripReason reason : by_temperature(before[k], group.batteries[k].latches)) {
      report.trips.push_back(trip_of(group, stage, k, reason, 0.0, group.time_s));
    }
  }
  const Flow flowing = settle_currents(group, stage, total_A, report.trips);
  report.carried = flowing.carried;
  report.total_A = flowing.carried ? total_A : 0.0;
  report.bus_V = flowing.voltage_V;
  report.link_loss_W = flowing.link_loss_W;
  report.current_A = flowing.current_A;
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    GroupBattery& b = group.batteries[k];
    report.battery_V.push_back(pole_V(stage.terminals[k], report.current_A[k]));
    report.losses.push_back(
        advance<double>(b.parameters, stage.terminals[k], b.state, report.current_A[k], surroundings_C, 0.0));
  }
  group.time_s += group.step_s;
  std::vector<Trip> late;
  watch_all(group, stage, report, late);
  if (!late.empty()) {
    Group next = group;
    fill(late, flow_if_allowed(detail::prepare(next), group.wiring, total_A));
    report.trips.insert(report.trips.end(), late.begin(), late.end());
  }
  if (!group.first_trip && !report.trips.empty()) group.first_trip = report.trips.front();
  return report;
}

void reset_over_current(Group& group) {
  for (GroupBattery& b : group.batteries) {
    b.latches.over_current = b.latches.overload = b.latches.retry_s = 0.0;
    b.charge_above_s = b.charge_retry_s = 0.0;
  }
}

}  // namespace voltwright::bank
