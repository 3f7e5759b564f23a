#pragma once
// EPW typical-year weather files. Format notes: docs/formats/epw.md.
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Reads an EPW text, still in its own clock; `name` is shown in problems. All problems at once.
base::Result<WeatherSeries> read_epw(std::string_view text, const std::string& name);

}  // namespace voltwright::files
