// Wind turbines, and generators turned by the water that a boat passes through.
#include <fmt/core.h>

#include <array>
#include <cstddef>
#include <string>

#include "engine/units/number.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr double kMetresPerKilometre = 1000.0;
constexpr double kMetresPerNauticalMile = 1852.0;
constexpr double kSecondsPerHour = 3600.0;
/// Of the kinetic energy of the wind no rotor can take more than 16/27 (Betz 1920).
constexpr double kBetz = 16.0 / 27.0;
constexpr double kStrongestMean_m_s = 25.0;

/// "5 m/s", "18 km/h" or "10 kn" in m/s.
base::Result<double> parse_speed(std::string_view text) {
  base::Result<LeadingNumber> number = read_leading_number(text, "A speed");
  if (!number) return number.problems();
  const auto& [value, unit] = number.value();
  if (unit == "m/s") return value;
  if (unit == "km/h") return value * kMetresPerKilometre / kSecondsPerHour;
  if (unit == "kn") return value * kMetresPerNauticalMile / kSecondsPerHour;
  base::Problem problem;
  problem.what = "A speed is wanted, such as 5 m/s.";
  problem.given = text;
  problem.limit = "m/s, km/h or kn";
  return problem;
}

/// One mean for all months, or one for each, January first.
void read_means(Section& section, supply::WindCharging& wind) {
  const TomlNode* node = section.find("mean");
  if (node == nullptr) return;
  if (node->kind != TomlKind::kArray) {
    const Span<double> span = {0.0, kStrongestMean_m_s, "0 to 25 m/s", "\"5 m/s\""};
    if (const auto mean = section.value<double>("mean", parse_speed, span))
      wind.mean_m_s.emplace().fill(*mean);
    return;
  }
  constexpr std::size_t kMonths = 12;
  if (node->items.size() != kMonths) {
    base::Problem& problem = section.note(*node, "mean", "One mean wind for each month is wanted.");
    problem.given = fmt::format("{}", node->items.size());
    problem.limit = "12";
    return;
  }
  std::array<double, kMonths> means{};
  for (std::size_t m = 0; m < kMonths; ++m) {
    const TomlNode& item = node->items[m];
    const base::Result<double> speed = parse_speed(item.kind == TomlKind::kText ? item.text : std::string());
    if (speed && speed.value() >= 0.0 && speed.value() <= kStrongestMean_m_s) {
      means.at(m) = speed.value();
      continue;
    }
    base::Problem& problem = section.note(item, "mean", "A mean wind such as \"5 m/s\" is wanted.");
    problem.given = shown(item);
    problem.limit = "0 to 25 m/s";
  }
  wind.mean_m_s = means;
}

}  // namespace

supply::WindCharging read_wind(Section section) {
  supply::WindCharging wind;
  supply::WindTurbine& t = wind.turbine;
  Length diameter = metres(t.diameter_m);
  section.set_wanted<Length>("diameter", parse_length, {metres(0.3), metres(10), "0.3 to 10 m", "\"1.2 m\""},
                             diameter);
  t.diameter_m = as_metres(diameter);
  Power rated = watts(t.rated_W);
  section.set_wanted<Power>("rated", parse_power, {watts(5), watts(20000), "5 W to 20 kW", "\"350 W\""},
                            rated);
  t.rated_W = as_watts(rated);
  const Span<Fraction> shares = {fraction(0.05), fraction(kBetz), "5 % to 59.3 %", "\"30 %\""};
  Fraction share = fraction(t.power_share);
  section.set<Fraction>("power_share", parse_fraction, shares, share);
  t.power_share = as_fraction(share);
  section.set<double>("cut_in", parse_speed, {0.5, 10.0, "0.5 to 10 m/s", "\"3.5 m/s\""}, t.cut_in_m_s);
  section.set<double>("cut_out", parse_speed, {5.0, 60.0, "5 to 60 m/s", "\"25 m/s\""}, t.cut_out_m_s);
  Length height = metres(t.height_m);
  section.set<Length>("height", parse_length, {metres(2), metres(50), "2 to 50 m", "\"10 m\""}, height);
  t.height_m = as_metres(height);
  Fraction efficiency = fraction(wind.efficiency);
  section.set<Fraction>("efficiency", parse_fraction,
                        {fraction(0.3), fraction(1.0), "30 % to 100 %", "\"90 %\""}, efficiency);
  wind.efficiency = as_fraction(efficiency);
  if (const auto n = section.whole("count", 1, 20)) wind.count = static_cast<int>(*n);
  read_means(section, wind);
  if (t.cut_out_m_s <= t.cut_in_m_s) {
    section.note("cut_out", "The turbine would stop before it starts.").remedy =
        "Give a cut_out above cut_in.";
  }
  section.finish();
  return wind;
}

supply::WaterCharging read_water(Section section) {
  supply::WaterCharging water;
  supply::WaterGenerator& g = water.generator;
  const Span<Power> powers = {watts(1), watts(20000), "1 W to 20 kW", "\"100 W\""};
  Power power = watts(g.power_W);
  section.set_wanted<Power>("power", parse_power, powers, power);
  g.power_W = as_watts(power);
  const Span<double> speeds = {0.2, 20.0, "0.2 to 20 m/s", "\"6 kn\""};
  section.set_wanted<double>("at_speed", parse_speed, speeds, g.speed_m_s);
  Power rated = watts(g.rated_W);
  section.set<Power>("rated", parse_power, powers, rated);
  g.rated_W = as_watts(rated);
  section.set<double>("cut_in", parse_speed, speeds, g.cut_in_m_s);
  section.set_wanted<double>("boat_speed", parse_speed, speeds, water.boat_m_s);
  if (g.rated_W < g.power_W) {
    section.note("rated", "The generator gives more than its rated power.").remedy =
        "Give a rated power of at least `power`.";
  }
  section.finish();
  return water;
}

}  // namespace voltwright::files
