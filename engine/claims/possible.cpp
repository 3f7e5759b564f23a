// Temperatures, self-discharge and life against the chemistry.
#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;
using units::percent;

// Large cells are allowed 60 degC and -30 degC where the table says 45 and -20 (one maker's sheet).
constexpr double kHotSpread_K = 15.0;
constexpr double kColdSpread_K = 10.0;
constexpr double kLeastSelfDischarge = 0.003;  // a month; the protection alone takes about that
constexpr double kLifeSpread = 1.5;            // published spreads of life leave that much open
constexpr double kCalendarSpread = 1.25;
constexpr double kUsualEnd = 0.8;
constexpr double kPercent = 100.0;

void check_cold_charge(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (s.kind == nullptr || !sheet.charge_min_C) return;
  const double least_C = s.kind->chemistry.limits.charge_min_C;
  Finding f;
  f.id = "possible.cold_charge";
  f.claim = "Charge from " + figure(*sheet.charge_min_C, "°C");
  f.number = *sheet.charge_min_C;
  f.unit = "°C";
  f.least = least_C;
  f.source = s.kind->temperature_source;
  f.working = figure(*sheet.charge_min_C, "°C") + " against " + figure(least_C, "°C");
  if (*sheet.charge_min_C >= least_C) {
    f.severity = Severity::kHolds;
    f.say = "Cells of this kind may be charged at that temperature.";
  } else if (sheet.heated.value_or(false) || sheet.cold_charge_A) {
    f.severity = Severity::kNote;
    f.say = sheet.heated.value_or(false)
                ? "It warms itself before it charges. Ask how much power that takes and from where: it comes "
                  "off the charge, and someone must be there to give it."
                : "In the cold it takes a reduced current only. See that the charger can be held to it.";
  } else {
    f.severity = Severity::kDoubt;
    f.say = "Cells of this kind are not charged below " + figure(least_C, "°C") +
            ": it harms them inside, and nobody sees it. Ask what makes it possible here, a heater or a "
            "reduced current, and have it in writing.";
  }
  findings.push_back(std::move(f));
}

struct TemperatureClaim {
  const char* id;
  const char* words;
  std::optional<double> claimed_C;
  bool is_least;   // the lower end of a window, otherwise the upper
  double limit_C;  // it may not go beyond
};

void check_temperature(const Subject& s, const TemperatureClaim& claim, Findings& findings) {
  if (!claim.claimed_C) return;
  Finding f;
  f.id = claim.id;
  f.claim = std::string(claim.words) + " " + figure(*claim.claimed_C, "°C");
  f.number = *claim.claimed_C;
  f.unit = "°C";
  (claim.is_least ? f.least : f.most) = claim.limit_C;
  f.source = s.kind->temperature_source + "; large cells up to 15 K hotter and 10 K colder";
  f.working = figure(*claim.claimed_C, "°C") + " against " + figure(claim.limit_C, "°C");
  const bool meets = claim.is_least ? *claim.claimed_C >= claim.limit_C : *claim.claimed_C <= claim.limit_C;
  f.severity = meets ? Severity::kHolds : Severity::kDoubt;
  f.say = meets ? "That is within what cells of this kind are allowed."
                : "That is beyond what cells of this kind are usually allowed. Ask for the cell maker's own "
                  "limits, and what is left of the warranty at that temperature.";
  findings.push_back(std::move(f));
}

void check_self_discharge(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.self_discharge_per_month) return;
  const double claimed = *s.sheet.self_discharge_per_month;
  Finding f;
  f.id = "possible.self_discharge";
  f.claim = "Self-discharge " + percent(claimed) + " a month";
  f.number = kPercent * claimed;
  f.unit = "%";
  f.least = kPercent * kLeastSelfDischarge;
  f.source = s.kind->self_discharge_source;
  f.working = percent(claimed) + " against " + percent(kLeastSelfDischarge) + " at least; usual " +
              percent(s.kind->chemistry.self_discharge_per_month);
  const bool meets = claimed >= kLeastSelfDischarge;
  f.severity = meets ? Severity::kHolds : Severity::kDoubt;
  f.say = meets ? "Such figures are stated of cells of this kind."
                : "No battery keeps its charge so well; its protection alone takes about 0.3 % a month. Plan "
                  "storage with the usual figure.";
  findings.push_back(std::move(f));
}

void check_cycles(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (s.kind == nullptr || !sheet.cycles || !sheet.cycles_depth) return;
  const cell::LifeFigures& life = s.kind->chemistry.life;
  const double end = sheet.cycles_end.value_or(kUsualEnd);
  const double by_depth = std::pow(life.depth / *sheet.cycles_depth, life.depth_exponent);
  const double by_end = (1.0 - end) / (1.0 - kUsualEnd);
  const double most = life.cycles.max * by_depth * std::max(by_end, 0.0);
  Finding f;
  f.id = "possible.cycles";
  f.claim =
      figure(*sheet.cycles) + " cycles at " + percent(*sheet.cycles_depth) + " depth to " + percent(end);
  f.number = *sheet.cycles;
  f.least = life.cycles.min * by_depth * std::max(by_end, 0.0);
  f.most = kLifeSpread * most;
  f.source = s.kind->life_source;
  f.working = figure(life.cycles.max) + " at " + percent(life.depth) + " × " + figure(by_depth) +
              " (depth) × " + figure(by_end) + " (end) = " + figure(most);
  if (*sheet.cycles <= most) {
    f.severity = Severity::kHolds;
    f.say = "Cells of this kind have been stated or measured at that.";
  } else if (*sheet.cycles <= kLifeSpread * most) {
    f.severity = Severity::kNote;
    f.say = "It is more than usually stated for cells of this kind. Ask for the test behind it.";
  } else {
    f.severity = Severity::kDoubt;
    f.say = "The longest-lived cells of this kind are stated at about " + figure(most) +
            " such cycles. Ask for the test report: temperature, rate, depth and end of life.";
  }
  findings.push_back(std::move(f));
}

void check_calendar(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.calendar_years) return;
  const units::Ranged& years = s.kind->chemistry.life.calendar_years;
  Finding f;
  f.id = "possible.calendar";
  f.claim = "Life " + figure(*s.sheet.calendar_years, "years");
  f.number = *s.sheet.calendar_years;
  f.unit = "years";
  f.least = years.min;
  f.most = kCalendarSpread * years.max;
  f.source = s.kind->life_source;
  f.working = figure(*s.sheet.calendar_years) + " against " + figure(years.min) + " to " + figure(years.max) +
              " at 25 °C, halving for every " + figure(s.kind->chemistry.life.halving_K, "K") + " more";
  const bool meets = *s.sheet.calendar_years <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kDoubt;
  f.say = meets ? "Storage tests of this kind of cell leave room for it, in a cool place."
                : "Cells of this kind age on the shelf too; " + figure(years.max, "years") +
                      " is the most that storage tests leave room for. Ask what is guaranteed in writing.";
  findings.push_back(std::move(f));
}

}  // namespace

void check_possible(const Subject& s, Findings& findings) {
  check_cold_charge(s, findings);
  if (s.kind != nullptr) {
    const cell::CellLimits& limits = s.kind->chemistry.limits;
    check_temperature(s,
                      {"possible.hot_charge", "Charge up to", s.sheet.charge_max_C, false,
                       limits.charge_max_C + kHotSpread_K},
                      findings);
    check_temperature(s,
                      {"possible.cold_discharge", "Discharge from", s.sheet.discharge_min_C, true,
                       limits.discharge_min_C - kColdSpread_K},
                      findings);
    check_temperature(s,
                      {"possible.hot_discharge", "Discharge up to", s.sheet.discharge_max_C, false,
                       limits.discharge_max_C + kHotSpread_K},
                      findings);
  }
  check_self_discharge(s, findings);
  check_cycles(s, findings);
  check_calendar(s, findings);
}

}  // namespace voltwright::claims
