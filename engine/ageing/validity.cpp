#include "engine/ageing/validity.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

bool is_beyond(const Validity& validity, double temperature_C, double soc) {
  return temperature_C < validity.coldest_C || temperature_C > validity.hottest_C ||
         soc < validity.least_soc || soc > validity.most_soc;
}

}  // namespace

Reach reach_within(const Validity& validity, const Exposure& exposure, const Aged& aged) {
  double hours = 0.0, hours_beyond = 0.0;
  if (validity.rests) {
    for (const Dwell& dwell : exposure.dwell) {
      hours += dwell.hours;
      if (is_beyond(validity, dwell.temperature_C, dwell.soc)) hours_beyond += dwell.hours;
    }
  }
  double moved = 0.0, moved_beyond = 0.0, moved_fast = 0.0;
  if (validity.swings) {
    for (const Swing& swing : exposure.swings) {
      const double moves = full_cycles(swing);
      moved += moves;
      if (is_beyond(validity, swing.temperature_C, swing.mean_soc)) moved_beyond += moves;
      if (std::max(swing.charge_per_h, swing.discharge_per_h) > validity.fastest_per_h) moved_fast += moves;
    }
  }
  if (hours_beyond > kToleratedShare * hours || moved_beyond > kToleratedShare * moved)
    return Reach::kOutside;
  const bool lasts_longer = validity.rests && aged.hours + exposure.hours > validity.tested_h;
  const bool moves_more =
      validity.swings && aged.full_cycles + full_cycles(exposure) > validity.tested_full_cycles;
  const bool is_fast = moved_fast > kToleratedShare * moved;
  return validity.estimated || lasts_longer || moves_more || is_fast ? Reach::kExtrapolated : Reach::kInside;
}

}  // namespace voltwright::ageing
