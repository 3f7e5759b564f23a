#include "engine/ageing/cordoba_arenas.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

double CordobaArenas::rate(double temperature_C, double least_soc) const {
  constexpr double kPercent = 0.01;
  const double above =
      std::clamp(least_soc, constants_.least_from_soc, constants_.least_to_soc) - constants_.least_from_soc;
  const double factor =
      constants_.base +
      constants_.by_depleting * std::pow(constants_.depleting_share, constants_.depleting_exponent) +
      constants_.by_least * above * above * above;
  return kPercent * factor *
         std::exp(-constants_.activation_J_per_mol / (kGas_J_per_molK * (temperature_C + kFreezing_K)));
}

void CordobaArenas::wear(Aged& aged, const Exposure& exposure, double times) const {
  double progress = 0.0;
  for (const Swing& swing : exposure.swings) {
    const double k = rate(swing.temperature_C, low_soc(swing));
    progress += std::pow(k, 1.0 / constants_.exponent) * 2.0 * full_cycles(swing) * constants_.cell_Ah;
  }
  aged.cycle_loss = stepped(aged.cycle_loss, constants_.exponent, progress * times);
}

}  // namespace voltwright::ageing
