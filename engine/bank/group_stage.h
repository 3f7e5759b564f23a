#pragma once
// A group at the start of a step, shared by the step and by what is asked of a group before it.
#include "engine/bank/group.h"

namespace voltwright::bank::detail {

/// True if the battery's own protection can open it.
inline bool electronic(const GroupBattery& b) { return b.guard.electronic > 0.5; }

/// The batteries at the start of a step and what they may do in it.
struct Stage {
  std::vector<Terminal<double>> terminals;
  std::vector<Permission<double>> permissions;
  std::vector<Branch> branches;
  bool discharge_allowed = true;  // by batteries without electronics, which only the loads' cut-off protects
  bool charge_allowed = true;
};

/// Asks every protection; the latches move with the temperature.
Stage prepare(Group& group);

/// Currents for the total, or between the batteries alone if the total is not allowed or cannot be carried.
Flow flow_if_allowed(const Stage& stage, const Wiring& wiring, double total_A);

}  // namespace voltwright::bank::detail
