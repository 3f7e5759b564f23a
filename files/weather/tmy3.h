#pragma once
// Typical years of the United States: TMY3 (comma separated) and TMY2 (fixed columns). Format notes:
// docs/formats/tmy3.md and docs/formats/tmy2.md.
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Reads a TMY3 text, still in its own clock. Columns are found by their titles. All problems at once.
base::Result<WeatherSeries> read_tmy3(std::string_view text, const std::string& name);

/// Reads a TMY2 text, still in its own clock.
base::Result<WeatherSeries> read_tmy2(std::string_view text, const std::string& name);

}  // namespace voltwright::files
