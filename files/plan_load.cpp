// Loads and the inverter.
#include <fmt/core.h>

#include <algorithm>
#include <cstddef>
#include <string>

#include "engine/units/clock_text.h"
#include "engine/units/number.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"
#include "files/suggest.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr double kMostPower_W = 100'000.0;

const Span<int> kClock = {0, 86400, "00:00 to 24:00", "\"18:00\""};
// Windows have no order; the parser has checked them, so every one lies inside this span.
struct AnyWindow {
  DayWindow window;
  bool operator>=(const AnyWindow&) const { return true; }
  bool operator<=(const AnyWindow&) const { return true; }
};

base::Result<AnyWindow> parse_any_window(std::string_view text) {
  base::Result<DayWindow> window = parse_day_window(text);
  if (!window) return window.problems();
  return AnyWindow{window.value()};
}

const Span<AnyWindow> kWindow = {{}, {}, "", "\"18:00-22:00\""};

base::Result<double> parse_factor(std::string_view text) {
  std::string plain = plain_text(text);
  if (!plain.empty() && (plain[0] == 'x' || plain[0] == 'X')) plain.erase(0, 1);
  base::Result<LeadingNumber> number = read_leading_number(plain, "A factor such as \"x3\"");
  if (!number) {
    base::Problem problem = number.problems().front();
    problem.given = text;
    return problem;
  }
  if (!number.value().rest.empty() && number.value().rest != "x") {
    base::Problem problem;
    problem.what = "A factor on the running power is wanted, such as \"x3\".";
    problem.given = text;
    return problem;
  }
  return number.value().value;
}

const demand::Appliance* appliance_of(const Catalogue& catalogue, std::string_view id) {
  const auto& all = catalogue.appliances;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const demand::Appliance& a) { return a.id == id; });
  return found == all.end() ? nullptr : &*found;
}

demand::Load from_appliance(const demand::Appliance& a) {
  demand::Load load;
  load.name = a.name;
  load.appliance = a.id;
  load.power = watts(a.power_W.typical);
  load.standby = watts(a.standby_W);
  load.surge_factor = a.surge_factor;
  load.surge_time = seconds(a.surge_s);
  load.feed = a.feed;
  load.need = a.need;
  load.pattern = a.pattern;
  load.hours_per_day = hours(a.hours_per_day);
  load.window = {a.window_from_s, a.window_to_s};
  load.events_per_day = a.events_per_day;
  load.event_length = seconds(60.0 * a.event_min);
  load.cooling.inside = celsius(a.inside_C);
  load.cooling.heat_leak = watts_per_kelvin(a.heat_leak_W_per_K);
  load.cooling.cop_at_25C = a.cop_at_25C;
  return load;
}

const demand::Appliance* read_appliance(Section& section) {
  const auto id = section.text("appliance");
  if (!id) return nullptr;
  const Catalogue& catalogue = section.reading().catalogue;
  const demand::Appliance* appliance = appliance_of(catalogue, *id);
  if (appliance != nullptr) return appliance;
  std::vector<std::string> ids;
  ids.reserve(catalogue.appliances.size());
  for (const demand::Appliance& a : catalogue.appliances) ids.push_back(a.id);
  std::string near;
  for (const std::string& word : near_words(*id, ids, 3)) near += (near.empty() ? "" : ", ") + word;
  section.note("appliance", fmt::format("The catalogue has no appliance \"{}\".", shown(*id))).remedy =
      near.empty() ? "Leave the key out and give power and hours." : fmt::format("Near: {}.", near);
  return nullptr;
}

void read_hours(Section& section, demand::Load& load) {
  load.pattern = demand::Pattern::kHours;
  section.set<Duration>("hours", parse_duration_per_day,
                        {seconds(1), hours(24), "1 s/day to 24 h/day", "\"4 h/day\""}, load.hours_per_day);
}

void read_events(Section& section, demand::Load& load, bool each_is_known) {
  load.pattern = demand::Pattern::kEvents;
  section.set<double>("events", parse_count_per_day, {0.001, 5000.0, "0.001 to 5000 /day", "\"6 /day\""},
                      load.events_per_day);
  const Span<Duration> span = {seconds(1), hours(24), "1 s to 24 h", "\"3 min\""};
  if (each_is_known) {
    section.set<Duration>("each", parse_duration, span, load.event_length);
  } else {
    section.set_wanted<Duration>("each", parse_duration, span, load.event_length);
  }
  if (section.has("window")) {
    AnyWindow window;
    section.set<AnyWindow>("window", parse_any_window, kWindow, window);
    load.window = window.window;
  }
  double room_s = load.window.to_s - load.window.from_s;
  if (room_s <= 0.0) room_s += kSecondsPerDay;
  if (load.events_per_day * as_seconds(load.event_length) > room_s * (1.0 + 1e-9)) {
    base::Problem& problem =
        section.note("events", "The runs of a day take longer than there is time for them.");
    problem.given = fmt::format("{:.4g} h", load.events_per_day * as_hours(load.event_length));
    problem.limit = fmt::format("up to {:.4g} h", room_s / kSecondsPerHour);
  }
}

void read_cooling(Section& section, demand::Load& load, bool leak_is_known) {
  load.pattern = demand::Pattern::kTemperature;
  std::optional<Section> cooling = section.section("cooling");
  if (!cooling) return;
  cooling->set<Temperature>("inside", parse_temperature,
                            {celsius(-40), celsius(25), "-40 to 25 degC", "\"4 degC\""}, load.cooling.inside);
  const Span<HeatConductance> leak = {watts_per_kelvin(0.01), watts_per_kelvin(50), "0.01 to 50 W/K",
                                      "\"1.1 W/K\""};
  if (leak_is_known) {
    cooling->set<HeatConductance>("heat_leak", parse_heat_conductance, leak, load.cooling.heat_leak);
  } else {
    cooling->set_wanted<HeatConductance>("heat_leak", parse_heat_conductance, leak, load.cooling.heat_leak);
  }
  if (const auto cop = cooling->number("cop", 0.2, 10.0)) load.cooling.cop_at_25C = *cop;
  cooling->finish();
}

/// The keys that say when and how long a load runs; with none of them the appliance's own habit stays.
void read_pattern(Section& section, demand::Load& load, const demand::Appliance* appliance) {
  std::vector<std::string> given;
  for (const char* key : {"always", "hours", "events", "cooling", "window"}) {
    if (section.has(key)) given.emplace_back(key);
  }
  section.know({"from", "each"});
  // A window goes with events; alone it is a pattern of its own.
  if (given.size() == 2 && given[0] == "events" && given[1] == "window") given.pop_back();
  if (given.size() > 1) {
    base::Problem& problem =
        section.note(given[1], fmt::format("`{}` and `{}` contradict each other.", given[0], given[1]));
    problem.limit = "one of always, hours (with from), window, events (with each and window), cooling";
    return;
  }
  const bool is = !given.empty();
  const bool from_catalogue = appliance != nullptr;
  const demand::Pattern habit = load.pattern;
  if (!is && !from_catalogue) {
    if (section.reading().complete) {
      section.note("", "Nothing says when this load runs.").remedy =
          "Add one of always = true, hours = \"4 h/day\", window = \"18:00-22:00\", events = \"6 /day\" with "
          "each = "
          "\"3 min\", or cooling.";
    }
  } else if (is && given[0] == "always") {
    load.pattern = demand::Pattern::kAlwaysOn;
    if (const auto on = section.flag("always"); on && !*on) {
      section.note("always", "A load that does not always run needs another key for its hours.").remedy =
          "Write hours, window, events or cooling in place of always.";
    }
  } else if (is && given[0] == "hours") {
    read_hours(section, load);
  } else if (is && given[0] == "window") {
    load.pattern = demand::Pattern::kWindow;
    AnyWindow window;
    section.set<AnyWindow>("window", parse_any_window, kWindow, window);
    load.window = window.window;
  } else if (is && given[0] == "events") {
    if (habit != demand::Pattern::kEvents) load.window = {};
    read_events(section, load,
                from_catalogue && habit == demand::Pattern::kEvents && as_seconds(load.event_length) > 0.0);
  } else if (is && given[0] == "cooling") {
    read_cooling(section, load, from_catalogue && as_watts_per_kelvin(load.cooling.heat_leak) > 0.0);
  } else if (habit == demand::Pattern::kEvents && section.has("each")) {
    read_events(section, load, true);
  }
  const bool runs_hours = load.pattern == demand::Pattern::kHours;
  if (section.has("from")) {
    if (!runs_hours)
      section.note("from", "`from` belongs to `hours`.").remedy = "Leave it out, or give hours.";
    section.set<int>("from", parse_clock, kClock, load.window.from_s);
    load.window.from_s %= 86400;
  }
  if (section.has("each") && load.pattern != demand::Pattern::kEvents) {
    section.note("each", "`each` belongs to `events`.").remedy = "Leave it out, or give events.";
  }
}

}  // namespace

demand::Load read_load(Section section, Voltage system) {
  const bool names_appliance = section.has("appliance");
  const demand::Appliance* appliance = read_appliance(section);
  demand::Load load = appliance == nullptr ? demand::Load() : from_appliance(*appliance);
  if (const auto name = section.text("name")) load.name = *name;
  if (load.name.empty() && !names_appliance) section.note_missing("name", "\"Cabin lights\"");
  if (const auto count = section.number("count", 0.01, 1000.0)) load.count = *count;
  const Span<Power> power = {watts(0.001), watts(kMostPower_W), "1 mW to 100 kW", "\"45 W\""};
  if (names_appliance) {
    section.set<Power>("power", parse_power, power, load.power);
  } else {
    section.set_wanted<Power>("power", parse_power, power, load.power);
  }
  section.set<Power>("standby", parse_power, {watts(0), watts(1000), "0 W to 1 kW", "\"0.5 W\""},
                     load.standby);
  section.set<double>("surge", parse_factor, {1.0, 20.0, "x1 to x20", "\"x3\""}, load.surge_factor);
  section.set<Duration>("surge_time", parse_duration, {seconds(0), seconds(600), "0 s to 10 min", "\"1 s\""},
                        load.surge_time);
  if (const auto i = section.choice("feed", {"dc", "inverter"})) {
    load.feed = *i == 0 ? demand::Feed::kDirect : demand::Feed::kInverter;
  }
  if (const auto i = section.choice("need", {"essential", "comfort"})) {
    load.need = *i == 0 ? demand::Need::kEssential : demand::Need::kComfort;
  }
  if (const auto i = section.choice("when", {"occupied", "always", "driving", "parked"})) {
    static constexpr demand::Presence kPresence[] = {demand::Presence::kOccupied, demand::Presence::kAlways,
                                                     demand::Presence::kDriving, demand::Presence::kParked};
    load.presence = kPresence[*i];
  }
  if (names_appliance && appliance == nullptr) {
    section.know({"always", "hours", "from", "window", "events", "each", "cooling"});
  } else {
    read_pattern(section, load, appliance);
  }
  read_far_feed(section, system, load);
  section.finish();
  return load;
}

demand::Inverter read_inverter(Section section, Voltage system) {
  demand::Inverter inverter;
  const double system_V = as_volts(system);
  section.set_wanted<Power>("rated", parse_power,
                            {watts(20), watts(kMostPower_W), "20 W to 100 kW", "\"2 kW\""}, inverter.rated);
  inverter.surge = inverter.rated;
  section.set<Power>("surge", parse_power, {watts(20), watts(4 * kMostPower_W), "20 W to 400 kW", "\"4 kW\""},
                     inverter.surge);
  section.set_wanted<Power>("idle", parse_power, {watts(0), watts(1000), "0 W to 1 kW", "\"18 W\""},
                            inverter.idle);
  const Span<Fraction> loss = {fraction(0.0), fraction(0.5), "0 % to 50 %", "\"3 %\""};
  Fraction linear = fraction(inverter.linear_loss);
  Fraction quadratic = fraction(inverter.quadratic_loss);
  section.set<Fraction>("linear_loss", parse_fraction, loss, linear);
  section.set<Fraction>("quadratic_loss", parse_fraction, loss, quadratic);
  inverter.linear_loss = as_fraction(linear);
  inverter.quadratic_loss = as_fraction(quadratic);
  // Common settings of inverters for 12 V, no source; in proportion for 24 V and 48 V.
  inverter.cut_off = volts(10.5 * system_V / 12.0);
  inverter.restart = volts(12.5 * system_V / 12.0);
  const Span<Voltage> around = {volts(0.6 * system_V), volts(1.4 * system_V),
                                "0.6 to 1.4 times the system voltage", "\"10.5 V\""};
  section.set<Voltage>("cut_off", parse_voltage, around, inverter.cut_off);
  section.set<Voltage>("restart", parse_voltage, around, inverter.restart);
  if (const auto off = section.flag("off_when_unused")) inverter.off_when_unused = *off;
  if (inverter.surge < inverter.rated) {
    base::Problem& problem = section.note("surge", "The surge power lies below the rated power.");
    problem.given = fmt::format("{:.6g} W", as_watts(inverter.surge));
    problem.limit = fmt::format("from {:.6g} W", as_watts(inverter.rated));
  }
  if (inverter.restart <= inverter.cut_off) {
    base::Problem& problem = section.note(section.has("restart") ? "restart" : "cut_off",
                                          "The inverter would restart below its cut-off.");
    problem.given = fmt::format("restart {:.4g} V, cut-off {:.4g} V", as_volts(inverter.restart),
                                as_volts(inverter.cut_off));
    problem.limit = "restart above cut-off";
  }
  section.finish();
  return inverter;
}

}  // namespace voltwright::files
