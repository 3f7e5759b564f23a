#pragma once
// One new battery of a chemistry in the laboratory of the bank model, at 25 degC in still air.
#include "engine/bank/assembly.h"
#include "engine/bank/laboratory.h"
#include "engine/cell/chemistry.h"
#include "engine/cell/tables.h"

namespace voltwright::claims {

/// The model keeps look-up tables inside, so it stays where it was made.
class ClaimLab {
 public:
  /// @param cells        in series, >= 1
  /// @param capacity_Ah  at the chemistry's rated time, > 0
  /// @param Wh_per_kg    for its mass and with it its warming, > 0
  ClaimLab(const cell::Chemistry& chemistry, int cells, double capacity_Ah, double Wh_per_kg);
  ClaimLab(const ClaimLab&) = delete;
  ClaimLab& operator=(const ClaimLab&) = delete;

  /// From full at a constant current [A, > 0] down to the lower limit of its cells.
  bank::LabRun discharge(double current_A) const;

  /// Hours from empty (after a discharge in the rated time) to the tail current at the absorption voltage,
  /// with at most `current_A` (> 0). At most 1000 h.
  double charge_h(double current_A) const;

 private:
  cell::Chemistry chemistry_;
  cell::Tables tables_;
  bank::Parameters<double> parameters_;
  double cells_;
  double capacity_Ah_;
};

}  // namespace voltwright::claims
