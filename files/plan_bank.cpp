// Limits, surroundings of the bank, cables, what is fitted now, and what may be chosen.
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

#include "engine/units/parse.h"
#include "files/plan_parts.h"
#include "files/suggest.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

template <class Record>
const Record* record_of(const std::vector<Record>& records, std::string_view id) {
  const auto found =
      std::find_if(records.begin(), records.end(), [&](const Record& r) { return r.id == id; });
  return found == records.end() ? nullptr : &*found;
}

template <class Record>
std::vector<std::string> ids_of(const std::vector<Record>& records) {
  std::vector<std::string> ids;
  ids.reserve(records.size());
  for (const Record& record : records) ids.push_back(record.id);
  return ids;
}

void note_unknown_id(Section& section, const TomlNode& at, std::string_view key, std::string_view kind,
                     const std::string& id, const std::vector<std::string>& known) {
  base::Problem& problem =
      section.note(at, key, fmt::format("The catalogue has no {} \"{}\".", kind, shown(id)));
  std::string near;
  for (const std::string& word : near_words(id, known, 3)) near += (near.empty() ? "" : ", ") + word;
  problem.remedy = near.empty() ? "The catalogue lists the names." : fmt::format("Near: {}.", near);
}

/// Batteries in series that make the system voltage; 0 if no whole number does.
int series_for(const bank::Battery& battery, Voltage system) {
  if (!(battery.system_V > 0.0)) return 0;
  const double ratio = as_volts(system) / battery.system_V;
  const double nearest = std::round(ratio);
  return nearest >= 1.0 && nearest <= 100.0 && std::abs(ratio - nearest) < 1e-6 ? static_cast<int>(nearest)
                                                                                : 0;
}

}  // namespace

advise::Limits read_limits(Section section, const std::string& currency) {
  advise::Limits limits;
  section.set<Mass>("mass", parse_mass, {kilograms(0.1), kilograms(50000), "0.1 kg to 50 t", "\"95 kg\""},
                    limits.mass);
  section.set<Volume>("volume", parse_volume, {litres(0.1), litres(100000), "0.1 L to 100 m3", "\"60 L\""},
                      limits.volume);
  section.set<Duration>("life", parse_duration, {days(30), years(50), "1 month to 50 years", "\"10 years\""},
                        limits.life);
  section.set<Fraction>("chance_of_shortfall", parse_fraction,
                        {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"5 %\""},
                        limits.chance_of_shortfall);
  if (const TomlNode* node = section.find("price"); node != nullptr && !currency.empty()) {
    const std::string text = shown(*node);
    base::Result<Money> price = parse_money(text, currency);
    if (!price) {
      for (const base::Problem& p : price.problems()) {
        base::Problem& noted = section.note(*node, "price", p.what);
        noted.given = p.given;
        noted.limit = p.limit;
        noted.remedy = p.remedy;
      }
    } else if (as_money(price.value()) <= 0.0 || as_money(price.value()) > 1e9) {
      base::Problem& noted = section.note(*node, "price", "The value lies outside what is possible here.");
      noted.given = text;
      noted.limit = "above 0, up to 1 000 000 000";
    } else {
      limits.price = price.value();
    }
  }
  section.finish();
  return limits;
}

bank::Surroundings read_surroundings(Section section) {
  bank::Surroundings s;
  const auto place = section.choice("place", {"cabin", "engine bay", "outside", "heated box"});
  if (place) {
    static constexpr bank::Location kLocations[] = {bank::Location::kCabin, bank::Location::kEngineBay,
                                                    bank::Location::kOutside, bank::Location::kHeatedBox};
    s.location = kLocations[*place];
  }
  section.set<Temperature>("cabin_heated_to", parse_temperature,
                           {celsius(-10), celsius(35), "-10 to 35 degC", "\"18 degC\""}, s.cabin_heated_to);
  section.set<TemperatureDifference>("engine_bay_rise", parse_temperature_difference,
                                     {kelvins(0), kelvins(80), "0 to 80 K", "\"30 K\""}, s.engine_bay_rise);
  const Span<Duration> lag = {seconds(60), hours(12), "1 min to 12 h", "\"20 min\""};
  section.set<Duration>("engine_bay_warms", parse_duration, lag, s.engine_bay_warms);
  section.set<Duration>("engine_bay_cools", parse_duration, lag, s.engine_bay_cools);
  const std::optional<Power> heater =
      section.value<Power>("heater_power", parse_power, {watts(0), watts(2000), "0 W to 2 kW", "\"60 W\""});
  s.heater_power = heater.value_or(watts(0));
  section.set<Temperature>("heater_below", parse_temperature,
                           {celsius(-20), celsius(20), "-20 to 20 degC", "\"5 degC\""}, s.heater_below);
  section.set<HeatConductance>(
      "box_loss", parse_heat_conductance,
      {watts_per_kelvin(0.01), watts_per_kelvin(50), "0.01 to 50 W/K", "\"0.8 W/K\""}, s.box_loss);
  if (const auto i = section.choice("heater_from", {"bank", "surplus"})) s.heater_on_surplus = *i == 1;
  if (s.location == bank::Location::kHeatedBox) {
    if (!section.has("heater_power")) section.note_missing("heater_power", "\"60 W\"");
    if (heater && *heater == watts(0)) {
      section.note("heater_power", "The box is heated with no power.").remedy =
          "Add heater_power = \"60 W\".";
    }
  }
  section.finish();
  return s;
}

advise::Cable read_cable(Section section) {
  advise::Cable cable;
  section.set_wanted<Length>("one_way", parse_length,
                             {metres(0.01), metres(100), "1 cm to 100 m", "\"1.5 m\""}, cable.one_way);
  section.set_wanted<Area>(
      "area", parse_area,
      {square_millimetres(0.2), square_millimetres(1000), "0.2 to 1000 mm2", "\"35 mm2\""}, cable.area);
  section.finish();
  return cable;
}

std::optional<advise::NamedBank> read_incumbent(Section section, Voltage system) {
  const std::vector<bank::Battery>& batteries = section.reading().catalogue.batteries;
  advise::NamedBank bank;
  const bank::Battery* battery = nullptr;
  if (const auto id = section.text("battery")) {
    bank.battery = *id;
    battery = record_of(batteries, *id);
    if (battery == nullptr) {
      note_unknown_id(section, *section.find("battery"), "battery", "battery", *id, ids_of(batteries));
    }
  } else if (!section.has("battery")) {
    section.note_missing("battery", "\"...\" with a name from the catalogue");
  }
  const auto in_series = section.whole("in_series", 1, 100);
  if (const auto n = section.whole("in_parallel", 1, 100)) bank.in_parallel = static_cast<int>(*n);
  Fraction lost_fraction;
  section.set<Fraction>("lost_capacity", parse_fraction,
                        {fraction(0.0), fraction(0.95), "0 % to 95 %", "\"15 %\""}, lost_fraction);
  bank.age_fraction = as_fraction(lost_fraction);
  Fraction weakest;
  section.set<Fraction>("weakest_cell", parse_fraction,
                        {fraction(0.0), fraction(0.9), "0 % to 90 %", "\"4 %\""}, weakest);
  bank.weakest_below = as_fraction(weakest);
  Fraction ahead;
  section.set<Fraction>("fullest_cell", parse_fraction,
                        {fraction(0.0), fraction(0.9), "0 % to 90 %", "\"5 %\""}, ahead);
  bank.ahead = as_fraction(ahead);
  if (const auto factor = section.number("resistance", 0.5, 50.0)) bank.resistance_factor = *factor;
  section.finish();
  if (battery == nullptr) return std::nullopt;
  const int needed = series_for(*battery, system);
  bank.in_series = in_series ? static_cast<int>(*in_series) : std::max(needed, 1);
  if (needed != bank.in_series) {
    base::Problem& problem = section.note(
        "in_series", fmt::format("{} in series of {} V make {} V; the system is {} V.", bank.in_series,
                                 battery->system_V, bank.in_series * battery->system_V, as_volts(system)));
    if (needed > 0) problem.remedy = fmt::format("Write in_series = {}.", needed);
  }
  return bank;
}

advise::CandidateRule read_candidates(Section section, Voltage system) {
  const Catalogue& catalogue = section.reading().catalogue;
  advise::CandidateRule rule;
  for (const auto& [id, node] : section.list_or_all("chemistries")) {
    const cell::Chemistry* chemistry = record_of(catalogue.chemistries, id);
    if (chemistry == nullptr) {
      note_unknown_id(section, *node, "chemistries", "chemistry", id, ids_of(catalogue.chemistries));
    } else if (!chemistry->simulated) {
      section
          .note(*node, "chemistries", fmt::format("\"{}\" is in the catalogue but cannot be simulated.", id))
          .remedy = chemistry->not_simulated_because;
    }
    rule.chemistries.push_back(id);
  }
  for (const auto& [id, node] : section.list_or_all("batteries")) {
    rule.batteries.push_back(id);
    const bank::Battery* battery = record_of(catalogue.batteries, id);
    if (battery == nullptr) {
      note_unknown_id(section, *node, "batteries", "battery", id, ids_of(catalogue.batteries));
      continue;
    }
    const auto& kinds = rule.chemistries;
    if (!kinds.empty() && std::find(kinds.begin(), kinds.end(), battery->chemistry) == kinds.end()) {
      section.note(*node, "batteries", fmt::format("\"{}\" is of the chemistry {}.", id, battery->chemistry))
          .remedy = "Add that chemistry to `chemistries`, or leave the battery out.";
    }
    const int needed = series_for(*battery, system);
    if (needed == 0 || needed > std::max(battery->max_in_series, 1)) {
      section
          .note(*node, "batteries",
                fmt::format("\"{}\" is made for {} V and at most {} in series; the system is {} V.", id,
                            battery->system_V, std::max(battery->max_in_series, 1), as_volts(system)))
          .remedy = "Leave it out, or change system_voltage.";
    }
  }
  if (const auto most = section.whole("max_parallel", 1, 50)) rule.max_parallel = static_cast<int>(*most);
  section.finish();
  return rule;
}

}  // namespace voltwright::files
