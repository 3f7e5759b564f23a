#pragma once
// The working behind the costs of a bank, line by line.
#include <vector>

#include "engine/cost/life_cycle.h"

namespace voltwright::cost {

/// From the price to the cost of a delivered kWh at the typical values, so that each line follows from those
/// above it. Sums carry the currency as unit. problems_of() must be empty.
std::vector<WorkingLine> working_of(const PricedBank& bank, const Terms& terms);

}  // namespace voltwright::cost
