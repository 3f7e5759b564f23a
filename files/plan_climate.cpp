// Monthly figures in place of those of the climate tables.
#include <fmt/core.h>

#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "engine/units/month_names.h"
#include "files/climate_override.h"
#include "files/daylight.h"
#include "files/plan_parts.h"
#include "files/toml_tree.h"

namespace voltwright::files {
namespace {

using Months = sky::ClimateOverride::Months;

// What the made weather can follow (docs/method/climate.md).
constexpr double kLowestClearness = 0.1;
constexpr double kHighestClearness = 0.8;
// Below this there is no light to speak of, and its share of what arrives above the air means nothing.
constexpr double kDarkMonth_kWh_m2_day = 0.2;
constexpr double kMostLight_kWh_m2_day = 12.0;

bool is_number(const TomlNode& node) {
  return (node.kind == TomlKind::kWhole || node.kind == TomlKind::kReal) && std::isfinite(node.real);
}

/// Twelve numbers in a list, or some months by name: { jan = 1.2, feb = 2.1 }.
Months read_months(Section& section, const char* key, double min, double max) {
  Months months;
  const TomlNode* node = section.find(key);
  if (node == nullptr) return months;
  if (node->kind == TomlKind::kTable) {
    Section table(section.reading(), *node, section.field(key));
    for (std::size_t m = 0; m < months.size(); ++m) months[m] = table.number(units::kMonthKeys[m], min, max);
    table.finish();
    return months;
  }
  if (node->kind != TomlKind::kArray || node->items.size() != months.size()) {
    base::Problem& problem = section.note(*node, key, "A number for each month is wanted, January first.");
    problem.given =
        node->kind == TomlKind::kArray ? fmt::format("{} values", node->items.size()) : shown(*node);
    problem.remedy =
        fmt::format("Write twelve numbers in brackets, or some months: {} = {{ jan = 1, feb = 2 }}.", key);
    return months;
  }
  for (std::size_t m = 0; m < months.size(); ++m) {
    const TomlNode& item = node->items[m];
    if (is_number(item) && item.real >= min && item.real <= max) {
      months[m] = item.real;
      continue;
    }
    base::Problem& problem = section.note(
        item, key,
        fmt::format("The number for {} lies outside what is possible here.", units::kMonthKeys[m]));
    problem.given = shown(item);
    problem.limit = fmt::format("{} to {}", min, max);
  }
  return months;
}

/// Light on the level as a share of what arrives above the air. Months of (nearly) no sun stay empty.
Months clearness_of(Section& section, const char* key, const Months& light_kWh_m2_day, double latitude_deg) {
  Months clearness;
  const MonthlyDaylight daylight = monthly_daylight(latitude_deg);
  for (std::size_t m = 0; m < clearness.size(); ++m) {
    const double above_air = daylight.horizontal_kWh_m2_day[m];
    if (!light_kWh_m2_day[m] || above_air < kDarkMonth_kWh_m2_day) continue;
    const double light = light_kWh_m2_day[m].value_or(0.0);
    const double share = light / above_air;
    if (share >= kLowestClearness && share <= kHighestClearness) {
      clearness[m] = share;
      continue;
    }
    base::Problem& problem = section.note(
        key, fmt::format("So much light does not fit {} at this latitude.", units::kMonthKeys[m]));
    problem.given = fmt::format("{}", light);
    problem.limit = fmt::format("{:.2f} to {:.2f} kWh/m2 a day", kLowestClearness * above_air,
                                kHighestClearness * above_air);
  }
  return clearness;
}

sky::ClimateOverride read_keys(Section& section, double latitude_deg) {
  constexpr const char* kLight = "ground_kWh_m2_day";
  sky::ClimateOverride given;
  given.clearness = read_months(section, "clearness", kLowestClearness, kHighestClearness);
  const Months light = read_months(section, kLight, 0.0, kMostLight_kWh_m2_day);
  given.temperature_C = read_months(section, "temperature_C", -80.0, 50.0);
  given.daily_range_K = read_months(section, "daily_range_K", 0.5, 30.0);
  given.wind_m_s = read_months(section, "wind_m_s", 0.0, 40.0);
  if (section.has("clearness") && section.has(kLight)) {
    section.note(kLight, fmt::format("`clearness` and `{}` both say how much light there is.", kLight))
        .remedy = "Keep one of them.";
  } else if (section.has(kLight)) {
    given.clearness = clearness_of(section, kLight, light, latitude_deg);
  }
  section.finish();
  return given;
}

}  // namespace

void read_leg_climate(Section& section, journey::Leg& leg) {
  std::optional<Section> climate = section.section("climate");
  if (!climate) return;
  leg.climate = read_keys(*climate, leg.place.site.latitude_deg);
  if (!leg.weather_file.empty()) {
    section.warn("climate", "The weather file decides here, so `climate` has no effect.",
                 "Leave out `weather` or `climate`.");
  }
}

base::Result<sky::ClimateOverride> read_climate_override(std::string_view text, const std::string& name,
                                                         double latitude_deg) {
  const TomlTree tree = read_toml(text, name);
  const Catalogue no_catalogue;
  const Gazetteer no_places;
  PlanReading reading{.file = name,
                      .catalogue = no_catalogue,
                      .gazetteer = no_places,
                      .complete = tree.complete,
                      .problems = tree.problems,
                      .start = {},
                      .moved = {},
                      .track = {}};
  Section section(reading, tree.root, "");
  const sky::ClimateOverride given = read_keys(section, latitude_deg);
  if (!reading.problems.empty()) return reading.problems;
  return given;
}

}  // namespace voltwright::files
