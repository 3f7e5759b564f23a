// Reads catalogue/published_curves/*.json.
#include <regex>

#include "files/json_reader.h"
#include "tools/draw_method/points.h"

namespace voltwright::tools {

namespace {

using nlohmann::json;

constexpr double kMost = 1e6;
constexpr double kMost_V = 6.0;

constexpr std::pair<const char*, Measured> kNames[] = {
    {"charge_voltage_V_by_soc", Measured::kChargeVoltageByCharge},
    {"voltage_V_by_soc", Measured::kVoltageByCharge},
    {"voltage_V_by_s", Measured::kVoltageByTime},
    {"delivered_Ah_by_A", Measured::kChargeByCurrent},
    {"delivered_Wh_by_A", Measured::kEnergyByCurrent},
    {"duration_h_by_A", Measured::kHoursByCurrent},
    {"duration_min_by_Ah", Measured::kMinutesBySize},
    {"capacity_share_by_C", Measured::kShareByTemperature}};

std::vector<std::string> keys_of(const json& block) {
  static const std::regex kCitation("bib:([A-Za-z0-9_]+)");
  std::vector<std::string> keys;
  for (const char* origin : {"source", "derived_from", "assumption"}) {
    if (!block.contains(origin)) continue;
    const std::string text = block[origin].dump();
    for (std::sregex_iterator it(text.begin(), text.end(), kCitation), end; it != end; ++it) {
      keys.push_back((*it)[1]);
    }
  }
  return keys;
}

bool is_point(const json& value) {
  return value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number();
}

Series read_series(const json& block, const std::string& where, base::Problems& problems) {
  files::JsonReader reader(block, where, problems);
  Series series;
  series.title = reader.text("title");
  series.fitted = reader.flag("fitted");
  if (reader.has("current_A")) series.current_A = reader.number("current_A", 1e-6, kMost);
  for (const auto& [name, measured] : kNames) {
    if (!block.contains(name)) continue;
    series.measured = measured;
    for (const json& point : block[name]) {
      if (is_point(point)) series.points.push_back({point[0].get<double>(), point[1].get<double>()});
    }
    if (series.points.size() != block[name].size()) {
      reader.report(name, "This must be a list of points.", "", "[[x, y], ...]",
                    "Write each as two numbers.");
    }
  }
  if (series.points.empty()) {
    reader.report("title", "The series has no points.", "", "", "Give one of the lists of points.");
  }
  files::JsonReader tolerance = reader.object("tolerance");
  if (gives_voltage(series.measured)) {
    series.tolerance_V = tolerance.number("tolerance_V", 1e-4, 1.0);
  } else {
    series.relative_tolerance = tolerance.number("relative_tolerance", 1e-4, 1.0);
  }
  series.keys = keys_of(block);
  return series;
}

PublishedSet read_set(const json& block, const std::string& where, base::Problems& problems) {
  files::JsonReader reader(block, where, problems);
  PublishedSet set;
  set.title = reader.text("title");
  files::JsonReader specimen = reader.object("specimen");
  set.capacity_Ah = specimen.number("capacity_Ah", 1e-3, kMost);
  set.temperature_C = specimen.number("temperature_C", -60.0, 90.0);
  set.end_V = specimen.number("end_V", 0.1, kMost_V);
  if (block.contains("series")) {
    for (const json& series : block["series"]) {
      set.series.push_back(
          read_series(series, where + ", series " + std::to_string(set.series.size() + 1), problems));
    }
  }
  if (set.series.empty()) reader.report("series", "There is no series.", "", "", "Give at least one.");
  return set;
}

}  // namespace

base::Result<std::vector<PublishedCurves>> read_published(std::span<const files::EmbeddedFile> files) {
  std::vector<PublishedCurves> all;
  base::Problems problems;
  for (const files::EmbeddedFile& file : files) {
    if (!file.name.starts_with("published_curves/") || !file.name.ends_with(".json")) continue;
    const std::string name(file.name);
    const auto value = files::parse_json(file.bytes, name, problems);
    if (!value) continue;
    files::JsonReader reader(*value, name, problems);
    PublishedCurves curves;
    curves.chemistry = reader.text("chemistry");
    if (value->contains("sets")) {
      for (const json& set : (*value)["sets"]) {
        curves.sets.push_back(
            read_set(set, name + ", set " + std::to_string(curves.sets.size() + 1), problems));
      }
    }
    all.push_back(std::move(curves));
  }
  if (!problems.empty()) return problems;
  return all;
}

}  // namespace voltwright::tools
