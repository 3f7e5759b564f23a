#include "engine/bank/group_stage.h"

namespace voltwright::bank::detail {

namespace {

Branch branch_of(const Terminal<double>& t) { return {t.source_V, t.discharge_ohm, t.charge_ohm}; }

bool allowed(const Stage& stage, double total_A) {
  return total_A > 0.0 ? stage.discharge_allowed : total_A < 0.0 ? stage.charge_allowed : true;
}

}  // namespace

Stage prepare(Group& group) {
  Stage stage;
  for (GroupBattery& b : group.batteries) {
    stage.terminals.push_back(terminal<double>(b.parameters, b.state));
    const auto permission = permit<double>(b.guard, b.latches, b.parameters, b.state);
    Branch branch = branch_of(stage.terminals.back());
    const bool may_discharge = permission.discharge_allowed;
    const bool may_charge = permission.charge_limit_A > 0.0;
    if (electronic(b) || b.latches.frozen > 0.5) {
      if (!may_discharge) branch.discharge_ohm = Branch::kBlocked;
      if (!may_charge || b.charge_retry_s > 0.0) branch.charge_ohm = Branch::kBlocked;
    } else {
      stage.discharge_allowed = stage.discharge_allowed && may_discharge;
      stage.charge_allowed = stage.charge_allowed && may_charge;
    }
    stage.permissions.push_back(permission);
    stage.branches.push_back(branch);
  }
  return stage;
}

Flow flow_if_allowed(const Stage& stage, const Wiring& wiring, double total_A) {
  Flow result = flow(stage.branches, wiring, allowed(stage, total_A) ? total_A : 0.0);
  if (allowed(stage, total_A) && result.carried) return result;
  result = flow(stage.branches, wiring, 0.0);
  result.carried = false;
  return result;
}

}  // namespace voltwright::bank::detail
