#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "engine/bank/location.h"

namespace voltwright::season {

/// Air temperature inside the cabin [degC]: follows the outside air with a time constant of two hours and is
/// held at the heating temperature while occupied and colder outside. Assumption; see docs/method/heat.md.
std::vector<float> cabin_temperature_C(const bank::Surroundings& surroundings,
                                       std::span<const float> outside_C, bool occupied);

/// Temperature around the bank [degC] at its place. The engine bay warms towards outside air plus its rise
/// with a time constant of 20 minutes while driving and cools with one hour (assumption).
std::vector<float> bank_surroundings_C(const bank::Surroundings& surroundings,
                                       std::span<const float> outside_C, std::span<const float> cabin_C,
                                       std::span<const std::uint8_t> driving);

}  // namespace voltwright::season
