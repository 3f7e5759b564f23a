#pragma once
// One door for every weather file: the format is told from the content. Formats: docs/formats/weather.md.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/weather.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// What the caller knows and the file may not say.
struct WeatherOptions {
  std::optional<sky::Site> place;            // used only if the file names no position
  std::optional<double> zone_h;              // clock of the rows minus UTC, -12 to 14; overrules the file
  std::optional<double> radiation_offset_h;  // from stamp to radiation, for PVGIS files without it
  std::optional<int> year;                   // which year of a file of many; the last whole one if absent
};

struct ReadWeather {
  sky::HourlyWeather weather;  // a whole year, 8760 h; empty if `climate` is set
  base::Problems warnings;
  std::string format;
  std::string place;                    // as the file names it; may be empty
  std::vector<std::string> repairs;     // what was mended or assumed, full sentences
  std::optional<double> noon_offset_h;  // from the solar-noon test; none: fewer than 28 days
  std::size_t first_hour = 0;           // the hours that the file covers, from this index of the year on ...
  std::size_t hours = 8760;             // ... and round its end; the rest is made up and must not be used
  std::size_t filled = 0;               // values that were missing and have been filled
  std::optional<sky::MonthlyClimate> climate;  // a file of monthly means

  /// True if the file covers every hour from one instant to the other (UTC seconds since 1970, any year).
  bool covers(std::int64_t start_utc_s, std::int64_t end_utc_s) const;
};

/// Reads a weather file of any format; `name` is shown in problems. Missing values are filled and counted in
/// a warning, a shifted clock (solar-noon test) is a warning that says how far and what was done. All
/// problems at once, 26 at most.
base::Result<ReadWeather> read_weather(std::string_view text, const std::string& name,
                                       const WeatherOptions& options = {});

/// Lays what a reader has found onto the hours of a year in UTC: the chain that all formats share.
base::Result<ReadWeather> year_of(WeatherSeries series, const std::string& name,
                                  const WeatherOptions& options);

}  // namespace voltwright::files
