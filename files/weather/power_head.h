#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "engine/sky/weather.h"
#include "files/weather/lines.h"

namespace voltwright::files {

/// What stands above the rows of a POWER file.
struct PowerHead {
  sky::Site site;
  bool has_elevation = false;
  std::optional<bool> solar_time;           // true: LST, false: UTC; nothing: not said
  std::map<std::string, std::string> unit;  // by parameter, in small letters
};

/// Reads the lines between -BEGIN HEADER- and -END HEADER-; problems are noted.
std::optional<PowerHead> read_power_head(Lines& lines, WeatherProblems& problems);

/// Factor from a unit of radiation to the mean in W/m2 over an interval; nothing if it is not known.
std::optional<double> power_radiation_factor(std::string_view unit, double interval_h);

}  // namespace voltwright::files
