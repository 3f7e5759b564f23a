#pragma once
// The titles of a table of weather: which column is what, and in which unit.
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "files/weather/series.h"

namespace voltwright::files {

/// How a number of a column becomes the unit that is used: value x factor + shift, and / interval hours for
/// sums of energy.
struct ColumnUnit {
  double factor = 1.0;
  double shift = 0.0;
  bool per_interval = false;
};

struct WeatherTitle {
  std::size_t index = 0;
  ColumnUnit unit;
};

struct WeatherTitles {
  std::size_t count = 0;
  std::array<std::optional<WeatherTitle>, kWeatherColumns> column;
  std::optional<std::size_t> time;  // date and time in one, or the date
  std::optional<std::size_t> clock;
  std::optional<std::size_t> year, month, day, hour, minute;
  bool utc = false;          // the title of the time says UTC
  std::string unknown_unit;  // a title whose unit is not known here
  bool usable() const;       // a time and global or direct radiation, or temperature
};

/// Reads a line of titles; what is not recognised is left out.
WeatherTitles weather_titles(std::string_view line, char separator);

}  // namespace voltwright::files
