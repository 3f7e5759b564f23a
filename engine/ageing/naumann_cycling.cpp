#include "engine/ageing/naumann_cycling.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

constexpr double kPercent = 0.01;

double cube_about(double depth, double centre, double cubic, double middle) {
  const double off_centre = depth - centre;
  return std::max(0.0, cubic * off_centre * off_centre * off_centre + middle);
}

}  // namespace

double NaumannCycling::loss_per_root_cycle(double rate_per_h, double depth) const {
  return kPercent * (constants_.by_rate * rate_per_h + constants_.base) *
         cube_about(depth, constants_.centre_depth, constants_.cubic, constants_.middle);
}

double NaumannCycling::growth_per_cycle(double rate_per_h, double depth) const {
  const double rate = std::min(rate_per_h, constants_.resistance_most_per_h);
  const double by_rate = std::max(0.0, constants_.resistance_base + constants_.resistance_by_rate * rate);
  return kPercent * by_rate *
         cube_about(depth, constants_.resistance_centre_depth, constants_.resistance_cubic,
                    constants_.resistance_middle);
}

void NaumannCycling::wear(Aged& aged, const Exposure& exposure, double times) const {
  double progress = 0.0;
  double growth = 0.0;
  for (const Swing& swing : exposure.swings) {
    const double rate_per_h = mean_rate_per_h(swing);
    const double loss = loss_per_root_cycle(rate_per_h, swing.depth);
    progress += loss * loss * full_cycles(swing);
    growth += growth_per_cycle(rate_per_h, swing.depth) * full_cycles(swing);
  }
  aged.cycle_loss = stepped(aged.cycle_loss, 0.5, progress * times);
  aged.resistance_growth += growth * times;
}

}  // namespace voltwright::ageing
