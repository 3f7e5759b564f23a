#pragma once
// EPW typical-year weather files. Format notes: docs/formats/epw.md.
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/sky/weather.h"

namespace voltwright::files {

struct ReadWeather {
  sky::HourlyWeather weather;
  base::Problems warnings;
};

/// Reads an EPW text; `name` is shown in problems. Missing codes are filled and counted in a warning; a
/// shifted clock (solar-noon test) is a warning that says how far.
base::Result<ReadWeather> read_epw(std::string_view text, const std::string& name);

}  // namespace voltwright::files
