#pragma once
// The banks that a plan may choose from.
#include <span>
#include <string>
#include <vector>

#include "engine/advise/plan.h"
#include "engine/bank/assembly.h"
#include "engine/cell/tables.h"

namespace voltwright::advise {

struct Candidate {
  const bank::Battery* battery = nullptr;
  const cell::Chemistry* chemistry = nullptr;
  bank::Layout layout;
  bank::BankFigures figures;
  bool fitted_now = false;

  /// "lfp-12v-100ah:1s2p": battery id, series and parallel counts.
  std::string id() const;
  /// "2 × LFP 12.8 V 100 Ah".
  std::string name() const;
  int count() const { return layout.in_series * layout.in_parallel; }
};

/// All banks of the plan's system voltage that its candidate rule allows, smallest energy first within a
/// battery.
std::vector<Candidate> candidates_of(const Plan& plan, std::span<const cell::Chemistry> chemistries,
                                     std::span<const bank::Battery> batteries);

/// The bank fitted now, or a bank named by the user.
Candidate named_candidate(const NamedBank& named, std::span<const cell::Chemistry> chemistries,
                          std::span<const bank::Battery> batteries);

}  // namespace voltwright::advise
