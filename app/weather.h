#pragma once
// What a weather file holds, in figures that can be held against those of its maker.
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "files/weather/read_weather.h"

namespace voltwright::app {

struct WeatherResponse {
  std::string file;
  std::string format;
  std::string place;  // as the file names it; may be empty
  sky::Site site;
  std::string source;       // in words: kind of year, format, place
  std::size_t hours = 0;    // that the file covers
  std::string first, last;  // UTC, laid onto 2023
  double ghi_kWh_m2 = 0.0;  // sums over the hours that the file covers
  double dni_kWh_m2 = 0.0;
  double dhi_kWh_m2 = 0.0;
  bool has_split = false;      // false: global only, the two above are 0
  double temperature_C = 0.0;  // mean, and the least and most of the hourly means
  double coldest_C = 0.0;
  double warmest_C = 0.0;
  double wind_m_s = 0.0;                // mean
  std::optional<double> noon_offset_h;  // of the solar-noon test; none: fewer than 28 days
  std::size_t filled = 0;
  std::vector<std::string> repairs;
  base::Problems warnings;
  std::optional<sky::MonthlyClimate> climate;  // a file of monthly means: the figures above are then 0
};

/// Reads the weather file at `path`, whatever its format; `options` is what the file may not say.
base::Result<WeatherResponse> read_weather(const std::string& path,
                                           const files::WeatherOptions& options = {});

/// The answer as JSON, docs/formats/weather.md.
std::string to_json(const WeatherResponse& response);

}  // namespace voltwright::app
