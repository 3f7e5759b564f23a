#include "files/weather/power_head.h"

#include <array>
#include <utility>

#include "files/number_table.h"

namespace voltwright::files {

namespace {

/// The number that follows a word in a line, blanks and a colon or equals sign between them.
std::optional<double> number_after(std::string_view line, std::string_view word) {
  const std::size_t at = lower_case(line).find(word);
  if (at == std::string::npos) return std::nullopt;
  std::string_view rest = line.substr(at + word.size());
  const std::size_t first = rest.find_first_not_of(" \t:=");
  if (first == std::string_view::npos) return std::nullopt;
  rest = rest.substr(first);
  return to_number(rest.substr(0, rest.find_first_of(" \t,")));
}

void read_line(std::string_view line, PowerHead& head, bool& placed) {
  const std::string lower = lower_case(line);
  if (lower.starts_with("location")) {
    const auto latitude = number_after(line, "latitude");
    const auto longitude = number_after(line, "longitude");
    if (latitude && longitude && *latitude >= -90.0 && *latitude <= 90.0 && *longitude >= -180.0 &&
        *longitude <= 180.0) {
      head.site.latitude_deg = *latitude;
      head.site.longitude_deg = *longitude;
      placed = true;
    }
  } else if (lower.starts_with("elevation")) {
    const auto height = number_after(line, "=");
    if (height && *height >= -500.0 && *height <= 9000.0) {
      head.site.elevation_m = *height;
      head.has_elevation = true;
    }
  } else if (lower.starts_with("dates")) {
    if (lower.find("lst") != std::string::npos) head.solar_time = true;
    if (lower.find("utc") != std::string::npos) head.solar_time = false;
  } else {
    // "PARAMETER   words (unit)"
    const std::size_t open = lower.rfind('(');
    const std::size_t close = lower.rfind(')');
    const std::size_t blank = lower.find_first_of(" \t");
    if (open == std::string::npos || close == std::string::npos || close < open ||
        blank == std::string::npos) {
      return;
    }
    head.unit[lower.substr(0, blank)] = lower.substr(open + 1, close - open - 1);
  }
}

}  // namespace

std::optional<PowerHead> read_power_head(Lines& lines, WeatherProblems& problems) {
  constexpr int kMostHeaderLines = 100;
  PowerHead head;
  bool placed = false;
  while (lines.number() < kMostHeaderLines && lines.next()) {
    const std::string_view line = trimmed(lines.text());
    if (line.find("-END HEADER-") == std::string_view::npos) {
      read_line(line, head, placed);
      continue;
    }
    if (placed) return head;
    problems.add(lines.number(), 1,
                 {.what = "The header does not say where the weather is from.",
                  .field = "Location",
                  .given = "",
                  .limit = "Location: Latitude 44.76 Longitude 7.64",
                  .remedy = "Fetch the values of a single point; regions are not read."});
    return std::nullopt;
  }
  problems.add(lines.number(), 1,
               {.what = "The header does not end.",
                .field = "",
                .given = "",
                .limit = "-END HEADER-",
                .remedy = "Is the file complete?"});
  return std::nullopt;
}

std::optional<double> power_radiation_factor(std::string_view unit, double interval_h) {
  std::string plain;
  for (const char c : unit) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) plain += c;
  }
  const std::array<std::pair<std::string_view, double>, 11> kFactors = {{
      {"wm2", 1.0},
      {"whm2", 1.0 / interval_h},
      {"whm2day", 1.0 / 24.0},
      {"kwhm2", 1000.0 / interval_h},
      {"kwhrm2", 1000.0 / interval_h},
      {"kwhm2day", 1000.0 / 24.0},
      {"kwhrm2day", 1000.0 / 24.0},
      {"mjm2day", 1.0e6 / 86400.0},
      {"mjm2hr", 1.0e6 / 3600.0},
      {"mjhr", 1.0e6 / 3600.0},
      {"mjm2", 1.0e6 / 3600.0 / interval_h},
  }};
  for (const auto& [name, factor] : kFactors) {
    if (plain == name) return factor;
  }
  return std::nullopt;
}

}  // namespace voltwright::files
