// What is asked of a group before it is stepped: its terminal behaviour, limits, currents on joining and in a
// short circuit.
#include "engine/bank/group_stage.h"

namespace voltwright::bank {

namespace {

using detail::flow_if_allowed;
using detail::prepare;
using detail::Stage;

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
  full.side = -1.0;  // as a charger leaves it
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
