#include "engine/ageing/validity.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

bool is_beyond(const Validity& validity, double temperature_C, double soc) {
  return temperature_C < validity.coldest_C || temperature_C > validity.hottest_C ||
         soc < validity.least_soc || soc > validity.most_soc;
}

bool is_untested(const Validity& validity, double temperature_C) {
  return temperature_C < validity.tested_from_C || temperature_C > validity.tested_to_C;
}

}  // namespace

Reach reach_within(const Validity& validity, const Exposure& exposure, const Aged& aged) {
  double hours = 0.0, hours_beyond = 0.0, hours_untested = 0.0;
  if (validity.rests) {
    for (const Dwell& dwell : exposure.dwell) {
      hours += dwell.hours;
      if (is_beyond(validity, dwell.temperature_C, dwell.soc)) hours_beyond += dwell.hours;
      if (is_untested(validity, dwell.temperature_C)) hours_untested += dwell.hours;
    }
  }
  double moved = 0.0, moved_beyond = 0.0, moved_untested = 0.0;
  if (validity.swings) {
    for (const Swing& swing : exposure.swings) {
      const double moves = full_cycles(swing);
      moved += moves;
      if (is_beyond(validity, swing.temperature_C, low_soc(swing)) ||
          is_beyond(validity, swing.temperature_C, high_soc(swing)))
        moved_beyond += moves;
      const bool is_fast = std::max(swing.charge_per_h, swing.discharge_per_h) > validity.fastest_per_h;
      if (is_fast || is_untested(validity, swing.temperature_C)) moved_untested += moves;
    }
  }
  if (hours_beyond > kToleratedShare * hours || moved_beyond > kToleratedShare * moved)
    return Reach::kOutside;
  const bool lasts_longer = validity.rests && aged.hours + exposure.hours > validity.tested_h;
  const bool moves_more =
      validity.swings && aged.full_cycles + full_cycles(exposure) > validity.tested_full_cycles;
  const bool is_untested_use =
      hours_untested > kToleratedShare * hours || moved_untested > kToleratedShare * moved;
  return validity.estimated || lasts_longer || moves_more || is_untested_use ? Reach::kExtrapolated
                                                                             : Reach::kInside;
}

}  // namespace voltwright::ageing
