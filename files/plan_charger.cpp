// How the charger of a source is set: [chargers.solar], .engine, .mains, .wind and .water.
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

/// "-24 mV/K": a voltage for each kelvin.
base::Result<double> parse_compensation(std::string_view text) {
  const std::size_t slash = text.rfind('/');
  const std::string_view unit = slash == std::string_view::npos ? std::string_view() : text.substr(slash + 1);
  if (unit.find('K') == std::string_view::npos) {
    base::Problem problem;
    problem.what = "A voltage for each kelvin is wanted, such as \"-24 mV/K\".";
    problem.given = text;
    return problem;
  }
  base::Result<Voltage> voltage = parse_voltage(text.substr(0, slash));
  if (!voltage) return voltage.problems();
  return as_volts(voltage.value());
}

/// Cells of a chemistry in series in a bank of the system voltage, as the catalogue's batteries have them; 0
/// if it has none.
double cells_for(const Catalogue& catalogue, const std::string& chemistry, double system_V) {
  for (const bank::Battery& b : catalogue.batteries) {
    if (b.chemistry == chemistry && b.system_V > 0.0) {
      return std::round(b.cells_in_series * system_V / b.system_V);
    }
  }
  return 0.0;
}

std::optional<supply::ChargeProfile> profile_of(Section& section, double system_V) {
  const auto id = section.text("profile");
  if (!id) return std::nullopt;
  const Catalogue& catalogue = section.reading().catalogue;
  const auto& all = catalogue.chemistries;
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& c) { return c.id == *id; });
  const double cells = cells_for(catalogue, *id, system_V);
  if (found == all.end() || cells <= 0.0) {
    std::vector<std::string> ids;
    for (const cell::Chemistry& c : all) {
      if (cells_for(catalogue, c.id, system_V) > 0.0) ids.push_back(c.id);
    }
    std::string near;
    for (const std::string& word : near_words(*id, ids, 3)) near += (near.empty() ? "" : ", ") + word;
    section.note("profile", fmt::format("The catalogue has no chemistry \"{}\" with batteries.", shown(*id)))
        .remedy = near.empty() ? "The catalogue lists the names." : fmt::format("Near: {}.", near);
    return std::nullopt;
  }
  supply::ChargeProfile profile;
  profile.of = *id;
  profile.absorption = volts(found->stages.absorption_V * cells);
  profile.float_voltage = volts(found->stages.float_V * cells);
  profile.compensation_V_per_K = found->stages.compensation_V_per_K * cells;
  profile.absorption_at_most = hours(found->stages.absorption_max_h);
  return profile;
}

void read_voltages(Section& section, double system_V, std::optional<supply::ChargeProfile>& profile) {
  const Span<Voltage> around = {volts(0.9 * system_V), volts(1.5 * system_V),
                                "0.9 to 1.5 times the system voltage", "\"14.4 V\""};
  const bool by_hand = section.has("absorption") || section.has("float") || section.has("compensation") ||
                       section.has("absorption_at_most");
  if (!by_hand) return;
  if (!profile.has_value()) {
    profile.emplace();
    if (!section.has("absorption")) section.note_missing("absorption", around.example);
  } else {
    profile->of.clear();
  }
  section.set<Voltage>("absorption", parse_voltage, around, profile->absorption);
  section.set<Voltage>("float", parse_voltage, around, profile->float_voltage);
  section.set<double>("compensation", parse_compensation,
                      {-0.01 * system_V, 0.0, "-10 to 0 mV/K for each volt of the system", "\"-24 mV/K\""},
                      profile->compensation_V_per_K);
  section.set<Duration>("absorption_at_most", parse_duration, {hours(0), hours(48), "0 h to 48 h", "\"4 h\""},
                        profile->absorption_at_most);
  if (profile->absorption > volts(0) && profile->float_voltage > profile->absorption) {
    section.note("float", "The charger would float above its absorption voltage.").remedy =
        "Float lies below absorption, or is left out.";
  }
}

}  // namespace

void read_regulation(Section section, Voltage system, supply::Regulation& regulation) {
  const double system_V = as_volts(system);
  std::optional<supply::ChargeProfile> profile = profile_of(section, system_V);
  read_voltages(section, system_V, profile);
  regulation.profile = profile;
  section.set<Resistance>("lead", parse_resistance, {ohms(1e-4), ohms(1), "0.1 mohm to 1 ohm", "\"2 mohm\""},
                          regulation.lead);
  if (const auto wakes = section.flag("wakes")) regulation.wakes = *wakes;
  section.set<Duration>("equalise_every", parse_duration,
                        {days(1), days(366), "1 day to 1 year", "\"30 days\""}, regulation.equalise_every);
  section.finish();
}

}  // namespace voltwright::files
