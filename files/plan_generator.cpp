// The generator set that feeds the mains charger.
#include <string>

#include "engine/units/clock_text.h"
#include "engine/units/number.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr double kWattsPerKilowatt = 1000.0;

base::Result<double> parse_litres_per(std::string_view text, std::string_view unit, std::string_view wanted) {
  base::Result<LeadingNumber> number = read_leading_number(text, wanted);
  if (number && number.value().rest == unit) return number.value().value;
  base::Problem problem;
  problem.what = std::string(wanted) + " is wanted.";
  problem.given = text;
  problem.limit = unit;
  return problem;
}

base::Result<double> parse_litres_per_hour(std::string_view text) {
  return parse_litres_per(text, "L/h", "A fuel rate such as \"0.3 L/h\"");
}

base::Result<double> parse_litres_per_kWh(std::string_view text) {
  return parse_litres_per(text, "L/kWh", "Fuel for energy such as \"0.48 L/kWh\"");
}

std::optional<DayWindow> read_window(Section& section, std::string_view key) {
  const auto text = section.text(key);
  if (!text) return std::nullopt;
  base::Result<DayWindow> window = parse_day_window(*text);
  if (window) return window.value();
  for (const base::Problem& p : window.problems()) {
    base::Problem& noted = section.note(key, p.what);
    noted.given = shown(*text);
    noted.limit = p.limit;
    noted.remedy = p.remedy;
  }
  return std::nullopt;
}

void read_fuel(Section& section, supply::Generator& set) {
  const Span<double> at_rest = {0.0, 50.0, "0 to 50 L/h", "\"0.3 L/h\""};
  if (const auto idle_L_h = section.value<double>("idle_fuel", parse_litres_per_hour, at_rest)) {
    set.standing_L_h_per_kW = *idle_L_h * kWattsPerKilowatt / set.rated_W;
  }
  section.set<double>("fuel_per_energy", parse_litres_per_kWh,
                      {0.05, 3.0, "0.05 to 3 L/kWh", "\"0.48 L/kWh\""}, set.litres_per_kWh);
}

}  // namespace

supply::Generator read_generator(Section section) {
  supply::Generator set;
  Power rated = watts(set.rated_W);
  section.set_wanted<Power>("rated", parse_power, {watts(100), watts(50000), "100 W to 50 kW", "\"2 kW\""},
                            rated);
  set.rated_W = as_watts(rated);
  read_fuel(section, set);
  if (const auto factor = section.number("charger_power_factor", 0.3, 1.0))
    set.charger_power_factor = *factor;
  const Span<Fraction> share = {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"40 %\""};
  Fraction start = fraction(set.start_below);
  section.set<Fraction>("start_below", parse_fraction, share, start);
  set.start_below = as_fraction(start);
  Fraction stop = fraction(set.stop_above);
  section.set<Fraction>("stop_above", parse_fraction, share, stop);
  set.stop_above = as_fraction(stop);
  set.runs = read_window(section, "runs");
  set.quiet = read_window(section, "quiet");
  if (set.start_below >= set.stop_above) {
    section.note("start_below", "The set would start on a bank that already stops it.").remedy =
        "Give a start_below that lies below stop_above.";
  }
  if (!section.has("start_below") && !section.has("runs")) {
    section.note("", "Nothing starts the generator set.").remedy =
        "Add start_below = \"40 %\", or runs = \"10:00-12:00\".";
  }
  section.finish();
  return set;
}

}  // namespace voltwright::files
