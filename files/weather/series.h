#pragma once
// A weather file as it was read, still in its own clock: what every format becomes before it is laid onto the
// hours of a year.
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/sky/weather.h"

namespace voltwright::files {

/// The quantities that are used, in the order of WeatherRecord::value: W/m2 (means), degC, m/s.
enum class WeatherColumn : std::uint8_t { kGhi, kDni, kDhi, kTemperature, kWind };
inline constexpr std::size_t kWeatherColumns = 5;

/// What a column is called in words, and the range a value must lie in.
struct WeatherColumnRule {
  std::string_view name;
  double lowest = 0.0;
  double highest = 0.0;
};
const WeatherColumnRule& rule_of(WeatherColumn column);

using WeatherValues = std::array<std::optional<double>, kWeatherColumns>;  // nothing where it is missing

struct WeatherRecord {
  int line = 0;  // 0: not known
  int year = 2023;
  int month = 1;  // 1..12
  int day = 1;
  std::int64_t stamp_s = 0;  // of the day, 0 to 86400, as the file writes it
  WeatherValues value;
};

/// One way of reading the stamps.
struct WeatherTiming {
  double zone_h = 0.0;                  // the file's clock minus UTC
  double interval_h = 0.0;              // from the stamp to the start of the hour whose mean the radiation is
  std::optional<double> temperature_h;  // from the stamp to the instant of temperature and wind; none: means
  std::string words;                    // this way of reading, in words
};

struct WeatherSeries {
  std::string format;             // "EPW", "TMY3", ...
  std::string place;              // as the file names it; may be empty
  std::optional<sky::Site> site;  // nothing if the file does not say
  bool typical = true;            // months of different years: the years mean nothing, the year must be whole
  int records_per_hour = 1;
  std::vector<WeatherTiming> timings;  // the first is what the file says, the others are tried if it fails
  std::vector<WeatherRecord> records;
  int last_line = 0;
  std::string clock_remedy;                    // where the clock of such a file can be mended
  std::vector<std::string> repairs;            // what was mended or assumed, full sentences
  std::optional<sky::MonthlyClimate> climate;  // instead of records: a file of monthly means
};

}  // namespace voltwright::files
