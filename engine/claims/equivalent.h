#pragma once
// How much lead-acid a battery stands in for, by the energy that can be used at the same current.
#include "engine/cell/chemistry.h"

namespace voltwright::claims {

struct Compared {
  double current_A = 0.0;
  double lead_usable_Wh = 0.0;  // of the lead-acid battery, drawn to its usual depth
  double own_usable_Wh = 0.0;   // of this one, to the depth that is usual
  double own_all_Wh = 0.0;      // to its empty end
  double lead_Ah = 0.0;         // lead-acid of this rating would give as much as own_usable_Wh

  double share() const { return own_usable_Wh / lead_usable_Wh; }
  double share_of_all() const { return own_all_Wh / lead_usable_Wh; }
};

/// One side of the comparison.
struct Side {
  const cell::Chemistry& chemistry;
  int cells = 1;
  double capacity_Ah = 0.0;
  double depth = 0.5;      // share of what it gives that is used
  double Wh_per_kg = 0.0;  // for the warming of the model
};

/// Both discharged from full at one current [A, > 0] at 25 degC by the bank model, each to its lower limit;
/// of what they give each is used to its depth.
Compared compare_with_lead(const Side& own, const Side& lead, double current_A);

}  // namespace voltwright::claims
