#pragma once
// What engine, generator set, wind and water may give in the minutes of a leg.
#include <cstdint>
#include <span>

#include "engine/journey/calendar.h"
#include "engine/season/series.h"

namespace voltwright::season {

/// A leg with its weather in one season.
struct LegDrawn {
  const Circumstances& all;
  const LegSky& sky;
  const journey::Leg& leg;
  const journey::Calendar& calendar;
  const sky::WeatherMinutes& weather;
  std::span<const float> cabin_C;
  std::uint64_t season = 0;
};

/// Fills the limits of the engine, the hours of the generator set, and the power of wind and water. `minutes`
/// already say when the engine runs and mains is there. Sources that the plan has not stay as they are.
void add_driven(const LegDrawn& drawn, std::span<Minute> minutes);

}  // namespace voltwright::season
