#pragma once
// Any table of weather with named columns. Format notes: docs/formats/weather_csv.md.
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "files/weather/read_weather.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// True if one of the first lines holds titles of a time and of weather.
bool is_plain_csv(std::string_view text);

/// Reads a table of hourly or finer values. Lines above the titles may say latitude, longitude, height, zone,
/// stamp (start, middle or end of the interval) and place. All problems at once.
base::Result<WeatherSeries> read_plain_csv(std::string_view text, const std::string& name,
                                           const WeatherOptions& options);

}  // namespace voltwright::files
