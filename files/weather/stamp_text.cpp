#include "files/weather/stamp_text.h"

#include <chrono>
#include <cmath>
#include <string>

#include "engine/sky/calendar.h"
#include "files/number_table.h"
#include "files/weather/layout.h"
#include "files/weather/lines.h"

namespace voltwright::files {

namespace {

bool set_date(std::string_view year, std::string_view month, std::string_view day, WeatherRecord& record) {
  const auto y = digits(year);
  const auto m = digits(month);
  const auto d = digits(day);
  if (!y || !m || !d || !is_date(*y, *m, *d)) return false;
  record.year = *y;
  record.month = *m;
  record.day = *d;
  return true;
}

/// Date at the start of a text; the rest behind it.
bool take_date(std::string_view& text, WeatherRecord& record) {
  constexpr std::size_t kLong = 10;
  constexpr std::size_t kShort = 8;
  if (text.size() >= kLong && (text[4] == '-' || text[4] == '/') && text[7] == text[4]) {
    const std::string_view date = text.substr(0, kLong);
    text.remove_prefix(kLong);
    return set_date(date.substr(0, 4), date.substr(5, 2), date.substr(8, 2), record);
  }
  if (text.size() >= kLong && text[2] == '.' && text[5] == '.') {
    const std::string_view date = text.substr(0, kLong);
    text.remove_prefix(kLong);
    return set_date(date.substr(6, 4), date.substr(3, 2), date.substr(0, 2), record);
  }
  if (text.size() >= kShort && (text.size() == kShort || text[kShort] == ':')) {
    const std::string_view date = text.substr(0, kShort);
    text.remove_prefix(kShort);
    return set_date(date.substr(0, 4), date.substr(4, 2), date.substr(6, 2), record);
  }
  return false;
}

void to_utc(WeatherRecord& record, double offset_h) {
  using namespace std::chrono;
  const std::int64_t utc_s = stamp_of(record) - std::llround(offset_h * 3600.0);
  const std::int64_t day = sky::floor_divide(utc_s, sky::kSecondsPerDay);
  const year_month_day date{sys_days{days{day}}};
  record.year = static_cast<int>(date.year());
  record.month = static_cast<int>(static_cast<unsigned>(date.month()));
  record.day = static_cast<int>(static_cast<unsigned>(date.day()));
  record.stamp_s = utc_s - day * sky::kSecondsPerDay;
}

}  // namespace

std::optional<std::int64_t> clock_seconds(std::string_view text) {
  text = trimmed(text);
  if (text.size() == 4 && text.find(':') == std::string_view::npos) {  // HHMM
    const auto hour = digits(text.substr(0, 2));
    const auto minute = digits(text.substr(2, 2));
    if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
    return std::int64_t{*hour} * 3600 + std::int64_t{*minute} * 60;
  }
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || colon == 0 || colon > 2 || text.size() < colon + 3) {
    return std::nullopt;
  }
  const auto hour = digits(text.substr(0, colon));
  const auto minute = digits(text.substr(colon + 1, 2));
  int second = 0;
  std::string_view rest = text.substr(colon + 3);
  if (!rest.empty()) {
    if (rest.front() != ':' || rest.size() < 3) return std::nullopt;
    const auto given = digits(rest.substr(1, 2));
    if (!given || *given > 59) return std::nullopt;
    if (rest.size() > 3 && rest[3] != '.') return std::nullopt;
    second = *given;
  }
  if (!hour || !minute || *minute > 59) return std::nullopt;
  const std::int64_t seconds = std::int64_t{*hour} * 3600 + std::int64_t{*minute} * 60 + second;
  if (seconds > sky::kSecondsPerDay) return std::nullopt;
  return seconds;
}

std::optional<double> zone_hours(std::string_view text) {
  std::string plain = lower_case(trimmed(text));
  for (const std::string_view start : {"utc", "gmt"}) {
    if (plain.starts_with(start)) plain.erase(0, start.size());
  }
  if (plain.empty() || plain == "z") return 0.0;
  std::optional<double> hours;
  const std::size_t colon = plain.find(':');
  if (colon != std::string::npos) {
    const auto whole = to_number(plain.substr(0, colon));
    const auto minutes = digits(std::string_view(plain).substr(colon + 1));
    if (!whole || !minutes || *minutes > 59) return std::nullopt;
    hours = *whole + (plain.front() == '-' ? -1.0 : 1.0) * *minutes / 60.0;
  } else {
    hours = to_number(plain);
    // "+0530"
    if (hours && plain.size() == 5 && std::abs(*hours) >= 100.0) {
      const double whole = std::trunc(*hours / 100.0);
      hours = whole + (*hours - 100.0 * whole) / 60.0;
    }
  }
  constexpr double kWest = -12.0;
  constexpr double kEast = 14.0;
  if (!hours || *hours < kWest || *hours > kEast) return std::nullopt;
  return hours;
}

bool read_stamp_text(std::string_view text, WeatherRecord& record, bool& utc) {
  text = trimmed(text);
  record.stamp_s = 0;
  if (!take_date(text, record)) return false;
  if (text.empty()) return true;
  if (text.front() != ' ' && text.front() != 'T' && text.front() != ':') return false;
  text.remove_prefix(1);
  const std::size_t zone = text.find_first_of("Zz+-");
  const auto seconds = clock_seconds(text.substr(0, zone));
  if (!seconds) return false;
  record.stamp_s = *seconds;
  if (zone == std::string_view::npos) return true;
  const auto offset_h = zone_hours(text.substr(zone));
  if (!offset_h) return false;
  utc = true;
  to_utc(record, *offset_h);
  return true;
}

}  // namespace voltwright::files
