#pragma once
// Evidence small enough to see through: one lithium kind, one lead-acid kind, ten stated batteries.
#include <algorithm>
#include <string>

#include "engine/claims/vet.h"

namespace voltwright::claims {

/// Ten iron-phosphate batteries of 12.8 V 100 Ah from 10 to 14.5 kg, 10 L, 0.5 to 1.4C, 1000 to 5500 cycles.
inline Evidence invented_evidence() {
  Evidence evidence;
  Kind lfp;
  lfp.chemistry.id = "lfp";
  lfp.chemistry.short_name = "LFP";
  lfp.chemistry.family = cell::Family::kLithiumIon;
  lfp.chemistry.nominal_V = 3.2;
  lfp.chemistry.simulated = false;
  lfp.chemistry.limits.max_V = 3.65;
  lfp.chemistry.limits.min_V = 2.5;
  lfp.chemistry.life.cycles = {2000.0, 3500.0, 8000.0};
  lfp.chemistry.life.depth = 0.8;
  lfp.chemistry.life.calendar_years = {7.0, 15.0, 20.0};
  lfp.per_mass = {{2013, Level::kCell, {90.0, 105.0, 120.0}, "cells then", false},
                  {2025, Level::kCell, {160.0, 173.0, 190.0}, "cells now", false},
                  {2025, Level::kBattery, {90.0, 111.0, 130.0}, "batteries now", false}};
  lfp.per_volume = {{2025, Level::kBattery, {85.0, 115.0, 150.0}, "assumed", true}};
  Kind agm;
  agm.chemistry.id = "agm";
  agm.chemistry.short_name = "AGM";
  agm.chemistry.family = cell::Family::kLeadAcid;
  agm.chemistry.nominal_V = 2.0;
  agm.chemistry.simulated = false;
  agm.chemistry.usable_depth = 0.5;
  agm.chemistry.limits.max_V = 2.58;
  agm.chemistry.limits.charge_min_C = -20.0;
  agm.per_mass = {{2020, Level::kBattery, {33.0, 39.5, 45.0}, "lead now", false}};
  evidence.kinds = {lfp, agm};
  evidence.stated_source = "ten invented batteries";
  for (int i = 0; i < 10; ++i) {
    StatedBattery stated;
    stated.kind = "lfp";
    stated.nominal_V = 12.8;
    stated.capacity_Ah = 100.0;
    stated.mass_kg = 10.0 + 0.5 * i;
    stated.volume_L = 10.0;
    stated.continuous_A = 50.0 + 10.0 * i;
    stated.cycles = 1000.0 + 500.0 * i;
    stated.price_USD = 128.0 + 12.8 * i;
    stated.year = 2025;
    evidence.stated.push_back(stated);
  }
  return evidence;
}

/// A sheet of 12.8 V 100 Ah that says little else.
inline Sheet plain_sheet() {
  Sheet sheet;
  sheet.name = "plain";
  sheet.kind = "lfp";
  sheet.capacity_Ah = 100.0;
  sheet.nominal_V = 12.8;
  return sheet;
}

/// The finding of this id; a default one with an empty id if there is none.
inline Finding found(const Findings& findings, const std::string& id) {
  const auto at =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.id == id; });
  return at == findings.end() ? Finding{} : *at;
}

/// The same, of vetting a sheet against the invented evidence.
inline Finding found(const Sheet& sheet, const std::string& id) {
  return found(vet(sheet, invented_evidence()), id);
}

}  // namespace voltwright::claims
