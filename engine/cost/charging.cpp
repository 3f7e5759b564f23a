#include "engine/cost/charging.h"

namespace voltwright::cost {

std::vector<Charging> charging_of(std::span<const SourceEnergy> sources, double charged_kWh,
                                  double discharged_kWh) {
  double all = 0.0;
  for (const SourceEnergy& source : sources) all += source.kWh;
  std::vector<Charging> shares;
  if (all <= 0.0 || discharged_kWh <= 0.0) return shares;
  for (const SourceEnergy& source : sources) {
    if (source.kWh <= 0.0) continue;
    shares.push_back({source.name, source.kWh / all * charged_kWh / discharged_kWh});
  }
  return shares;
}

}  // namespace voltwright::cost
