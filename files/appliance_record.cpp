#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {
namespace {

constexpr int kSecondsPerHour = 3600;

int second_of_day(JsonReader& window, const char* key) {
  return static_cast<int>(window.number(key, 0.0, 24.0) * kSecondsPerHour);
}

}  // namespace

base::Result<demand::Appliance> read_appliance(std::string_view text, const std::string& name) {
  using demand::Feed;
  using demand::Need;
  using demand::Pattern;
  static constexpr std::pair<std::string_view, Feed> kFeeds[] = {{"direct", Feed::kDirect},
                                                                 {"inverter", Feed::kInverter}};
  static constexpr std::pair<std::string_view, Need> kNeeds[] = {{"essential", Need::kEssential},
                                                                 {"comfort", Need::kComfort}};
  static constexpr std::pair<std::string_view, Pattern> kPatterns[] = {
      {"always-on", Pattern::kAlwaysOn},
      {"hours", Pattern::kHours},
      {"window", Pattern::kWindow},
      {"events", Pattern::kEvents},
      {"temperature", Pattern::kTemperature}};
  constexpr double kMost_W = 1e5;
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  demand::Appliance result;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  result.id = record.text("id");
  result.name = record.text("name");
  result.feed = record.choice("feed", kFeeds);
  result.need = record.choice("need", kNeeds);
  result.pattern = record.choice("pattern", kPatterns);
  JsonReader power = record.object("power");
  result.power_W = power.range("power_W", 0.0, kMost_W);
  result.standby_W = power.number("standby_W", 0.0, kMost_W);
  JsonReader surge = record.object("surge");
  result.surge_factor = surge.number("surge_factor", 1.0, 50.0);
  result.surge_s = surge.number("surge_s", 0.0, 3600.0);
  if (record.has("energy")) {
    result.energy_Wh_day = record.object("energy").range("energy_Wh_per_day", 0.0, 1e6);
  }
  if (result.pattern == Pattern::kHours) {
    result.hours_per_day = record.object("use").number("hours_per_day_h", 0.0, 24.0);
  }
  if (result.pattern == Pattern::kEvents) {
    JsonReader use = record.object("use");
    result.events_per_day = use.number("events_per_day", 0.0, 1000.0);
    result.event_min = use.number("event_min", 0.01, 1440.0);
  }
  if (record.has("window")) {
    JsonReader window = record.object("window");
    result.window_from_s = second_of_day(window, "from_h");
    result.window_to_s = second_of_day(window, "to_h");
  }
  if (result.pattern == Pattern::kTemperature) {
    JsonReader cooling = record.object("cooling");
    result.inside_C = cooling.number("inside_C", -40.0, 25.0);
    result.heat_leak_W_per_K = cooling.number("heat_leak_W_per_K", 0.01, 100.0);
    result.cop_at_25C = cooling.number("cop_at_25C", 0.1, 10.0);
  }
  result.trust = record.text("trust");
  if (base::has_error(problems)) return problems;
  return result;
}

}  // namespace voltwright::files
