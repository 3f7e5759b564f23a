#pragma once
#include <vector>

#include "engine/sky/weather.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Adds the 24 hours of a day of means: global radiation in the proportions of a clear sky (Haurwitz 1945),
/// temperature on the daily course of Erbs, Klein and Beckman 1983 with a range of `range_K`, wind as it is.
/// `zone_h` is the clock of the day minus UTC. The day's radiation is kept.
void add_hours_of_day(const WeatherRecord& day, double range_K, const sky::Site& site, double zone_h,
                      std::vector<WeatherRecord>& hours);

}  // namespace voltwright::files
