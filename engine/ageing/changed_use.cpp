#include "engine/ageing/changed_use.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

Exposure cooler(Exposure exposure, double by_K, double plates_doubling_K) {
  for (Dwell& dwell : exposure.dwell) dwell.temperature_C -= by_K;
  for (Swing& swing : exposure.swings) swing.temperature_C -= by_K;
  // Below the knee the sum holds speed to the power of 5/3.
  constexpr double kSlowPower = 5.0 / 3.0;
  const double speed = std::exp2(-by_K / plates_doubling_K);
  exposure.plates.fast_corrosion *= speed;
  exposure.plates.slow_corrosion *= std::pow(speed, kSlowPower);
  return exposure;
}

Exposure stopping_at(Exposure exposure, double ceiling) {
  double highest = 0.0;
  for (const Dwell& dwell : exposure.dwell) highest = std::max(highest, dwell.soc);
  for (const Swing& swing : exposure.swings) highest = std::max(highest, high_soc(swing));
  const double down = highest - ceiling;
  if (down <= 0.0) return exposure;
  for (Dwell& dwell : exposure.dwell) dwell.soc = std::max(0.0, dwell.soc - down);
  for (Swing& swing : exposure.swings) {
    const double top = high_soc(swing) - down;
    swing.depth = std::min(swing.depth, std::max(0.0, top));
    swing.mean_soc = top - 0.5 * swing.depth;
  }
  return exposure;
}

Exposure shared_by(Exposure exposure, double times) {
  const double share = 1.0 / times;
  const auto from_full = [share](double soc) { return 1.0 - (1.0 - soc) * share; };
  for (Dwell& dwell : exposure.dwell) dwell.soc = from_full(dwell.soc);
  for (Swing& swing : exposure.swings) {
    swing.mean_soc = from_full(swing.mean_soc);
    swing.depth *= share;
    swing.charge_per_h *= share;
    swing.discharge_per_h *= share;
  }
  exposure.plates.drawn *= share;
  exposure.plates.weighted *= share;
  return exposure;
}

Exposure stored_at(Exposure exposure, double soc) {
  for (Dwell& dwell : exposure.dwell) dwell.soc = soc;
  return exposure;
}

}  // namespace voltwright::ageing
