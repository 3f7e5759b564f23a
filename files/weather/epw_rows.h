#pragma once
// The text of an EPW file as numbers, still in its own clock: header and one row per record.
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/weather.h"
#include "files/weather/series.h"

namespace voltwright::files {

struct EpwRow {
  int line = 0;
  int month = 1;  // 1..12
  int day = 1;
  int hour = 1;  // 1..24: the hour that ends at this time
  WeatherValues value;
};

struct EpwRows {
  sky::Site site;
  std::string city;
  double zone_h = 0.0;  // local standard time minus UTC
  int records_per_hour = 1;
  std::optional<double> radiation_offset_h;  // a comment of one maker: radiation is that of hour + offset
  std::vector<EpwRow> rows;                  // 29 February left out
  int last_line = 0;
};

/// Reads header and rows. Every field that is used must be a number, a missing code or empty, and in range;
/// all problems at once, at most 25 of them.
base::Result<EpwRows> read_epw_rows(std::string_view text, const std::string& name);

}  // namespace voltwright::files
