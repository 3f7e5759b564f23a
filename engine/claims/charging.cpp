// Voltage and charging against the number of cells, the charger and the model's own charge.
#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/claims/claim_lab.h"
#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;

constexpr double kNominalSpread = 0.06;  // 3.6 and 3.7 V, 2.3 and 2.4 V are both in use for the same cells
constexpr double kMostAbove = 1.02;      // of the upper limit of the cells
constexpr double kEqualise_V = 2.7;      // 16.2 V over six cells, flooded only (common practice, no source)
constexpr double kMustCharge = 0.95;     // charge that must go in, of the capacity; the rest is rounding
constexpr double kModelShare = 0.8;      // shorter than this share of the model's time is doubted

void check_voltage(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.nominal_V || !s.series || s.sheet.level == Level::kCell) return;
  const double per_cell_V = *s.sheet.nominal_V / *s.series;
  const double cell_V = s.kind->chemistry.nominal_V;
  Finding f;
  f.id = "consistent.voltage";
  f.claim = "Voltage " + figure(*s.sheet.nominal_V, "V");
  f.number = per_cell_V;
  f.unit = "V";
  f.least = cell_V * (1.0 - kNominalSpread);
  f.most = cell_V * (1.0 + kNominalSpread);
  f.source = s.kind->voltage_source;
  f.working = figure(*s.sheet.nominal_V, "V") + " / " + std::to_string(*s.series) +
              " cells = " + figure(per_cell_V, "V");
  // A system's name (12 V) is not the sum of the cells; with the number of cells said it still must be near.
  const bool named = is_system_voltage(*s.sheet.nominal_V) && !s.sheet.series;
  if (per_cell_V >= *f.least && per_cell_V <= *f.most) {
    f.severity = Severity::kHolds;
    f.say = "The voltage is that of whole cells of this kind.";
  } else if (named || (is_system_voltage(*s.sheet.nominal_V) && std::fabs(per_cell_V / cell_V - 1.0) < 0.1)) {
    f.severity = Severity::kNote;
    f.say = figure(*s.sheet.nominal_V, "V") + " is the name of the system; " + std::to_string(*s.series) +
            " cells give " + figure(cell_V * *s.series, "V") +
            ". Energy counted with the name is not that of the cells.";
  } else {
    f.severity = s.sheet.series ? Severity::kContradiction : Severity::kDoubt;
    f.say = "That is not the voltage of " + std::to_string(*s.series) + " " + kind_words(s) +
            " cells. Ask for the kind and the number of cells; charger and inverter depend on both.";
  }
  findings.push_back(std::move(f));
}

void check_charge_voltage(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || !s.sheet.charge_V || !s.series) return;
  const cell::Chemistry& c = s.kind->chemistry;
  const double per_cell_V = *s.sheet.charge_V / *s.series;
  Finding f;
  f.id = "consistent.charge_voltage";
  f.claim = "Charge voltage " + figure(*s.sheet.charge_V, "V");
  f.number = per_cell_V;
  f.unit = "V";
  f.least = c.nominal_V;
  f.most = (s.kind->chemistry.id == "flooded" ? std::max(kEqualise_V, c.limits.max_V) : c.limits.max_V) *
           kMostAbove;
  f.source = s.kind->voltage_source;
  f.working = figure(*s.sheet.charge_V, "V") + " / " + std::to_string(*s.series) +
              " cells = " + figure(per_cell_V, "V");
  const bool meets = per_cell_V >= *f.least && per_cell_V <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kDoubt;
  f.say = meets ? "The charge voltage suits the cells."
                : "Each cell would see " + figure(per_cell_V, "V") + ", outside " + figure(*f.least, "V") +
                      " to " + figure(*f.most, "V") +
                      ". Do not set a charger to it before the maker has confirmed it in writing: "
                      "overcharged cells can gas, swell or burn.";
  findings.push_back(std::move(f));
}

void check_charger(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.charger_A || !sheet.charge_A) return;
  Finding f;
  f.id = "consistent.charger";
  f.claim = "Charger " + figure(*sheet.charger_A, "A");
  f.number = *sheet.charger_A;
  f.unit = "A";
  f.most = *sheet.charge_A;
  f.source = "the sheet's own figures";
  f.working = figure(*sheet.charger_A, "A") + " against " + figure(*sheet.charge_A, "A");
  const bool meets = *sheet.charger_A <= *sheet.charge_A;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "The charger stays within the charge current."
                : "The charger gives more than the battery may take by the same sheet. Ask which of the two "
                  "is right.";
  findings.push_back(std::move(f));
}

void check_charge_time(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  const std::optional<double> current_A = sheet.charger_A ? sheet.charger_A : sheet.charge_A;
  if (!sheet.charge_time_h || !current_A || !sheet.capacity_Ah) return;
  const double charged_Ah = *sheet.charge_time_h * *current_A;
  Finding f;
  f.id = "consistent.charge_time";
  f.claim = "Full in " + figure(*sheet.charge_time_h, "h") + " with " + figure(*current_A, "A");
  f.unit = "h";
  f.least = kMustCharge * *sheet.capacity_Ah / *current_A;
  f.number = *sheet.charge_time_h;
  f.source = "arithmetic: the capacity must go in";
  f.working =
      figure(*current_A, "A") + " × " + figure(*sheet.charge_time_h, "h") + " = " + figure(charged_Ah, "Ah");
  if (*sheet.charge_time_h < *f.least) {
    f.severity = Severity::kContradiction;
    f.say = "In that time only " + figure(charged_Ah, "Ah") + " can go in, and the battery is said to hold " +
            figure(*sheet.capacity_Ah, "Ah") + ". It takes at least " + figure(*f.least, "h") + ".";
    findings.push_back(std::move(f));
    return;
  }
  f.severity = Severity::kHolds;
  f.say = "The charger can put the capacity in within that time.";
  if (s.kind != nullptr && s.kind->chemistry.simulated && s.series) {
    constexpr double kMassOnly_Wh_per_kg = 50.0;  // for the warming of the model where no mass is said
    const ClaimLab lab(s.kind->chemistry, *s.series, *sheet.capacity_Ah,
                       s.Wh_per_kg.value_or(kMassOnly_Wh_per_kg));
    const double model_h = lab.charge_h(*current_A);
    f.working += "; the bank model needs " + figure(model_h, "h") + " to the tail current";
    f.source += "; bank model at 25 °C with usual charge stages";
    if (*sheet.charge_time_h < kModelShare * model_h) {
      f.severity = Severity::kDoubt;
      f.least = kModelShare * model_h;
      f.say =
          "Counted in ampere-hours it is just possible, but the current falls towards the end: the model "
          "needs " +
          figure(model_h, "h") + ". Ask whether the time is to full, or only to most of it.";
    }
  }
  findings.push_back(std::move(f));
}

}  // namespace

void check_charging(const Subject& subject, Findings& findings) {
  check_voltage(subject, findings);
  check_charge_voltage(subject, findings);
  check_charger(subject, findings);
  check_charge_time(subject, findings);
}

}  // namespace voltwright::claims
