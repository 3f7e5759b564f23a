// What is missing, without which a claim cannot be judged or relied on. Always a note: silence proves
// nothing.
#include <string>
#include <utility>

#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;
using units::percent;

constexpr const char* kPractice = "common practice, no source";

struct Gap {
  const char* id;
  std::string claim;
  std::string source;
  std::string working;
  std::string say;
};

void note(Gap gap, Findings& findings) {
  Finding f;
  f.id = gap.id;
  f.severity = Severity::kNote;
  f.claim = std::move(gap.claim);
  f.source = std::move(gap.source);
  f.working = std::move(gap.working);
  f.say = std::move(gap.say);
  findings.push_back(std::move(f));
}

void check_kind(const Subject& s, Findings& findings) {
  if (s.kind != nullptr) return;
  note({"complete.kind", "Kind \"" + s.sheet.kind + "\"", kPractice,
        std::to_string(s.kinds.size()) + " chemistries go by that name",
        "\"" + s.sheet.kind +
            "\" is a family, not a kind. Safety, life, charge voltage and what an insurer asks for differ "
            "within it: ask which one it is."},
       findings);
}

void check_capacity(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.capacity_Ah && !sheet.energy_Wh) {
    note({"complete.capacity", "No capacity", kPractice, "neither Ah nor Wh stands there",
          "Without a capacity or an energy nobody can say how long it will run anything. Ask for the "
          "capacity at 20 h."},
         findings);
  }
  if (!s.lead_acid || !sheet.capacity_Ah || sheet.capacity_h) return;
  note({"complete.capacity_rate", "Capacity " + figure(*sheet.capacity_Ah, "Ah"),
        "26 AGM data sheets: at 10, 5 and 1 h the medians are 94, 84 and 61 % of the capacity at 20 h "
        "[genericBatteries]",
        "at 5 h perhaps " + figure(0.839 * *sheet.capacity_Ah, "Ah") + " if that is the capacity at 20 h",
        "A lead-acid battery gives less the faster it is drawn, so its ampere-hours mean something only with "
        "a time. Ask for the capacity at 20 h."},
       findings);
}

void check_cycles(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.cycles) return;
  const std::string claim = figure(*sheet.cycles) + " cycles";
  if (!sheet.cycles_depth) {
    note({"complete.cycles_depth", claim + ", depth unsaid",
          s.kind != nullptr ? s.kind->life_source : kPractice,
          "shallow cycles count for less: 3,000 at 30 % are " + figure(3000.0 * 0.3) + " full ones",
          "The number of cycles says little without their depth. Ask: how deep?"},
         findings);
  }
  if (!sheet.cycles_C) {
    note({"complete.cycles_temperature", claim + ", temperature unsaid",
          s.kind != nullptr ? s.kind->life_source : kPractice,
          "calendar life halves for every " +
              figure(s.kind != nullptr ? s.kind->chemistry.life.halving_K : 10.0, "K") + " more",
          "Cycles are usually counted at 25 °C; in a hot place there are fewer. Ask: at what temperature?"},
         findings);
  }
  if (!sheet.cycles_end) {
    note({"complete.cycles_end", claim + ", end of life unsaid", kPractice,
          "counting to 60 % instead of 80 % about doubles the number",
          "After so many cycles it is not dead and not new. Ask: down to what share of the capacity, 80, 70 "
          "or 60 %?"},
         findings);
  }
}

void check_cold(const Subject& s, Findings& findings) {
  if (s.kind == nullptr || s.lead_acid || s.sheet.charge_min_C) return;
  const double least_C = s.kind->chemistry.limits.charge_min_C;
  note({"complete.cold_charging", "Lowest charging temperature unsaid", s.kind->temperature_source,
        "cells of this kind: not below " + figure(least_C, "°C"),
        "The sheet does not say how cold it may be charged. Take " + figure(least_C, "°C") +
            " as the limit, and ask whether its protection stops a charge that is too cold."},
       findings);
}

void check_protection(const Subject& s, Findings& findings) {
  if (s.lead_acid || s.sheet.level == Level::kCell || s.sheet.protection.has_value()) return;
  note({"complete.protection", "Electronic protection unsaid", kPractice, "not mentioned",
        "A lithium battery must not be run without a protection that watches every cell. The sheet does not "
        "mention one: ask, and ask what it does when it opens."},
       findings);
}

void check_currents(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if ((sheet.peak_A || sheet.peak_per_h) && !sheet.peak_s) {
    note({"complete.peak_time", "Peak current without a time", kPractice, "others state 0.5 to 30 s",
          "A peak means little without its time: half a second starts a motor, but no microwave oven. Ask "
          "for how long."},
         findings);
  }
  if (!s.lead_acid && !sheet.continuous_A && !sheet.continuous_per_h && s.sheet.level == Level::kBattery) {
    note({"complete.continuous", "Continuous current unsaid", kPractice, "not mentioned",
          "How much current it may give all the time decides which inverter it can feed. Ask before you buy "
          "one."},
         findings);
  }
  if (!sheet.charge_A && !sheet.charge_per_h && s.sheet.level == Level::kBattery) {
    note({"complete.charge", "Charge current unsaid", kPractice, "not mentioned",
          "How much current it may take decides the charger and what the alternator may give. Ask."},
         findings);
  }
}

void check_size(const Subject& s, Findings& findings) {
  if (!s.sheet.mass_kg) {
    note({"complete.mass", "Mass unsaid", kPractice, "not mentioned",
          "With the mass the capacity could be held against what such cells can store. Ask, or weigh one."},
         findings);
  }
}

}  // namespace

void check_complete(const Subject& subject, Findings& findings) {
  check_kind(subject, findings);
  check_capacity(subject, findings);
  check_cycles(subject, findings);
  check_cold(subject, findings);
  check_protection(subject, findings);
  check_currents(subject, findings);
  check_size(subject, findings);
}

}  // namespace voltwright::claims
