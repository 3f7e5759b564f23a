#include "engine/ageing/wang_2011.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

void Wang2011::wear(Aged& aged, const Exposure& exposure, double times) const {
  constexpr double kPercent = 0.01;
  double progress = 0.0;
  for (const Swing& swing : exposure.swings) {
    const double first_per_h = constants_.factor_by_per_h.front().x;
    const double last_per_h = constants_.factor_by_per_h.back().x;
    const double rate_per_h = std::clamp(discharge_rate_per_h(swing), first_per_h, last_per_h);
    const double energy_J_per_mol =
        constants_.activation_J_per_mol - constants_.relief_J_per_mol * rate_per_h;
    const double k = kPercent * base::curve_at(constants_.factor_by_per_h, rate_per_h, 0.0) *
                     std::exp(-energy_J_per_mol / (kGas_J_per_molK * (swing.temperature_C + kFreezing_K)));
    progress += std::pow(k, 1.0 / constants_.exponent) * discharged(swing) * constants_.cell_Ah;
  }
  aged.cycle_loss = stepped(aged.cycle_loss, constants_.exponent, progress * times);
}

}  // namespace voltwright::ageing
