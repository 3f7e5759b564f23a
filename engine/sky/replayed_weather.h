#pragma once
// Hourly weather of a typical year laid onto the dates of a stay.
#include "engine/sky/sun.h"
#include "engine/sky/weather.h"

namespace voltwright::sky {

/// One-minute weather for the minutes of `sun`, which must be the sun of the file's site. Each hour is that
/// of the same month, day and hour of the file; 29 February repeats the 28th; a file of less than a year is
/// repeated end to end. The hour's global energy is kept to 1e-6 and shaped by the sun of each minute; hours
/// whose light the geometry does not explain (sun down, or far above clear sky) are spread evenly as diffuse.
/// Beam and diffuse keep the hour's ratio from the file, by Erbs where the file has no diffuse. Temperature
/// runs in straight lines from mid-hour to mid-hour; wind is the hour's mean. A file without hours gives
/// darkness at 15 degC.
WeatherMinutes replay_weather(const HourlyWeather& hourly, const SunMinutes& sun);

}  // namespace voltwright::sky
