#include "engine/ageing/xu.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

double Xu::damage_of_swing(double depth) const {
  if (depth <= 0.0) return 0.0;
  return 1.0 / (constants_.depth_factor * std::pow(std::min(depth, 1.0), constants_.depth_exponent) +
                constants_.depth_offset);
}

double Xu::loss_of(double damage) const {
  return -constants_.film_share * std::expm1(-constants_.film_factor * damage) -
         (1.0 - constants_.film_share) * std::expm1(-damage);
}

double Xu::stress(double temperature_C, double soc) const {
  const double temperature_K = temperature_C + kFreezing_K;
  return std::exp(constants_.charge_factor * (soc - constants_.charge_centre) +
                  constants_.temperature_per_K * (temperature_K - kReference_K) * kReference_K /
                      temperature_K);
}

void Xu::wear(Aged& aged, const Exposure& exposure, double times) const {
  double by_time = 0.0, by_swings = 0.0;
  for (const Dwell& dwell : exposure.dwell)
    by_time += constants_.time_per_s * dwell.hours * kSecondsPerHour * stress(dwell.temperature_C, dwell.soc);
  for (const Swing& swing : exposure.swings)
    by_swings += swing.count * damage_of_swing(swing.depth) * stress(swing.temperature_C, swing.mean_soc);
  aged.damage_by_time += by_time * times;
  aged.damage_by_swings += by_swings * times;
  const double damage = aged.damage_by_time + aged.damage_by_swings;
  if (damage <= 0.0) return;
  const double loss = loss_of(damage);
  aged.calendar_loss = loss * aged.damage_by_time / damage;
  aged.cycle_loss = loss * aged.damage_by_swings / damage;
}

}  // namespace voltwright::ageing
