#pragma once
// The conditions that a law was measured at, and whether an exposure lies within them.
#include <limits>

#include "engine/ageing/law.h"

namespace voltwright::ageing {

/// Conditions of the measurements behind a law. What a test did not vary has no limit here.
struct Validity {
  double coldest_C = -273.15;
  double hottest_C = 1000.0;
  double tested_from_C = -273.15;  // between these and the limits above: extrapolated
  double tested_to_C = 1000.0;
  double least_soc = -1.0;  // a charge may lie a little below 0 or above 1
  double most_soc = 2.0;
  double fastest_per_h = std::numeric_limits<double>::infinity();       // of charge and discharge
  double tested_h = std::numeric_limits<double>::infinity();            // length of the storage test
  double tested_full_cycles = std::numeric_limits<double>::infinity();  // of the cycling test
  bool rests = true;       // the law speaks of time at rest: dwell is held against the limits
  bool swings = true;      // the law speaks of swings: they are held against the limits
  bool estimated = false;  // the publication itself extrapolates: never better than kExtrapolated
};

/// Share of the hours or of the throughput that may lie beyond a limit before the exposure does.
inline constexpr double kToleratedShare = 0.01;

/// kOutside: more than kToleratedShare of the hours or of the throughput is colder, hotter, emptier or fuller
/// than the limits. kExtrapolated: beyond the tested temperatures, faster than the tests were, or more hours
/// or full cycles than they lasted, counted with what `aged` has behind it. A swing is held with both ends of
/// its charge.
Reach reach_within(const Validity& validity, const Exposure& exposure, const Aged& aged);

}  // namespace voltwright::ageing
