// What is true in a way, and means less than it seems to.
#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/claims/claim_lab.h"
#include "engine/claims/density.h"
#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;
using units::percent;

constexpr double kPercent = 100.0;
constexpr double kSecondsPerMinute = 60.0;
constexpr double kContinuous_min = 10.0;      // shorter is a peak (common practice, no source)
constexpr double kNearlyEmpty = 0.8;          // of the time in which the capacity is gone
constexpr double kLeadContinuous_min = 30.0;  // a lead-acid battery that is empty within that gave a peak
constexpr double kLeadDeepest = 0.8;          // deeper shortens lead-acid life several times
constexpr double kSlow_h = 20.0;
constexpr double kShallow = 0.3;
constexpr double kDaysPerYear = 365.25;
constexpr double kLeast_Wh_per_kg = 40.0;  // for the warming of the model where no mass is said

std::string time_words(double time_s) {
  return time_s < 2.0 * kSecondsPerMinute ? figure(time_s, "s") : figure(time_s / kSecondsPerMinute, "min");
}

/// A "continuous" current with a time that makes it a peak.
void check_continuous_time(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.continuous_A || !sheet.continuous_s || !sheet.capacity_Ah) return;
  const double minutes = *sheet.continuous_s / kSecondsPerMinute;
  // A battery that is nearly empty sooner than that has still given it continuously.
  const double until_empty = kSecondsPerMinute * *sheet.capacity_Ah / *sheet.continuous_A;
  const double least = std::min(kContinuous_min, kNearlyEmpty * until_empty);
  if (minutes >= least) return;
  Finding f;
  f.id = "misleading.peak_for_continuous";
  f.severity = Severity::kDoubt;
  f.claim = "Continuous " + figure(*sheet.continuous_A, "A") + " for " + time_words(*sheet.continuous_s);
  f.number = minutes;
  f.unit = "min";
  f.least = least;
  f.source = "below 10 min it is a peak (common practice, no source)";
  f.working = time_words(*sheet.continuous_s) + " against " + figure(least, "min");
  f.say =
      "A current that may flow for " + time_words(*sheet.continuous_s) +
      " is a peak, not a continuous one. Size the inverter by what it can give for an hour: ask for that.";
  findings.push_back(std::move(f));
}

/// A "continuous" current that empties a lead-acid battery in minutes.
void check_lead_continuous(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!s.lead_acid || s.kind == nullptr || !s.series || !sheet.continuous_A || !sheet.capacity_Ah) return;
  if (sheet.continuous_s || *sheet.continuous_A <= *sheet.capacity_Ah) return;
  const ClaimLab lab(s.kind->chemistry, *s.series, *sheet.capacity_Ah,
                     s.Wh_per_kg.value_or(kLeast_Wh_per_kg));
  const double minutes = lab.discharge(*sheet.continuous_A).time_s() / kSecondsPerMinute;
  if (minutes >= kLeadContinuous_min) return;
  Finding f;
  f.id = "misleading.peak_for_continuous";
  f.severity = Severity::kDoubt;
  f.claim = "Continuous " + figure(*sheet.continuous_A, "A");
  f.number = minutes;
  f.unit = "min";
  f.least = kLeadContinuous_min;
  f.source = "bank model at 25 °C; below 30 min it is a peak (common practice, no source)";
  f.working = figure(*sheet.continuous_A, "A") + " from " + figure(*sheet.capacity_Ah, "Ah") + ": empty in " +
              figure(minutes, "min");
  f.say = "At that current it is empty after " + figure(minutes, "min") +
          ". It is a peak or a starting current; ask for the continuous one.";
  findings.push_back(std::move(f));
}

struct CellFigure {
  const char* unit;
  std::optional<double> claimed;
  std::optional<double> quotient;
  bool per_mass;
};

/// A density of the bare cells on the sheet of a finished battery.
void check_cell_figure(const Subject& s, const CellFigure& claim, Findings& findings) {
  if (!claim.claimed || !reads_like_cell(s, *claim.claimed, claim.quotient, claim.per_mass)) return;
  const Reached r = reached(s, claim.per_mass);
  Finding f;
  f.id = "misleading.cell_for_battery";
  f.severity = Severity::kDoubt;
  f.claim = std::string(claim.per_mass ? "Energy per mass " : "Energy per volume ") +
            figure(*claim.claimed, claim.unit);
  f.number = claim.quotient ? *claim.quotient : *claim.claimed;
  f.claimed = claim.claimed;
  f.unit = claim.unit;
  f.least = r.least_cell;
  f.most = r.most_cell;
  f.source = r.cell_source + "; finished batteries up to " +
             figure(r.most_finished.value_or(0.0), claim.unit) + ": " + r.finished_source;
  f.working = claim.quotient ? "the whole battery: " + figure(*claim.quotient, claim.unit) +
                                   "; the sheet says " + figure(*claim.claimed, claim.unit)
                             : figure(*claim.claimed, claim.unit) + " lies among bare cells";
  f.say = figure(*claim.claimed, claim.unit) +
          " is a figure of the bare cells. With case and protection a finished battery has less; compare "
          "batteries by the mass and size of the whole.";
  findings.push_back(std::move(f));
}

void check_usable(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.usable_share) return;
  const double practice = s.kind->chemistry.usable_depth;
  Finding f;
  f.id = "misleading.usable";
  f.claim = "Usable " + percent(*s.sheet.usable_share);
  const double most = s.lead_acid ? kLeadDeepest : 1.0;
  f.number = kPercent * *s.sheet.usable_share;
  f.unit = "%";
  f.most = kPercent * most;
  f.source = s.kind->practice_source;
  f.working = percent(*s.sheet.usable_share) + " against " + percent(practice) + " that is planned with";
  if (s.energy_Wh) f.working += ": " + figure(practice * *s.energy_Wh, "Wh");
  if (*s.sheet.usable_share <= practice) {
    f.severity = Severity::kHolds;
    f.say = "That much is usually planned with.";
  } else if (*s.sheet.usable_share <= most) {
    f.severity = Severity::kNote;
    f.say = "It can be drawn, but " + percent(practice) +
            " is usually planned with: the rest is kept for age, cold and life.";
  } else {
    f.severity = Severity::kDoubt;
    f.say =
        "A lead-acid battery drawn that deep lasts a fraction of its cycles, and at house currents it does "
        "not give its ampere-hours anyway. Plan with " +
        percent(practice) + ".";
  }
  findings.push_back(std::move(f));
}

/// A lead-acid capacity stated at a time much longer than 20 h.
void check_slow_capacity(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!s.lead_acid || !sheet.capacity_Ah || !sheet.capacity_h || *sheet.capacity_h <= kSlow_h) return;
  constexpr double kSlowGain = 1.111;  // 250 Ah at 100 h of 225 Ah at 20 h
  Finding f;
  f.id = "misleading.slow_capacity";
  f.severity = Severity::kNote;
  f.claim = "Capacity " + figure(*sheet.capacity_Ah, "Ah") + " at " + figure(*sheet.capacity_h, "h");
  f.number = *sheet.capacity_Ah / kSlowGain;
  f.unit = "Ah";
  f.source = "225 Ah at 20 h and 250 Ah at 100 h, one battery [genericBatteries]";
  f.working = figure(*sheet.capacity_Ah, "Ah") + " / 1.11 = " + figure(*f.number, "Ah") + " at 20 h";
  f.say = "The capacity is stated for a very slow discharge. At 20 h, as others state it, it is about " +
          figure(*f.number, "Ah") + ".";
  findings.push_back(std::move(f));
}

void check_shallow_cycles(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.cycles || !sheet.cycles_depth || *sheet.cycles_depth > kShallow) return;
  Finding f;
  f.id = "misleading.shallow_cycles";
  f.severity = Severity::kNote;
  f.claim = figure(*sheet.cycles) + " cycles at " + percent(*sheet.cycles_depth);
  f.number = *sheet.cycles * *sheet.cycles_depth;
  f.source = "arithmetic";
  f.working =
      figure(*sheet.cycles) + " × " + percent(*sheet.cycles_depth) + " = " + figure(*f.number) + " full ones";
  f.say = "The cycles are shallow: together they carry as much as " + figure(*f.number) +
          " full ones. Compare batteries by that.";
  findings.push_back(std::move(f));
}

/// More cycles than the calendar leaves time for, at one a day.
void check_cycles_calendar(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.cycles) return;
  const double years = *s.sheet.cycles / kDaysPerYear;
  const double calendar = s.kind->chemistry.life.calendar_years.max;
  if (years <= calendar) return;
  Finding f;
  f.id = "misleading.cycles_calendar";
  f.severity = Severity::kNote;
  f.claim = figure(*s.sheet.cycles) + " cycles";
  f.number = years;
  f.unit = "years";
  f.most = calendar;
  f.source = s.kind->life_source;
  f.working = figure(*s.sheet.cycles) + " / 365 = " + figure(years, "years") + " at one a day";
  f.say = "At one cycle a day that is " + figure(years, "years") +
          ", longer than cells of this kind keep on the shelf. Age will end it first, so the number is worth "
          "less than it looks.";
  findings.push_back(std::move(f));
}

/// Starting amps say how an engine cranks, not how long a house runs.
void check_starting(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  const std::optional<double> starting_A =
      sheet.cold_cranking_A ? sheet.cold_cranking_A : sheet.marine_cranking_A;
  if (!starting_A) return;
  if (!sheet.capacity_Ah && !sheet.energy_Wh) {
    Finding f;
    f.id = "misleading.starting_amps";
    f.severity = Severity::kDoubt;
    f.claim = "Starting current " + figure(*starting_A, "A") + ", no capacity";
    f.number = *starting_A;
    f.unit = "A";
    f.source = "common practice, no source";
    f.working = "30 s at " + figure(*starting_A, "A") + " are " + figure(*starting_A * 30.0 / 3600.0, "Ah");
    f.say =
        "Starting amps tell how an engine is cranked for half a minute. They do not say how long a house "
        "runs, and starting batteries do not last when drawn deep. Ask for the capacity at 20 h.";
    findings.push_back(std::move(f));
  }
  if (!sheet.cold_cranking_A || !sheet.marine_cranking_A) return;
  constexpr double kLeastRatio = 1.1;
  constexpr double kMostRatio = 1.4;
  Finding f;
  f.id = "misleading.marine_amps";
  f.claim = "Cranking " + figure(*sheet.marine_cranking_A, "A") + " (marine), " +
            figure(*sheet.cold_cranking_A, "A") + " (cold)";
  f.number = *sheet.marine_cranking_A / *sheet.cold_cranking_A;
  f.least = kLeastRatio;
  f.most = kMostRatio;
  f.source = "marine amps are taken at 0 °C, cold ones at −18 °C: about 1.25 times (from memory)";
  f.working =
      figure(*sheet.marine_cranking_A) + " / " + figure(*sheet.cold_cranking_A) + " = " + figure(*f.number);
  const bool meets = *f.number >= kLeastRatio && *f.number <= kMostRatio;
  f.severity = meets ? Severity::kHolds : Severity::kDoubt;
  f.say = meets ? "Marine and cold cranking amps go together; compare batteries by the cold ones."
                : "Marine and cold cranking amps do not go together. Ask which test was made.";
  findings.push_back(std::move(f));
}

}  // namespace

void check_misleading(const Subject& subject, Findings& findings) {
  const Sheet& sheet = subject.sheet;
  check_continuous_time(subject, findings);
  check_lead_continuous(subject, findings);
  const auto quotient = [&](const std::optional<double>& amount) -> std::optional<double> {
    if (!subject.energy_Wh || !amount) return std::nullopt;
    return *subject.energy_Wh / *amount;
  };
  check_cell_figure(subject, {"Wh/kg", sheet.energy_Wh_per_kg, quotient(sheet.mass_kg), true}, findings);
  check_cell_figure(subject, {"Wh/L", sheet.energy_Wh_per_L, quotient(subject.volume_L), false}, findings);
  check_usable(subject, findings);
  check_slow_capacity(subject, findings);
  check_shallow_cycles(subject, findings);
  check_cycles_calendar(subject, findings);
  check_starting(subject, findings);
}

}  // namespace voltwright::claims
