#pragma once
// When a bank is worn out: a limit crossed for good, not in one bad reading.
#include <optional>
#include <span>

namespace voltwright::ageing {

/// One moment of a bank's life.
struct LifeMoment {
  double years = 0.0;     // rising from point to point
  double capacity = 1.0;  // share of new
  bool carried = true;    // the plan, within its accepted chance of shortfall
};

/// When the capacity falls below `limit` and never comes back, between the last point at or above it and the
/// next along the straight line. A dip that recovers does not count. None if the last point is at or above
/// the limit, or if it has been below for less than `sustain_years` >= 0: one more reading may still come
/// back. Already below at the first point: its time.
std::optional<double> crossed_for_good(std::span<const LifeMoment> life, double limit, double sustain_years);

/// Time of the first point from which on the plan is never carried again; none as above.
std::optional<double> not_carried_from(std::span<const LifeMoment> life, double sustain_years);

/// The three ends of a life [years].
struct LifeEnds {
  std::optional<double> at_80, at_70, plan;
};

LifeEnds life_ends(std::span<const LifeMoment> life, double sustain_years = 0.0);

}  // namespace voltwright::ageing
