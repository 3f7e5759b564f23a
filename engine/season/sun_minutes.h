#pragma once
// From the light on an array to what its controller can put on the bus, minute by minute.
#include <cstdint>
#include <span>

#include "engine/season/system.h"
#include "engine/sky/plane.h"
#include "engine/supply/source.h"

namespace voltwright::season {

/// Adds an array to the minutes, of which the first starts at `start_utc_s`. Losses to dirt follow the month
/// in UTC. The curve of a directly coupled array is taken as straight around `near_V`, the usual voltage
/// of the bus; the limit of a tracking controller holds at whatever voltage the bus has.
void add_sun(const supply::SolarArray& array, const sky::PlaneMinutes& plane, std::int64_t start_utc_s,
             double near_V, std::span<Minute> minutes);

}  // namespace voltwright::season
