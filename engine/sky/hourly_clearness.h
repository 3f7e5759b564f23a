#pragma once
// Hours of a day with a given clearness.
#include <array>

#include "engine/base/random.h"

namespace voltwright::sky {

/// Values for the 24 hours of a solar day, the first from midnight.
using DayHours = std::array<double, 24>;

/// Hourly clearness index of a day by the autoregressive Gaussian model of Aguiar and Collares-Pereira 1992.
/// `clearness`: of the day, 0 to 1. `sin_height`: mean sine of the sun's height while up in each hour, 0 for
/// a hour without sun, which gets 0.
DayHours hourly_clearness(double clearness, const DayHours& sin_height, base::RandomStream& random);

/// Scales hourly values by one factor so that they sum to `sum`, none above its limit; what a limit cuts off
/// goes to the other hours. If `sum` exceeds the sum of the limits, the limits are returned.
DayHours scale_within_limits(const DayHours& values, const DayHours& limits, double sum);

}  // namespace voltwright::sky
