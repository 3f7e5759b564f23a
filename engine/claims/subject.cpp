#include "engine/claims/subject.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;

constexpr double kCubicMillimetresPerLitre = 1e6;

bool is_of_family(const Kind& kind, const std::string& family) {
  if (family == "lead-acid") return kind.chemistry.family == cell::Family::kLeadAcid;
  return family == "lithium-ion" && kind.chemistry.family == cell::Family::kLithiumIon;
}

void set_kinds(Subject& s) {
  for (const Kind& kind : s.evidence.kinds) {
    if (kind.chemistry.id == s.sheet.kind) s.kind = &kind;
    if (kind.chemistry.id == s.sheet.kind || is_of_family(kind, s.sheet.kind)) s.kinds.push_back(&kind);
  }
  s.lead_acid = !s.kinds.empty() && s.kinds.front()->chemistry.family == cell::Family::kLeadAcid;
}

void set_series(Subject& s) {
  s.series = s.sheet.series;
  if (s.series || s.kind == nullptr || !s.sheet.nominal_V) return;
  // 12 V names a system: six cells of lead-acid, but four of iron-phosphate at 3.2 V.
  const double cells = *s.sheet.nominal_V / s.kind->chemistry.nominal_V;
  s.series = std::max(1, static_cast<int>(std::lround(cells)));
}

void set_energy(Subject& s) {
  const Sheet& sheet = s.sheet;
  if (sheet.capacity_Ah && sheet.nominal_V) {
    s.energy_Wh = *sheet.capacity_Ah * *sheet.nominal_V;
    s.energy_words = figure(*sheet.capacity_Ah, "Ah") + " × " + figure(*sheet.nominal_V, "V");
  } else if (sheet.energy_Wh) {
    s.energy_Wh = sheet.energy_Wh;
    s.energy_words = figure(*sheet.energy_Wh, "Wh");
  }
}

void set_volume(Subject& s) {
  const Sheet& sheet = s.sheet;
  if (sheet.outside) {
    const Outside& o = *sheet.outside;
    s.volume_L = o.length_mm * o.width_mm * o.height_mm / kCubicMillimetresPerLitre;
  } else if (sheet.volume_L) {
    s.volume_L = sheet.volume_L;
  } else {
    s.volume_L = cylinder_volume_L(sheet.form);
  }
}

}  // namespace

std::optional<double> cylinder_volume_L(const std::string& form) {
  constexpr std::size_t kDigits = 5;
  if (form.size() != kDigits || form.find_first_not_of("0123456789") != std::string::npos)
    return std::nullopt;
  const auto digit = [&](std::size_t i) { return static_cast<double>(form[i] - '0'); };
  // Two digits of diameter in mm, three of height in tenths of a millimetre.
  const double diameter_mm = 10.0 * digit(0) + digit(1);
  const double height_mm = 10.0 * digit(2) + digit(3) + 0.1 * digit(4);
  if (diameter_mm <= 0.0 || height_mm <= 0.0) return std::nullopt;
  return 0.25 * std::numbers::pi * diameter_mm * diameter_mm * height_mm / kCubicMillimetresPerLitre;
}

bool is_system_voltage(double voltage_V) {
  static constexpr std::array<double, 5> kSystems_V = {6.0, 12.0, 24.0, 36.0, 48.0};
  return std::find(kSystems_V.begin(), kSystems_V.end(), voltage_V) != kSystems_V.end();
}

std::string kind_words(const Subject& subject) {
  return subject.kind != nullptr ? subject.kind->chemistry.short_name : subject.sheet.kind;
}

Subject subject_of(const Sheet& sheet, const Evidence& evidence) {
  Subject s{sheet, evidence, {}, nullptr, false, {}, {}, {}, {}, {}, {}};
  set_kinds(s);
  set_series(s);
  set_energy(s);
  set_volume(s);
  s.Wh_per_kg = sheet.energy_Wh_per_kg;
  s.Wh_per_L = sheet.energy_Wh_per_L;
  if (s.energy_Wh && sheet.mass_kg) s.Wh_per_kg = *s.energy_Wh / *sheet.mass_kg;
  if (s.energy_Wh && s.volume_L) s.Wh_per_L = *s.energy_Wh / *s.volume_L;
  return s;
}

}  // namespace voltwright::claims
