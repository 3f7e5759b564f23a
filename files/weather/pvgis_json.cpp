#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <utility>

#include "files/json_reader.h"
#include "files/weather/pvgis.h"

namespace voltwright::files {

namespace {

using nlohmann::json;

/// The value found by walking down the keys, or null.
const json* find(const json& top, std::initializer_list<const char*> path) {
  const json* here = &top;
  for (const char* key : path) {
    if (!here->is_object()) return nullptr;
    const auto found = here->find(key);
    if (found == here->end()) return nullptr;
    here = &*found;
  }
  return here;
}

class PvgisJson {
 public:
  PvgisJson(const json& top, const std::string& name) : top_(top), problems_(name) {}

  base::Result<WeatherSeries> read(const WeatherOptions& options) {
    file_.latitude_deg = fact({"inputs", "location", "latitude"}, -90.0, 90.0);
    file_.longitude_deg = fact({"inputs", "location", "longitude"}, -180.0, 180.0);
    file_.elevation_m = fact({"inputs", "location", "elevation"}, -500.0, 9000.0);
    file_.radiation_offset_h = fact({"inputs", "location", "irradiance_time_offset"}, -2.0, 2.0);
    file_.slope_deg = fact({"inputs", "mounting_system", "fixed", "slope", "value"}, 0.0, 90.0);
    file_.azimuth_deg = fact({"inputs", "mounting_system", "fixed", "azimuth", "value"}, -180.0, 180.0);
    const json* rows = find(top_, {"outputs", "tmy_hourly"});
    file_.typical = rows != nullptr;
    if (rows == nullptr) rows = find(top_, {"outputs", "hourly"});
    if (rows == nullptr || !rows->is_array()) {
      problems_.add(0, 0,
                    {.what = "The JSON holds no list of hours.",
                     .field = "outputs.tmy_hourly or outputs.hourly",
                     .given = "",
                     .limit = "",
                     .remedy = "Fetch a typical year or hourly values of PVGIS."});
      return problems_.take();
    }
    const char* key = file_.typical ? "time(UTC)" : "time";
    for (std::size_t i = 0; i < rows->size(); ++i) read_row((*rows)[i], i, key);
    if (!problems_.empty()) return problems_.take();
    return series_of(file_, problems_, options);
  }

 private:
  std::optional<double> fact(std::initializer_list<const char*> path, double lowest, double highest) {
    const json* value = find(top_, path);
    if (value == nullptr || value->is_null()) return std::nullopt;
    if (value->is_number() && value->get<double>() >= lowest && value->get<double>() <= highest) {
      return value->get<double>();
    }
    std::string name;
    for (const char* key : path) name += (name.empty() ? "" : ".") + std::string(key);
    problems_.add(0, 0,
                  {.what = "This must be a number in range.",
                   .field = name,
                   .given = value->dump(-1, ' ', false, json::error_handler_t::replace),
                   .limit = fmt::format("{:g} to {:g}", lowest, highest),
                   .remedy = "Fetch the file again."});
    return std::nullopt;
  }

  void read_row(const json& row, std::size_t index, const char* key) {
    const std::string where = fmt::format("outputs.{}[{}]", file_.typical ? "tmy_hourly" : "hourly", index);
    const json* time = find(row, {key});
    if (time == nullptr || !time->is_string()) {
      problems_.add(0, 0,
                    {.what = "This hour has no time.",
                     .field = where + "." + key,
                     .given = "",
                     .limit = "YYYYMMDD:HHMM",
                     .remedy = "Fetch the file again."});
      return;
    }
    PvgisRow entry;
    entry.time = time->get_ref<const std::string&>();
    for (std::size_t c = 0; c < kPvgisColumns; ++c) {
      const std::string name(kPvgisNames.at(c));
      const json* value = find(row, {name.c_str()});
      if (value == nullptr || value->is_null()) continue;
      file_.has.at(c) = true;
      const WeatherColumnRule& rule = rule_of(rule_for(static_cast<PvgisColumn>(c)));
      const double number = value->is_number() ? value->get<double>() + 0.0 : rule.highest + 1.0;
      if (number >= rule.lowest && number <= rule.highest) {
        entry.value.at(c) = number;
        continue;
      }
      std::string field = where;
      field.append(".").append(name);
      problems_.add(0, 0,
                    {.what = "This must be a number in range.",
                     .field = std::move(field),
                     .given = value->dump(-1, ' ', false, json::error_handler_t::replace),
                     .limit = fmt::format("{:g} to {:g}", rule.lowest, rule.highest),
                     .remedy = "Write null where the value is missing."});
    }
    file_.rows.push_back(entry);
  }

  const json& top_;
  WeatherProblems problems_;
  PvgisFile file_;
};

}  // namespace

base::Result<WeatherSeries> read_pvgis_json(std::string_view text, const std::string& name,
                                            const WeatherOptions& options) {
  base::Problems problems;
  const auto top = parse_json(text, name, problems);
  if (!top) return problems;
  return PvgisJson(*top, name).read(options);
}

}  // namespace voltwright::files
