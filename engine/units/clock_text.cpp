#include "engine/units/clock_text.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>

#include "engine/units/number.h"

namespace voltwright::units {
namespace {

constexpr int kDay_s = 86400;

base::Problem problem(std::string what, std::string_view given, std::string limit) {
  base::Problem p;
  p.what = std::move(what);
  p.given = given;
  p.limit = std::move(limit);
  return p;
}

/// One or two digits at the front of `text`, cut off; empty if there are none or the number exceeds `most`.
std::optional<int> take_number(std::string_view& text, int most) {
  int value = 0;
  std::size_t n = 0;
  while (n < text.size() && n < 2 && text[n] >= '0' && text[n] <= '9') value = 10 * value + (text[n++] - '0');
  if (n == 0 || value > most) return std::nullopt;
  text.remove_prefix(n);
  return value;
}

std::optional<int> seconds_of(std::string_view text) {
  const std::optional<int> hours = take_number(text, 24);
  if (!hours || text.empty() || text[0] != ':') return std::nullopt;
  text.remove_prefix(1);
  if (text.size() < 2) return std::nullopt;
  const std::optional<int> minutes = take_number(text, 59);
  if (!minutes) return std::nullopt;
  int seconds = 0;
  if (!text.empty()) {
    if (text[0] != ':') return std::nullopt;
    text.remove_prefix(1);
    const std::optional<int> given = take_number(text, 59);
    if (!given || !text.empty()) return std::nullopt;
    seconds = *given;
  }
  const int total = 3600 * *hours + 60 * *minutes + seconds;
  if (total > kDay_s) return std::nullopt;
  return total;
}

}  // namespace

base::Result<int> parse_clock(std::string_view text) {
  const std::optional<int> seconds = seconds_of(plain_text(text));
  if (seconds) return *seconds;
  return problem("A time of day is wanted, such as 18:00.", text, "00:00 to 24:00");
}

base::Result<DayWindow> parse_day_window(std::string_view text) {
  static constexpr std::array<std::string_view, 4> kDashes = {"\xE2\x80\x93", "\xE2\x80\x94", " to ", "-"};
  const std::string plain = plain_text(text);
  if (plain == "all day") return DayWindow{0, 0};
  for (const std::string_view dash : kDashes) {
    const std::size_t at = plain.find(dash);
    if (at == std::string::npos) continue;
    const std::optional<int> from = seconds_of(plain_text(std::string_view(plain).substr(0, at)));
    const std::optional<int> to = seconds_of(plain_text(std::string_view(plain).substr(at + dash.size())));
    if (!from || !to || *from == kDay_s) break;
    if (*from == *to) {
      return problem("The hours begin and end at the same time.", text,
                     "two different times, or \"all day\"");
    }
    if (*from == 0 && *to == kDay_s) return DayWindow{0, 0};
    return DayWindow{*from, *to == kDay_s ? 0 : *to};
  }
  return problem("Hours of the day are wanted, such as 22:00-06:00.", text,
                 "two times from 00:00 to 24:00, or \"all day\"");
}

}  // namespace voltwright::units
