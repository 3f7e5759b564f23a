#include "engine/ageing/part.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

void ComposedLaw::age(Aged& aged, const Exposure& exposure, double times) const {
  if (times <= 0.0) return;
  for (const auto& part : parts_) part->wear(aged, exposure, times);
  aged.hours += exposure.hours * times;
  aged.full_cycles += full_cycles(exposure) * times;
}

Reach ComposedLaw::reach(const Exposure& exposure, const Aged& aged) const {
  Reach worst = Reach::kInside;
  for (const auto& part : parts_) worst = std::max(worst, reach_within(part->validity(), exposure, aged));
  return worst;
}

}  // namespace voltwright::ageing
