#pragma once
#include <optional>
#include <string_view>

#include "files/weather/series.h"

namespace voltwright::files {

/// "2026-03-01 14:00", with T, seconds and "Z" or "+01:00" if wished, also "2026/03/01", "01.03.2026" and
/// "20260301:1400". With an offset the record is set in UTC and `utc` becomes true. 24:00 is the end of its
/// day. A date alone is midnight. Dates with the day or the month first between slashes cannot be told apart
/// and are not read.
bool read_stamp_text(std::string_view text, WeatherRecord& record, bool& utc);

/// "14:00" or "14:00:00" or "24:00" into seconds of the day.
std::optional<std::int64_t> clock_seconds(std::string_view text);

/// "UTC", "+1", "UTC+05:30", "-3.5" into hours.
std::optional<double> zone_hours(std::string_view text);

}  // namespace voltwright::files
