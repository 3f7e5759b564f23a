// The same faults planted by machine in every sound sheet that says enough, and roundings that are no faults:
// so that the forty sheets are not all that is found.
#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "engine/claims/vet.h"
#include "files/catalogue.h"
#include "files/claim_evidence.h"
#include "files/sheet.h"
#include "files/text_file.h"

namespace voltwright::whole {
namespace {

using claims::Severity;
using claims::Sheet;

const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

claims::Findings vetted(const Sheet& sheet) {
  static const claims::Evidence kEvidence = files::read_evidence(catalogue()).value();
  return claims::vet(sheet, kEvidence);
}

const std::vector<Sheet>& sound_sheets() {
  static const std::vector<Sheet> kSheets = [] {
    std::vector<Sheet> sheets;
    const std::string folder = std::string(VW_SOURCE_DIR) + "/tests/whole/claims/sheets";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      const std::string name = entry.path().filename().string();
      if (!name.starts_with("sound-")) continue;
      const std::string text = files::read_text(entry.path().string()).value();
      sheets.push_back(files::read_sheets(text, name, catalogue()).value().sheets.front());
    }
    return sheets;
  }();
  return kSheets;
}

/// A fault: plants itself and says so, or leaves a sheet that does not say enough.
struct Planted {
  const char* finding;
  Severity at_least;
  int least_sheets;  // that it can be planted in
  std::function<bool(Sheet&)> plant;
};

std::vector<Planted> planted() {
  constexpr Severity kDoubt = Severity::kDoubt;
  constexpr Severity kContradiction = Severity::kContradiction;
  return {
      {"consistent.energy", kContradiction, 10,
       [](Sheet& s) {
         if (!s.energy_Wh) return false;
         s.energy_Wh = *s.energy_Wh * 1.2;
         return true;
       }},
      {"possible.energy_per_mass", kDoubt, 19,
       [](Sheet& s) {
         if (!s.mass_kg) return false;
         s.mass_kg = *s.mass_kg / 2.6;  // from the middle of a kind to beyond its best
         return true;
       }},
      {"possible.energy_per_volume", kDoubt, 15,
       [](Sheet& s) {
         if (!s.outside || s.level == claims::Level::kCell) return false;
         s.outside->height_mm /= 3.0;
         return true;
       }},
      {"consistent.charge_time", kContradiction, 18,
       [](Sheet& s) {
         if (!s.charge_A || !s.capacity_Ah) return false;
         s.charger_A = s.charge_A;
         s.charge_time_h = 0.9 * *s.capacity_Ah / *s.charge_A;
         return true;
       }},
      {"consistent.continuous_rate", kContradiction, 10,
       [](Sheet& s) {
         if (!s.continuous_A || !s.capacity_Ah) return false;
         s.continuous_per_h = 1.2 * *s.continuous_A / *s.capacity_Ah;
         return true;
       }},
      {"consistent.charge_voltage", kDoubt, 15,
       [](Sheet& s) {
         if (!s.charge_V || s.kind == "flooded") return false;
         s.charge_V = *s.charge_V * 1.12;
         return true;
       }},
      {"consistent.peak", kContradiction, 10,
       [](Sheet& s) {
         if (!s.peak_A || !s.continuous_A) return false;
         s.peak_A = 0.9 * *s.continuous_A;
         return true;
       }},
      {"possible.cycles", kDoubt, 18,
       [](Sheet& s) {
         if (!s.cycles || !s.cycles_depth) return false;
         s.cycles = *s.cycles * 10.0;
         return true;
       }},
      {"possible.cold_charge", kDoubt, 15,
       [](Sheet& s) {
         if (!s.charge_min_C || s.heated.value_or(false)) return false;
         s.charge_min_C = -45.0;
         return true;
       }},
      {"possible.self_discharge", kDoubt, 12,
       [](Sheet& s) {
         if (!s.self_discharge_per_month) return false;
         s.self_discharge_per_month = 0.0;
         return true;
       }},
      {"misleading.lead_equivalent", kDoubt, 9,
       [](Sheet& s) {
         if (s.kind != "lfp" || s.level == claims::Level::kCell) return false;
         s.replaces_lead_Ah = 3.2 * *s.capacity_Ah;
         return true;
       }},
  };
}

TEST(MachineFaults, AreFoundInEverySheet) {
  for (const Planted& fault : planted()) {
    int sheets = 0;
    for (Sheet sheet : sound_sheets()) {
      if (!fault.plant(sheet)) continue;
      ++sheets;
      bool found = false;
      for (const claims::Finding& f : vetted(sheet)) {
        found = found || (f.id == fault.finding && f.severity >= fault.at_least);
      }
      EXPECT_TRUE(found) << fault.finding << " in \"" << sheet.name << "\"";
    }
    EXPECT_GE(sheets, fault.least_sheets) << fault.finding;
  }
}

// One per cent of rounding in any figure accuses nobody.
TEST(MachineFaults, RoundingIsNone) {
  for (const double factor : {0.99, 1.01}) {
    for (const Sheet& sound : sound_sheets()) {
      for (const auto member : {&Sheet::capacity_Ah, &Sheet::nominal_V, &Sheet::energy_Wh, &Sheet::mass_kg,
                                &Sheet::continuous_A, &Sheet::peak_A, &Sheet::charge_A, &Sheet::charge_V,
                                &Sheet::cycles, &Sheet::charge_time_h, &Sheet::replaces_lead_Ah}) {
        Sheet sheet = sound;
        if (!(sheet.*member)) continue;
        sheet.*member = *(sheet.*member) * factor;
        for (const claims::Finding& f : vetted(sheet)) {
          EXPECT_LT(f.severity, Severity::kDoubt) << sheet.name << ": " << f.id << ": " << f.working;
        }
      }
    }
  }
}

// Leaving out any one figure accuses nobody: silence is no fault.
TEST(MachineFaults, SilenceIsNone) {
  for (const Sheet& sound : sound_sheets()) {
    for (const auto member : {&Sheet::capacity_Ah, &Sheet::nominal_V, &Sheet::energy_Wh, &Sheet::mass_kg,
                              &Sheet::continuous_A, &Sheet::peak_A, &Sheet::peak_s, &Sheet::charge_A,
                              &Sheet::charge_V, &Sheet::cycles, &Sheet::cycles_depth, &Sheet::cycles_C,
                              &Sheet::cycles_end, &Sheet::charge_min_C, &Sheet::capacity_h}) {
      Sheet sheet = sound;
      (sheet.*member).reset();
      for (const claims::Finding& f : vetted(sheet)) {
        // Starting amps that stand alone are told as such.
        if (f.id == "misleading.starting_amps") continue;
        EXPECT_LT(f.severity, Severity::kDoubt) << sheet.name << ": " << f.id << ": " << f.working;
      }
    }
  }
}

}  // namespace
}  // namespace voltwright::whole
