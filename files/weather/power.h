#pragma once
// Point files of the POWER project of NASA as CSV: hourly, daily and climatology. Format notes:
// docs/formats/power.md.
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Reads any of the three. Daily sums are spread over the hours by a clear sky; a climatology becomes monthly
/// means to make weather from. All problems at once.
base::Result<WeatherSeries> read_power(std::string_view text, const std::string& name);

}  // namespace voltwright::files
