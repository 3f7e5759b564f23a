#pragma once
// Energy per mass and per volume: what a chemistry has reached, bare and finished.
#include <optional>
#include <string>

#include "engine/claims/subject.h"

namespace voltwright::claims {

/// What is known of the densities that a chemistry has reached by a year.
struct Reached {
  std::optional<double> least_cell;  // of its bare cells, lowest dated figure
  std::optional<double> most_cell;   // of its best bare cells
  std::optional<double> most_finished;
  std::string cell_source;
  std::string finished_source;
  bool cell_assumed = false;  // the highest figure is an assumption
  bool finished_assumed = false;

  /// Beyond this a bare cell, or a finished battery, is more than was ever seen: rounding is allowed for, and
  /// more where the highest figure is only an assumption.
  double cell_limit() const;
  double finished_limit() const;
};

/// Highest figures up to the year of the sheet, of whichever of its chemistries reached most. Dated facts are
/// years apart, so the next one after the sheet still counts: progress in between is not taken away. Without
/// a year everything counts. Finished batteries include those that others stated.
Reached reached(const Subject& subject, bool per_mass);

/// True if a claimed density of a finished battery is a figure of its cells: well above what its own figures
/// give (`quotient`), within the range of bare cells, and above any finished battery.
bool reads_like_cell(const Subject& subject, double claimed, std::optional<double> quotient, bool per_mass);

}  // namespace voltwright::claims
