#include "files/plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstdint>
#include <exception>
#include <utility>

#include "engine/season/system.h"
#include "engine/units/parse.h"
#include "files/fingerprint.h"
#include "files/plan_money.h"
#include "files/plan_parts.h"
#include "files/plan_section.h"
#include "files/text_problem.h"
#include "files/toml_tree.h"

namespace voltwright::files {
namespace {

constexpr std::size_t kMostLegs = 2000;

void read_top(Section& top, advise::Plan& plan, const std::string& file) {
  plan.name = top.text("name").value_or(file);
  plan.note = top.text("note").value_or("");
  if (const auto seed = top.whole("seed", 0, 9'007'199'254'740'991)) {
    plan.seed = static_cast<std::uint64_t>(*seed);
  }
  if (const auto seasons = top.whole("seasons", 1, 100'000)) plan.seasons = static_cast<int>(*seasons);
  read_weather_model(top, plan);
  const Span<units::Voltage> any = {units::volts(1), units::volts(1000), "12 V, 24 V or 48 V", "\"12 V\""};
  if (const auto system = top.value<units::Voltage>("system_voltage", units::parse_voltage, any)) {
    const double volts = units::as_volts(*system);
    if (volts == 12.0 || volts == 24.0 || volts == 48.0) {
      plan.system_voltage = *system;
    } else {
      base::Problem& problem =
          top.note("system_voltage", "The system voltage is not one of those that are sold.");
      problem.given = fmt::format("{} V", volts);
      problem.limit = "12 V, 24 V or 48 V";
    }
  }
  if (const auto currency = top.text("currency")) {
    const bool is_code = currency->size() == 3 && std::all_of(currency->begin(), currency->end(),
                                                              [](char c) { return c >= 'A' && c <= 'Z'; });
    if (is_code) {
      plan.currency = *currency;
    } else {
      base::Problem& problem = top.note("currency", "A currency is written as three capital letters.");
      problem.given = shown(*currency);
      problem.remedy = "Write currency = \"EUR\".";
      plan.currency.clear();
    }
  }
  if (const auto rule = top.choice("depth_rule", {"practice", "protection"})) {
    plan.depth_rule = *rule == 0 ? advise::DepthRule::kPractice : advise::DepthRule::kProtection;
  }
  if (const auto prefer = top.choice("prefer", {"cost per year", "price", "mass"})) {
    static constexpr advise::Preference kPreferences[] = {
        advise::Preference::kCostPerYear, advise::Preference::kPrice, advise::Preference::kMass};
    plan.preference = kPreferences[*prefer];
  }
}

void read_cables(Section& top, advise::Plan& plan) {
  std::optional<Section> cables = top.section("cables");
  const bool has_inverter = top.has("inverter");
  if (!cables) {
    if (!top.has("cables") && top.reading().complete) {
      top.note("", "The cable from the bank to the bus is missing.").remedy =
          "Add [cables.main] with one_way = \"1.5 m\" and area = \"35 mm2\".";
    }
    return;
  }
  if (auto main = cables->section("main")) {
    plan.main_cable = read_cable(std::move(*main));
  } else if (!cables->has("main")) {
    cables->note_missing("main", "{ one_way = \"1.5 m\", area = \"35 mm2\" }");
  }
  if (auto inverter = cables->section("inverter")) {
    plan.inverter_cable = read_cable(std::move(*inverter));
  } else if (has_inverter && !cables->has("inverter")) {
    cables->note_missing("inverter", "{ one_way = \"1 m\", area = \"50 mm2\" }");
  }
  cables->finish();
}

void read_loads(Section& top, advise::Plan& plan) {
  std::vector<Section> sections = top.sections("load", 500);
  for (Section& section : sections) {
    plan.loads.push_back(read_load(section, plan.system_voltage));
    const bool needs_inverter = plan.loads.back().feed == demand::Feed::kInverter;
    if (needs_inverter && !top.has("inverter") && top.reading().complete) {
      section.note("feed", "The load is fed by an inverter, but the plan has none.").remedy =
          "Add [inverter] with rated and idle power, or write feed = \"dc\".";
    }
  }
  const auto far =
      std::count_if(plan.loads.begin(), plan.loads.end(), [](const auto& l) { return l.far.has_value(); });
  if (far > static_cast<std::ptrdiff_t>(season::kMostFarLoads)) {
    base::Problem& problem = top.note("load", "Too many loads have a cable or a cut-off of their own.");
    problem.given = fmt::format("{}", far);
    problem.limit = fmt::format("at most {}", season::kMostFarLoads);
    problem.remedy = "Keep the farthest and the most sensitive; the others hang on the bus.";
  }
  if (!top.has("load") && top.reading().complete) {
    top.note("load", "No load yet.").remedy = "Add [[load]] with name, power and hours.";
  }
}

void read_sources(Section& top, advise::Plan& plan) {
  for (Section& section : top.sections("solar", 50)) plan.arrays.push_back(read_solar(section));
  if (auto engine = top.section("engine")) plan.engine = read_engine(std::move(*engine));
  if (auto mains = top.section("mains")) plan.mains = read_mains(std::move(*mains));
  if (auto generator = top.section("generator")) {
    plan.generator = read_generator(std::move(*generator));
    if (!top.has("mains") && top.reading().complete) {
      top.note("generator", "The generator set has no charger to feed.").remedy =
          "Add [mains] with output_limit: the set feeds that charger.";
    }
  }
  if (auto wind = top.section("wind")) plan.wind = read_wind(std::move(*wind));
  if (auto water = top.section("water")) plan.water = read_water(std::move(*water));
  std::optional<Section> chargers = top.section("chargers");
  if (!chargers) return;
  const auto regulate = [&](const char* key, supply::Regulation* regulation) {
    std::optional<Section> section = chargers->section(key);
    if (!section) return;
    if (regulation == nullptr) {
      section->note("", fmt::format("The plan has no source \"{}\" to set a charger for.", key)).remedy =
          "Leave it out, or add the source.";
      return;
    }
    read_regulation(std::move(*section), plan.system_voltage, *regulation);
  };
  regulate("solar", plan.arrays.empty() ? nullptr : &plan.solar_charging);
  regulate("engine", plan.engine ? &plan.engine->regulation : nullptr);
  regulate("mains", plan.mains ? &plan.mains->regulation : nullptr);
  regulate("wind", plan.wind ? &plan.wind->regulation : nullptr);
  regulate("water", plan.water ? &plan.water->regulation : nullptr);
  chargers->finish();
}

/// The file that gives the legs.
void read_track(Section& top, Section journey) {
  const auto track = journey.text("track");
  if (track && !track->empty()) {
    top.reading().track = *track;
  } else if (!journey.has("track") || track) {
    journey.note_missing("track", "\"summer.gpx\"");
  }
  if (top.has("leg")) {
    journey.note("track", "The legs come from the track, but the plan has legs of its own too.").remedy =
        "Keep one of them; `voltwright legs` prints those of a track, to be changed by hand.";
  }
  journey.finish();
}

void read_journey(Section& top, advise::Plan& plan) {
  if (auto journey = top.section("journey")) {
    read_track(top, std::move(*journey));
    if (!top.has("leg")) return;
  }
  plan.legs = read_legs(top.sections("leg", kMostLegs));
  if (!top.has("leg") && top.reading().complete) {
    top.note("leg", "No leg yet: nothing says where and when.").remedy =
        "Add [[leg]] with place, from and to, or [journey] with track.";
  }
}

/// Things that contradict no rule but hardly are what was meant.
void warn_of_unused(Section& top, const advise::Plan& plan) {
  const auto drives = [](const journey::Leg& leg) { return units::as_seconds(leg.drive_per_day) > 0.0; };
  const auto has_shore = [](const journey::Leg& leg) { return leg.shore_power.has_value(); };
  const bool any_drive = std::any_of(plan.legs.begin(), plan.legs.end(), drives);
  const bool any_shore = std::any_of(plan.legs.begin(), plan.legs.end(), has_shore);
  if (any_drive && !plan.engine && !plan.water) {
    top.warn("engine", "Legs drive, but nothing says how the engine charges.",
             "Add [engine], or leave it so.");
  }
  if (any_shore && !plan.mains) {
    top.warn("mains", "Legs have shore power, but the plan has no mains charger.",
             "Add [mains] with output_limit.");
  }
  if (plan.engine && !any_drive) {
    top.warn("engine", "No leg drives, so the engine never charges.", "Add drive = \"1 h/day\" to a leg.");
  }
  if (plan.mains && !any_shore && !plan.generator) {
    top.warn("mains", "No leg has shore power, so the mains charger never runs.",
             "Add shore = \"all day\" to a leg.");
  }
  if (plan.water && !any_drive) {
    top.warn("water", "No leg is under way, so the water never turns the generator.",
             "Add drive = \"6 h/day\" to a leg.");
  }
  if (plan.arrays.empty() && !plan.engine && !plan.mains && !plan.wind && !plan.water) {
    top.warn("", "Nothing charges the bank.", "Add [[solar]], [engine] or [mains].");
  }
}

void read_all(PlanReading& reading, const TomlTree& tree, advise::Plan& plan) {
  Section top(reading, tree.root, "");
  if (!format_is_known(top, "plan files", kPlanFormat)) return;
  read_top(top, plan, reading.file);
  if (auto limits = top.section("limits")) plan.limits = read_limits(std::move(*limits), plan.currency);
  if (auto bank = top.section("bank")) plan.surroundings = read_surroundings(std::move(*bank));
  if (auto inverter = top.section("inverter")) {
    plan.inverter = read_inverter(std::move(*inverter), plan.system_voltage);
  }
  read_cables(top, plan);
  read_loads(top, plan);
  read_sources(top, plan);
  read_journey(top, plan);
  if (auto incumbent = top.section("incumbent")) {
    plan.incumbent = read_incumbent(std::move(*incumbent), plan.system_voltage);
  }
  if (auto candidates = top.section("candidates")) {
    plan.candidates = read_candidates(std::move(*candidates), plan.system_voltage);
  }
  if (auto money = top.section("money")) plan.money = read_money(std::move(*money), plan.currency);
  top.finish();
  if (!base::has_error(reading.problems) && !plan.legs.empty()) warn_of_unused(top, plan);
}

}  // namespace

base::Result<ReadPlan> read_plan(std::string_view text, const std::string& name, const Catalogue& catalogue,
                                 const Gazetteer& gazetteer, std::string_view start) {
  PlanReading reading{name, catalogue, gazetteer, true, {}, std::string(start), {}, {}};
  ReadPlan read;
  try {
    TomlTree tree = read_toml(text, name);
    reading.complete = tree.complete;
    reading.problems = std::move(tree.problems);
    read_all(reading, tree, read.plan);
  } catch (const std::exception& error) {
    base::Problem problem;
    problem.where.file = name;
    problem.what = fmt::format("The plan could not be read ({}).", error.what());
    reading.problems.push_back(std::move(problem));
  }
  sort_and_limit(reading.problems, name);
  if (base::has_error(reading.problems)) return std::move(reading.problems);
  read.warnings = std::move(reading.problems);
  read.track = std::move(reading.track);
  read.moved = std::move(reading.moved);
  read.mark = Fingerprint().add(text).mark();
  return read;
}

base::Problems take_legs(std::string_view legs, const std::string& name, const Catalogue& catalogue,
                         const Gazetteer& gazetteer, std::string_view start, ReadPlan& read) {
  PlanReading reading{name, catalogue, gazetteer, true, {}, std::string(start), {}, {}};
  const TomlTree tree = read_toml(legs, name);
  reading.problems = tree.problems;
  Section top(reading, tree.root, "");
  read.plan.legs = read_legs(top.sections("leg", kMostLegs));
  read.moved = std::move(reading.moved);
  read.mark = Fingerprint().add(read.mark).add(legs).mark();
  if (base::has_error(reading.problems)) read.plan.legs.clear();
  return std::move(reading.problems);
}

}  // namespace voltwright::files
