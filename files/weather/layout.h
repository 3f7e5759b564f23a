#pragma once
// From records with stamps to the 8,760 hours of a year in UTC.
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "files/weather/series.h"

namespace voltwright::files {

inline constexpr std::size_t kHoursOfYear = 8760;

/// Hours laid onto a year of 365 days. Hour i starts phase_s + 3600 i seconds after New Year in UTC.
struct WeatherHours {
  std::int64_t phase_s = 0;  // 0 to 3599
  std::array<std::vector<std::optional<double>>, kWeatherColumns> value;
  std::vector<std::uint8_t> seen;  // rows found for the hour
  std::size_t first_hour = 0;      // what the rows span, round the end of the year
  std::size_t hours = 0;
};

/// Lays records onto the hours in one way of reading the stamps; several records of an hour are averaged. 29
/// February is left out. An hour that comes too often, or stamps at changing minutes, are problems.
base::Result<WeatherHours> lay_out(const WeatherSeries& series, const WeatherTiming& timing,
                                   const std::string& name);

/// Seconds since 1970 of a stamp in the file's own clock, with its own year; for 29 February of a year that
/// has none those of 1 March.
std::int64_t stamp_of(const WeatherRecord& record);

/// Puts the records in order of time and chooses one year if there are more. What was done is added to the
/// repairs of the series.
void choose_year(WeatherSeries& series, std::optional<int> year);

}  // namespace voltwright::files
