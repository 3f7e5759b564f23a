#include "files/weather/column_titles.h"

#include <algorithm>
#include <utility>

#include "files/weather/lines.h"

namespace voltwright::files {

namespace {

struct UnitName {
  std::string_view name;
  ColumnUnit unit;
};

constexpr std::array<UnitName, 9> kRadiationUnits = {{
    {"kwhm2", {1000.0, 0.0, true}},
    {"kwhm", {1000.0, 0.0, true}},
    {"mjm2", {1.0e6 / 3600.0, 0.0, true}},
    {"jcm2", {10000.0 / 3600.0, 0.0, true}},
    {"whm2", {1.0, 0.0, true}},
    {"whm", {1.0, 0.0, true}},
    {"kwm2", {1000.0, 0.0, false}},
    {"wm2", {1.0, 0.0, false}},
    {"wm", {1.0, 0.0, false}},
}};
constexpr std::array<UnitName, 8> kTemperatureUnits = {{
    {"degc", {1.0, 0.0, false}},
    {"degf", {5.0 / 9.0, -160.0 / 9.0, false}},
    {"celsius", {1.0, 0.0, false}},
    {"fahrenheit", {5.0 / 9.0, -160.0 / 9.0, false}},
    {"kelvin", {1.0, -273.15, false}},
    {"c", {1.0, 0.0, false}},
    {"f", {5.0 / 9.0, -160.0 / 9.0, false}},
    {"k", {1.0, -273.15, false}},
}};
constexpr std::array<UnitName, 6> kWindUnits = {{
    {"kmh", {1.0 / 3.6, 0.0, false}},
    {"mph", {0.44704, 0.0, false}},
    {"knots", {1852.0 / 3600.0, 0.0, false}},
    {"kn", {1852.0 / 3600.0, 0.0, false}},
    {"kt", {1852.0 / 3600.0, 0.0, false}},
    {"ms", {1.0, 0.0, false}},
}};

using Names = std::vector<std::string_view>;

const std::array<Names, kWeatherColumns>& names() {
  static const std::array<Names, kWeatherColumns> kNames = {
      Names{"ghi", "gh", "global", "globalhorizontal", "globalhorizontalirradiance", "globalradiation",
            "globalhorizontalradiation", "shortwaveradiation", "globalirradiance", "swdown"},
      Names{"dni", "gbn", "directnormal", "directnormalirradiance", "directnormalradiation", "beamnormal"},
      Names{"dhi", "gdh", "diffuse", "diffusehorizontal", "diffusehorizontalirradiance", "diffuseradiation",
            "diffusehorizontalradiation"},
      Names{"temperature", "temp", "airtemperature", "tempair", "airtemp", "t2m", "temperature2m", "drybulb",
            "drybulbtemperature", "tamb", "ambienttemperature"},
      Names{"wind", "windspeed", "ws", "ws10m", "wspd", "windspeed10m"}};
  return kNames;
}

/// Small letters and digits of a text.
std::string plain(std::string_view text) {
  std::string result;
  for (const char c : lower_case(text)) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) result += c;
  }
  return result;
}

template <std::size_t N>
std::optional<ColumnUnit> unit_in(const std::array<UnitName, N>& units, std::string_view name) {
  for (const UnitName& unit : units) {
    if (unit.name == name) return unit.unit;
  }
  return std::nullopt;
}

std::optional<ColumnUnit> unit_of(WeatherColumn column, std::string_view name) {
  if (column == WeatherColumn::kTemperature) return unit_in(kTemperatureUnits, name);
  if (column == WeatherColumn::kWind) return unit_in(kWindUnits, name);
  return unit_in(kRadiationUnits, name);
}

bool is_name(WeatherColumn column, std::string_view name) {
  const Names& known = names().at(static_cast<std::size_t>(column));
  return std::find(known.begin(), known.end(), name) != known.end();
}

/// The unit of a title that is a name with a unit behind it and nothing between, "ghiwm2".
std::optional<ColumnUnit> unit_behind(WeatherColumn column, const std::string& whole) {
  const std::string_view view = whole;
  for (std::size_t cut = 1; cut < view.size(); ++cut) {
    if (!is_name(column, view.substr(0, cut))) continue;
    if (auto unit = unit_of(column, view.substr(cut))) return unit;
  }
  return std::nullopt;
}

/// What a title says of a column: "GHI (W/m2)", "ghi_W_m2" or "ghi".
std::optional<WeatherTitle> read_as(WeatherColumn column, std::string_view title, std::size_t index,
                                    std::string& unknown_unit) {
  const std::size_t open = title.find_first_of("([");
  const std::string whole = plain(title);
  if (is_name(column, whole)) return WeatherTitle{index, {}};
  if (open != std::string_view::npos && is_name(column, plain(title.substr(0, open)))) {
    const auto unit = unit_of(column, plain(title.substr(open)));
    if (!unit) unknown_unit = std::string(trimmed(title));
    return WeatherTitle{index, unit.value_or(ColumnUnit{})};
  }
  const auto unit = unit_behind(column, whole);
  if (!unit) return std::nullopt;
  return WeatherTitle{index, *unit};
}

void take_weather(std::string_view title, std::size_t index, WeatherTitles& titles) {
  for (std::size_t c = 0; c < kWeatherColumns; ++c) {
    if (titles.column.at(c).has_value()) continue;
    titles.column.at(c) = read_as(static_cast<WeatherColumn>(c), title, index, titles.unknown_unit);
    if (titles.column.at(c).has_value()) return;
  }
}

bool take_time(std::string_view title, std::size_t index, WeatherTitles& titles) {
  std::string name = plain(title);
  bool utc = false;
  if (name.size() > 3 && name.ends_with("utc")) {
    utc = true;
    name.resize(name.size() - 3);
  }
  const auto take = [&](std::optional<std::size_t>& slot) {
    if (!slot) slot = index;
    titles.utc = titles.utc || utc;
    return true;
  };
  if (name == "datetime" || name == "timestamp" || name == "date" || name == "utc") {
    titles.utc = titles.utc || name == "utc";
    return take(titles.time);
  }
  if (name == "time") return titles.time ? take(titles.clock) : take(titles.time);
  if (name == "year") return take(titles.year);
  if (name == "month" || name == "mo") return take(titles.month);
  if (name == "day" || name == "dy") return take(titles.day);
  if (name == "hour" || name == "hr") return take(titles.hour);
  if (name == "minute" || name == "min") return take(titles.minute);
  return false;
}

}  // namespace

bool WeatherTitles::usable() const {
  const bool timed = time.has_value() || (month && day && hour);
  return timed && std::any_of(column.begin(), column.end(), [](const auto& c) { return c.has_value(); });
}

WeatherTitles weather_titles(std::string_view line, char separator) {
  WeatherTitles titles;
  const auto fields = split_at(line, separator);
  titles.count = fields.size();
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const std::string_view field = trimmed(fields[i]);
    if (!take_time(field, i, titles)) take_weather(field, i, titles);
  }
  return titles;
}

}  // namespace voltwright::files
