#pragma once
// A sheet with what follows from it directly, ready for the rules.
#include <optional>
#include <string>
#include <vector>

#include "engine/claims/evidence.h"
#include "engine/claims/sheet.h"

namespace voltwright::claims {

struct Subject {
  const Sheet& sheet;
  const Evidence& evidence;
  std::vector<const Kind*> kinds;  // chemistries that it can be: one if the sheet names it
  const Kind* kind = nullptr;      // that one, null if the sheet names only a family
  bool lead_acid = false;
  std::optional<int> series;        // cells in series, claimed or from the voltage
  std::optional<double> energy_Wh;  // claimed, or capacity times voltage
  std::optional<double> volume_L;   // claimed, or of the outer size, or of the form of a cell
  std::optional<double> Wh_per_kg;  // of energy and mass; of the claimed ratio if one of them is not said
  std::optional<double> Wh_per_L;
  std::string energy_words;  // how the energy was had
};

/// Looks up the chemistry and works out energy, volume and densities. A kind that is neither a chemistry of
/// the evidence nor a family leaves `kinds` empty.
Subject subject_of(const Sheet& sheet, const Evidence& evidence);

/// Volume [L] of a cylinder that is named by its diameter and height in mm, such as 18650; nothing for other
/// words.
std::optional<double> cylinder_volume_L(const std::string& form);

/// The nominal voltage by which systems are named: 6, 12, 24, 36, 48.
bool is_system_voltage(double voltage_V);

/// "LFP", "lead-acid": how the kind is called in a sentence.
std::string kind_words(const Subject& subject);

}  // namespace voltwright::claims
