#include "files/gpx_words.h"

#include <charconv>
#include <chrono>
#include <cmath>

namespace voltwright::files {
namespace {

/// `count` digits at `at` as a number, -1 if they are not all digits.
int digits(std::string_view text, std::size_t at, std::size_t count) {
  if (at + count > text.size()) return -1;
  int value = 0;
  for (std::size_t i = at; i < at + count; ++i) {
    if (text[i] < '0' || text[i] > '9') return -1;
    value = 10 * value + (text[i] - '0');
  }
  return value;
}

bool in(int value, int low, int high) { return value >= low && value <= high; }

/// Seconds east of UTC of what stands behind the seconds: "Z", "", "+02:00".
std::optional<int> offset_s(std::string_view rest) {
  if (rest.empty() || rest == "Z" || rest == "z") return 0;
  if (rest.size() != 6 || (rest[0] != '+' && rest[0] != '-') || rest[3] != ':') return std::nullopt;
  const int hours = digits(rest, 1, 2);
  const int minutes = digits(rest, 4, 2);
  if (!in(hours, 0, 14) || !in(minutes, 0, 59)) return std::nullopt;
  const int seconds = 3600 * hours + 60 * minutes;
  return rest[0] == '-' ? -seconds : seconds;
}

std::string_view without_blanks(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r\n";
  const std::size_t first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

}  // namespace

std::optional<std::int64_t> utc_of_text(std::string_view text) {
  constexpr std::size_t kSecondsEnd = 19;
  text = without_blanks(text);
  if (text.size() < kSecondsEnd || text[4] != '-' || text[7] != '-' || (text[10] != 'T' && text[10] != 't') ||
      text[13] != ':' || text[16] != ':') {
    return std::nullopt;
  }
  const int year = digits(text, 0, 4);
  const int month = digits(text, 5, 2);
  const int day = digits(text, 8, 2);
  const int hour = digits(text, 11, 2);
  const int minute = digits(text, 14, 2);
  const int second = digits(text, 17, 2);
  // 60 is a leap second.
  if (!in(year, 1970, 2100) || !in(month, 1, 12) || !in(day, 1, 31) || !in(hour, 0, 23) ||
      !in(minute, 0, 59) || !in(second, 0, 60)) {
    return std::nullopt;
  }
  const std::chrono::year_month_day date{std::chrono::year{year},
                                         std::chrono::month{static_cast<unsigned>(month)},
                                         std::chrono::day{static_cast<unsigned>(day)}};
  if (!date.ok()) return std::nullopt;
  std::size_t rest = kSecondsEnd;
  if (rest < text.size() && text[rest] == '.') {
    const std::size_t end = text.find_first_not_of("0123456789", rest + 1);
    if (end == rest + 1 || rest + 1 == text.size()) return std::nullopt;
    rest = end == std::string_view::npos ? text.size() : end;
  }
  const std::optional<int> east_s = offset_s(text.substr(rest));
  if (!east_s) return std::nullopt;
  const std::int64_t days = std::chrono::sys_days{date}.time_since_epoch().count();
  const std::int64_t minutes = (days * 24 + hour) * 60 + minute;
  return minutes * 60 + second - *east_s;
}

std::optional<double> decimal_of_text(std::string_view text) {
  text = without_blanks(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0.0;
  const char* const end = text.data() + text.size();
  const std::from_chars_result read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (read.ec != std::errc{} || read.ptr != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace voltwright::files
