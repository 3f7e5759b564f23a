#pragma once
// What one kilowatt-hour out of the bank takes from each source.
#include <span>
#include <string>
#include <vector>

#include "engine/cost/priced_bank.h"

namespace voltwright::cost {

/// Energy that a source gave in some time, where it meets the others.
struct SourceEnergy {
  std::string name;
  double kWh = 0.0;  // >= 0
};

/// Shares of the sources in what charged the bank, for each kWh out of it: (kWh of the source / kWh of all)
/// (charged / discharged). Assumption: each source charges the bank with the share that it has in all energy,
/// as nothing tells whose energy a load took. `charged_kWh` into and `discharged_kWh` out of the bank in the
/// same time. Empty without energy from a source or out of the bank.
std::vector<Charging> charging_of(std::span<const SourceEnergy> sources, double charged_kWh,
                                  double discharged_kWh);

}  // namespace voltwright::cost
