#include "engine/bank/group.h"

#include <algorithm>
#include <limits>

namespace voltwright::bank {

namespace {

constexpr double kNever_s = std::numeric_limits<double>::infinity();

/// The batteries at the start of a step and what they may do in it.
struct Stage {
  std::vector<Terminal<double>> terminals;
  std::vector<Permission<double>> permissions;
  std::vector<Branch> branches;
  bool discharge_allowed = true;  // by batteries without electronics, which only the loads' cut-off protects
  bool charge_allowed = true;
};

Branch branch_of(const Terminal<double>& t) { return {t.source_V, t.discharge_ohm, t.charge_ohm}; }

/// Asks every protection; the latches move with the temperature.
Stage prepare(Group& group) {
  Stage stage;
  for (GroupBattery& b : group.batteries) {
    stage.terminals.push_back(terminal<double>(b.parameters, b.state));
    const auto permission = permit<double>(b.guard, b.latches, b.state.temperature_C);
    Branch branch = branch_of(stage.terminals.back());
    const bool may_discharge = permission.discharge_allowed;
    const bool may_charge = permission.charge_limit_A > 0.0;
    if (b.electronic) {
      if (!may_discharge || b.over_current) branch.discharge_ohm = Branch::kBlocked;
      if (!may_charge || b.over_current) branch.charge_ohm = Branch::kBlocked;
    } else {
      stage.discharge_allowed = stage.discharge_allowed && may_discharge;
      stage.charge_allowed = stage.charge_allowed && may_charge;
    }
    stage.permissions.push_back(permission);
    stage.branches.push_back(branch);
  }
  return stage;
}

bool allowed(const Stage& stage, double total_A) {
  return total_A > 0.0 ? stage.discharge_allowed : total_A < 0.0 ? stage.charge_allowed : true;
}

/// Currents for the total, or between the batteries alone if the total is not allowed or cannot be carried.
Flow flow_if_allowed(const Stage& stage, const Wiring& wiring, double total_A) {
  Flow result = flow(stage.branches, wiring, allowed(stage, total_A) ? total_A : 0.0);
  if (allowed(stage, total_A) && result.carried) return result;
  result = flow(stage.branches, wiring, 0.0);
  result.carried = false;
  return result;
}

double pole_V(const Terminal<double>& t, double current_A) {
  return t.source_V - (current_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * current_A;
}

/// An overload: how soon it opens the battery and how far it is above the limit.
struct Overload {
  double opens_in_s = kNever_s;
  double over = 0.0;
  TripReason reason = TripReason::kPeakCurrent;
};

Overload overload_of(const GroupBattery& b, const Permission<double>& permission, double current_A) {
  const double left_s = std::max(b.peak_s - b.above_s, 0.0);
  if (!b.electronic || b.over_current) return {};
  if (current_A > b.peak_A) return {0.0, current_A / b.peak_A, TripReason::kPeakCurrent};
  if (current_A > b.continuous_A) return {left_s, current_A / b.continuous_A, TripReason::kLongCurrent};
  if (permission.charge_limit_A > 0.0 && -current_A > permission.charge_limit_A) {
    return {left_s, -current_A / permission.charge_limit_A, TripReason::kChargeCurrent};
  }
  return {};
}

Trip trip_of(const Group& group, const Stage& stage, std::size_t k, TripReason reason, double current_A,
             double time_s) {
  Trip trip;
  trip.battery = k;
  trip.time_s = time_s;
  trip.reason = reason;
  trip.opened = group.batteries[k].electronic;
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

/// Opens batteries by over-current, one after the other in time, until the rest carry the total to the end of
/// the step.
Flow settle_currents(Group& group, Stage& stage, double total_A, std::vector<Trip>& trips) {
  double moment_s = 0.0;
  for (;;) {
    Flow now = flow_if_allowed(stage, group.wiring, total_A);
    fill(trips, now);
    std::vector<Overload> overloads;
    std::size_t first = 0;
    for (std::size_t k = 0; k < group.batteries.size(); ++k) {
      overloads.push_back(overload_of(group.batteries[k], stage.permissions[k], now.current_A[k]));
      const Overload& best = overloads[first];
      const Overload& here = overloads[k];
      if (here.opens_in_s < best.opens_in_s ||
          (here.opens_in_s == best.opens_in_s && here.over > best.over)) {
        first = k;
      }
    }
    const bool opens = moment_s + overloads[first].opens_in_s < group.step_s;
    const double passing_s = opens ? overloads[first].opens_in_s : group.step_s - moment_s;
    for (std::size_t k = 0; k < group.batteries.size(); ++k) {
      GroupBattery& b = group.batteries[k];
      b.above_s = overloads[k].opens_in_s < kNever_s ? b.above_s + passing_s : 0.0;
    }
    if (!opens) return now;
    moment_s += passing_s;
    trips.push_back(
        trip_of(group, stage, first, overloads[first].reason, now.current_A[first], group.time_s + moment_s));
    group.batteries[first].over_current = true;
    stage.branches[first].discharge_ohm = Branch::kBlocked;
    stage.branches[first].charge_ohm = Branch::kBlocked;
  }
}

bool set_now(double before, double after) { return before < 0.5 && after > 0.5; }

std::vector<TripReason> by_temperature(const GuardState<double>& before, const GuardState<double>& after) {
  std::vector<TripReason> reasons;
  if (set_now(before.charge_cold, after.charge_cold)) reasons.push_back(TripReason::kChargeCold);
  if (set_now(before.charge_hot, after.charge_hot)) reasons.push_back(TripReason::kChargeHot);
  if (set_now(before.discharge_cold, after.discharge_cold)) reasons.push_back(TripReason::kDischargeCold);
  if (set_now(before.discharge_hot, after.discharge_hot)) reasons.push_back(TripReason::kDischargeHot);
  return reasons;
}

/// Looks at voltage and level after the step; trips made here lack `then_A`.
void watch_all(Group& group, const Stage& stage, const GroupReport& report, std::vector<Trip>& trips) {
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    GroupBattery& b = group.batteries[k];
    const GuardState<double> before = b.latches;
    const double available = b.state.charge - (1.0 - b.parameters.tank_share) * b.state.imbalance;
    watch<double>(b.guard, b.latches, report.battery_V[k], b.state.charge, available,
                  stage.terminals[k].usable_floor, report.current_A[k]);
    const auto add = [&](TripReason reason) {
      trips.push_back(trip_of(group, stage, k, reason, report.current_A[k], group.time_s));
    };
    if (set_now(before.over_voltage, b.latches.over_voltage)) add(TripReason::kOverVoltage);
    if (set_now(before.empty, b.latches.empty)) {
      add(report.battery_V[k] < b.guard.under_voltage_V ? TripReason::kUnderVoltage : TripReason::kEmpty);
    }
  }
}

bool within_limits(const Group& group, const Stage& stage, double total_A) {
  const Flow now = flow_if_allowed(stage, group.wiring, total_A);
  if (!now.carried) return false;
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    if (now.current_A[k] > group.batteries[k].continuous_A) return false;
    if (-now.current_A[k] > stage.permissions[k].charge_limit_A) return false;
  }
  return true;
}

/// Largest total in one direction within every limit, by halving.
double largest_total_A(const Group& group, const Stage& stage, double direction) {
  double low = 0.0;
  double high = 0.0;
  for (std::size_t k = 0; k < group.batteries.size(); ++k) {
    high += direction > 0.0 ? group.batteries[k].continuous_A : stage.permissions[k].charge_limit_A;
  }
  if (within_limits(group, stage, direction * high)) return high;
  constexpr int kHalvings = 60;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (within_limits(group, stage, direction * middle) ? low : high) = middle;
  }
  return low;
}

Branch full_branch(const Parameters<double>& parameters, double temperature_C) {
  State<double> full;
  full.temperature_C = temperature_C;
  const auto t = terminal<double>(parameters, full);
  return {t.instant_V, t.instant_ohm, t.instant_ohm};
}

}  // namespace

std::vector<Branch> branches_of(const Group& group) {
  Group copy = group;
  return prepare(copy).branches;
}

GroupTerminal terminal(const Group& group, double reference_A) {
  Group copy = group;
  const Stage stage = prepare(copy);
  GroupTerminal result = group_terminal(stage.branches, group.wiring, reference_A);
  if (!stage.discharge_allowed) result.discharge_ohm = Branch::kBlocked;
  if (!stage.charge_allowed) result.charge_ohm = Branch::kBlocked;
  return result;
}

GroupLimits limits_of(const Group& group) {
  Group copy = group;
  const Stage stage = prepare(copy);
  return {largest_total_A(group, stage, 1.0), largest_total_A(group, stage, -1.0)};
}

std::vector<double> joining_A(const Group& group) {
  std::vector<Branch> branches;
  for (const GroupBattery& b : group.batteries) {
    const auto t = terminal<double>(b.parameters, b.state);
    branches.push_back({t.instant_V, t.instant_ohm, t.instant_ohm + t.charge_extra_ohm});
  }
  return flow(branches, group.wiring, 0.0).current_A;
}

GroupReport step(Group& group, double total_A, double surroundings_C) {
  std::vector<GuardState<double>> before;
  for (const GroupBattery& b : group.batteries) before.push_back(b.latches);
  Stage stage = prepare(group);
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
    fill(late, flow_if_allowed(prepare(next), group.wiring, total_A));
    report.trips.insert(report.trips.end(), late.begin(), late.end());
  }
  if (!group.first_trip && !report.trips.empty()) group.first_trip = report.trips.front();
  return report;
}

void reset_over_current(Group& group) {
  for (GroupBattery& b : group.batteries) {
    b.over_current = false;
    b.above_s = 0.0;
  }
}

double prospective_short_circuit_A(const Group& group, double temperature_C, double path_ohm) {
  std::vector<Branch> branches;
  for (const GroupBattery& b : group.batteries) branches.push_back(full_branch(b.parameters, temperature_C));
  const Sharing sharing = share_out(branches, group.wiring);
  return short_circuit_A(sharing.source_V, sharing.ohm, path_ohm);
}

double prospective_short_circuit_A(const Parameters<double>& bank, double temperature_C, double path_ohm) {
  const Branch branch = full_branch(bank, temperature_C);
  return short_circuit_A(branch.source_V, branch.discharge_ohm, path_ohm);
}

}  // namespace voltwright::bank
