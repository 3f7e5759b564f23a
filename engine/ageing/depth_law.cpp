#include "engine/ageing/depth_law.h"

namespace voltwright::ageing {

namespace {
constexpr double kHoursPerYear = 8766.0;
constexpr double kEndLoss = 0.2;
constexpr double kHottest_C = 40.0;
constexpr double kColdest_C = 15.0;
}  // namespace

void DepthLaw::age(Aged& aged, const Exposure& exposure, double times) const {
  const Wear wear = wear_of(life_, exposure, spread_);
  double moved = 0.0;
  for (const Swing& swing : exposure.swings) moved += swing.count * swing.depth;
  aged.cycle_loss += kEndLoss * wear.by_cycles * times;
  aged.calendar_loss += kEndLoss * wear.by_calendar * times;
  aged.full_cycles += moved * times;
  aged.hours += exposure.hours * times;
}

Reach DepthLaw::reach(const Exposure& exposure, const Aged& aged) const {
  bool cold = false;
  for (const Dwell& d : exposure.dwell) {
    if (d.temperature_C > kHottest_C) return Reach::kOutside;
    cold = cold || d.temperature_C < kColdest_C;
  }
  return cold || aged.hours > life_.calendar_years.max * kHoursPerYear ? Reach::kExtrapolated
                                                                       : Reach::kInside;
}

}  // namespace voltwright::ageing
