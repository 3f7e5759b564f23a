#include "files/weather/recogniser.h"

#include "files/number_table.h"
#include "files/weather/lines.h"
#include "files/weather/plain_csv.h"

namespace voltwright::files {

namespace {

constexpr int kLinesLookedAt = 60;

/// A number, a quoted name, a state, then numbers, as the first line of a TMY3 file.
bool tmy3_head(std::string_view line) {
  const auto fields = split_at(line, ',');
  return fields.size() >= 6 && to_number(fields[0]).has_value() && line.find('"') != std::string_view::npos;
}

bool tmy3_titles(std::string_view line) {
  return line.starts_with("Date (MM/DD/YYYY)") || line.find(",GHI (W/m^2)") != std::string_view::npos;
}

/// " 94728 NEW YORK_CITY          NY  -5 N 40 47 W  73 58    57": a letter for each side where they belong.
bool tmy2_head(std::string_view line) {
  constexpr std::size_t kNorth = 37;
  constexpr std::size_t kEast = 45;
  return line.size() >= 56 && line.find(',') == std::string_view::npos &&
         (line[kNorth] == 'N' || line[kNorth] == 'S') && (line[kEast] == 'E' || line[kEast] == 'W');
}

}  // namespace

WeatherFormat weather_format(std::string_view text) {
  Lines lines(text);
  bool pvgis = false;
  while (lines.number() < kLinesLookedAt && lines.next()) {
    const std::string_view line = trimmed(lines.text());
    if (line.empty()) continue;
    if (lower_case(line.substr(0, 9)) == "location," || lower_case(line) == "location") {
      return WeatherFormat::kEpw;
    }
    if (line.find("-BEGIN HEADER-") != std::string_view::npos) return WeatherFormat::kPower;
    if (lines.number() == 1 && line.front() == '{') return WeatherFormat::kPvgisJson;
    if (lines.number() == 1 && tmy2_head(lines.text())) return WeatherFormat::kTmy2;
    if (lines.number() == 1 && tmy3_head(line)) return WeatherFormat::kTmy3;
    if (lines.number() == 2 && tmy3_titles(line)) return WeatherFormat::kTmy3;
    if (line.starts_with("Latitude (decimal degrees):")) pvgis = true;
    if (line.starts_with("time(UTC)") && line.find("G(h)") != std::string_view::npos) pvgis = true;
    if (line.starts_with("time,") && line.find("(i)") != std::string_view::npos) pvgis = true;
    if (pvgis) return WeatherFormat::kPvgisCsv;
  }
  return is_plain_csv(text) ? WeatherFormat::kPlainCsv : WeatherFormat::kUnknown;
}

}  // namespace voltwright::files
