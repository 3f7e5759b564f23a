#pragma once
// Where the front of a vehicle points while it stands, and what the arrays on it then get of the sun.
#include <cstdint>
#include <optional>
#include <span>

#include "engine/sky/plane.h"
#include "engine/supply/source.h"

namespace voltwright::season {

/// Direction of the front, from north over east. Without a stated one it is drawn anew for each day, one of
/// eight directions, all as likely (assumption: nobody parks for the sun).
struct Heading {
  std::optional<double> stated_deg;
  std::span<const std::int32_t> day;  // local day of each minute
  std::uint64_t seed = 0;
  std::uint64_t season = 0;
};

/// Light and warmth of an array's plane in the minutes of `sun`: one that turns with the vehicle looks to
/// heading + azimuth, and its near shade turns along; while driving the heading of the day is kept
/// (assumption). The land's edge stays. Depends on its arguments alone.
sky::PlaneMinutes array_minutes(const supply::SolarArray& array, const sky::SunMinutes& sun,
                                const sky::WeatherMinutes& weather, const Heading& heading);

}  // namespace voltwright::season
