// Figures of the sheet against each other.
#include <cmath>
#include <utility>

#include "engine/cell/peukert.h"
#include "engine/claims/density.h"
#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;

constexpr const char* kOwnFigures = "the sheet's own figures";
// 12.8 V counted as 12 V is 6 %; rounding to whole sizes some more (common practice, no source).
constexpr double kRounding = 0.02;
constexpr double kNamedVoltage = 0.08;
constexpr double kRateRounding = 0.1;
constexpr double kDensityRounding = 0.05;
constexpr double kSizeRounding =
    0.15;  // handles, terminals and lips count in one figure and not in the other

void check_energy(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.energy_Wh || !sheet.capacity_Ah || !sheet.nominal_V) return;
  const double product_Wh = *sheet.capacity_Ah * *sheet.nominal_V;
  const double off = std::fabs(*sheet.energy_Wh / product_Wh - 1.0);
  Finding f;
  f.id = "consistent.energy";
  f.claim = "Energy " + figure(*sheet.energy_Wh, "Wh");
  f.number = product_Wh;
  f.claimed = sheet.energy_Wh;
  f.unit = "Wh";
  f.least = product_Wh * (1.0 - kNamedVoltage);
  f.most = product_Wh * (1.0 + kNamedVoltage);
  f.source = std::string(kOwnFigures) + "; up to 8 % is rounding or a voltage named 12 for 12.8";
  f.working = figure(*sheet.capacity_Ah, "Ah") + " × " + figure(*sheet.nominal_V, "V") + " = " +
              figure(product_Wh, "Wh");
  if (off <= kRounding) {
    f.severity = Severity::kHolds;
    f.say = "Capacity times voltage gives the energy that is stated.";
  } else if (off <= kNamedVoltage) {
    f.severity = Severity::kNote;
    f.say = "Capacity times voltage gives " + figure(product_Wh, "Wh") + ", not " +
            figure(*sheet.energy_Wh, "Wh") + ". So much can come of rounding or of another voltage.";
  } else {
    f.severity = Severity::kContradiction;
    f.say = "Capacity times voltage gives " + figure(product_Wh, "Wh") + ", but the sheet says " +
            figure(*sheet.energy_Wh, "Wh") + ". One of the three figures is wrong: ask which.";
  }
  findings.push_back(std::move(f));
}

struct RateClaim {
  const char* id;
  const char* words;
  std::optional<double> current_A;
  std::optional<double> per_h;
};

void check_rate(const Subject& s, const RateClaim& claim, Findings& findings) {
  if (!claim.current_A || !claim.per_h || !s.sheet.capacity_Ah) return;
  const double product_A = *claim.per_h * *s.sheet.capacity_Ah;
  Finding f;
  f.id = claim.id;
  f.claim =
      std::string(claim.words) + " " + figure(*claim.current_A, "A") + ", " + figure(*claim.per_h) + "C";
  f.number = product_A;
  f.claimed = claim.current_A;
  f.unit = "A";
  f.least = product_A * (1.0 - kRateRounding);
  f.most = product_A * (1.0 + kRateRounding);
  f.source = std::string(kOwnFigures) + "; up to 10 % is rounding";
  f.working =
      figure(*claim.per_h) + "C × " + figure(*s.sheet.capacity_Ah, "Ah") + " = " + figure(product_A, "A");
  const bool meets = *claim.current_A >= *f.least && *claim.current_A <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "Current and C-rate agree."
                : "The C-rate of this capacity is " + figure(product_A, "A") + ", but the sheet says " +
                      figure(*claim.current_A, "A") + ". Ask which of the two is meant.";
  findings.push_back(std::move(f));
}

void check_peak(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.peak_A || !sheet.continuous_A || *sheet.peak_A >= *sheet.continuous_A) return;
  Finding f;
  f.id = "consistent.peak";
  f.severity = Severity::kContradiction;
  f.claim = "Peak " + figure(*sheet.peak_A, "A") + ", continuous " + figure(*sheet.continuous_A, "A");
  f.number = *sheet.peak_A / *sheet.continuous_A;
  f.least = 1.0;
  f.source = kOwnFigures;
  f.working =
      figure(*sheet.peak_A, "A") + " / " + figure(*sheet.continuous_A, "A") + " = " + figure(*f.number);
  f.say = "The peak current is said to be smaller than the continuous one. The two may be swapped: ask.";
  findings.push_back(std::move(f));
}

struct DensityClaim {
  const char* id;
  const char* words;
  const char* unit;
  std::optional<double> claimed;
  std::optional<double> amount;  // kg or L
  const char* amount_unit;
  bool per_mass;
};

void check_density_text(const Subject& s, const DensityClaim& claim, Findings& findings) {
  if (!claim.claimed || !claim.amount || !s.energy_Wh) return;
  const double quotient = *s.energy_Wh / *claim.amount;
  if (reads_like_cell(s, *claim.claimed, quotient, claim.per_mass)) return;  // told as what it means
  Finding f;
  f.id = claim.id;
  f.claim = std::string(claim.words) + " " + figure(*claim.claimed, claim.unit);
  f.number = quotient;
  f.claimed = claim.claimed;
  f.unit = claim.unit;
  f.least = quotient * (1.0 - kDensityRounding);
  f.most = quotient * (1.0 + kDensityRounding);
  f.source = std::string(kOwnFigures) + "; up to 5 % is rounding";
  f.working = s.energy_words + " / " + figure(*claim.amount, claim.amount_unit) + " = " +
              figure(quotient, claim.unit);
  const bool meets = *claim.claimed >= *f.least && *claim.claimed <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "It follows from the energy and what the sheet says of mass or size."
                : "By its own figures it is " + figure(quotient, claim.unit) + ", not " +
                      figure(*claim.claimed, claim.unit) + ". Ask which figure is wrong.";
  findings.push_back(std::move(f));
}

void check_volume(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.volume_L || !sheet.outside || !s.volume_L) return;
  Finding f;
  f.id = "consistent.volume";
  f.claim = "Volume " + figure(*sheet.volume_L, "L");
  f.number = *s.volume_L;
  f.claimed = sheet.volume_L;
  f.unit = "L";
  f.least = *s.volume_L * (1.0 - kSizeRounding);
  f.most = *s.volume_L * (1.0 + kSizeRounding);
  f.source = std::string(kOwnFigures) + "; up to 15 % for terminals and handles";
  f.working = figure(sheet.outside->length_mm) + " × " + figure(sheet.outside->width_mm) + " × " +
              figure(sheet.outside->height_mm, "mm") + " = " + figure(*s.volume_L, "L");
  const bool meets = *sheet.volume_L >= *f.least && *sheet.volume_L <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "Size and volume agree."
                : "Size and volume do not agree: measure before you build a place for it.";
  findings.push_back(std::move(f));
}

void check_window(const char* words, const std::optional<double>& min_C, const std::optional<double>& max_C,
                  Findings& findings) {
  if (!min_C || !max_C || *min_C < *max_C) return;
  Finding f;
  f.id = "consistent.temperature";
  f.severity = Severity::kContradiction;
  f.claim = std::string(words) + " from " + figure(*min_C, "°C") + " to " + figure(*max_C, "°C");
  f.number = *max_C - *min_C;
  f.unit = "K";
  f.least = 0.0;
  f.source = kOwnFigures;
  f.working = figure(*max_C) + " − " + figure(*min_C) + " = " + figure(*f.number, "K");
  f.say = "The lower temperature limit is not below the upper one. Ask for the right figures.";
  findings.push_back(std::move(f));
}

/// Reserve minutes at 25 A against the capacity: Peukert's exponent of the two.
void check_reserve(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  if (!sheet.reserve_min || !sheet.capacity_Ah || s.kinds.empty()) return;
  constexpr double kMinutesPerHour = 60.0;
  constexpr double kGivesMore = 1.05;          // lithium cells give up to 4 % more than their rating
  constexpr double kLithiumAtLeast = 0.8;      // in minutes that are rounded or counted under load
  constexpr double kPublishedExponent = 1.35;  // fourteen published pairs: 1.10 to 1.29
  const double drawn_Ah = cell::kReserveTest_A * *sheet.reserve_min / kMinutesPerHour;
  const cell::RatedCapacity rating = {*sheet.capacity_Ah,
                                      sheet.capacity_h.value_or(s.kinds.front()->chemistry.rated_hours)};
  Finding f;
  f.id = "consistent.reserve";
  f.claim = "Reserve " + figure(*sheet.reserve_min, "min") + " at 25 A, " + figure(*sheet.capacity_Ah, "Ah");
  f.number = drawn_Ah;
  f.unit = "Ah";
  f.least = s.lead_acid ? cell::peukert_Ah(rating, kPublishedExponent, cell::kReserveTest_A)
                        : kLithiumAtLeast * *sheet.capacity_Ah;
  f.most = *sheet.capacity_Ah * (s.lead_acid ? cell::kMostOfRating : kGivesMore);
  f.source = s.lead_acid
                 ? "fourteen published pairs, Peukert exponent 1.10 to 1.29 [reservePairs]; up to 1.35 taken"
                 : "lithium gives its capacity at any house current";
  f.working = "25 A × " + figure(*sheet.reserve_min, "min") + " / 60 = " + figure(drawn_Ah, "Ah");
  const bool meets = drawn_Ah >= *f.least && drawn_Ah <= *f.most;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "Reserve minutes and capacity go together."
                : "The reserve minutes give " + figure(drawn_Ah, "Ah") +
                      " at 25 A. That does not go together with " + figure(*sheet.capacity_Ah, "Ah") +
                      ": ask for the discharge table.";
  findings.push_back(std::move(f));
}

}  // namespace

void check_consistent(const Subject& subject, Findings& findings) {
  const Sheet& s = subject.sheet;
  check_energy(subject, findings);
  check_rate(subject, {"consistent.continuous_rate", "Continuous", s.continuous_A, s.continuous_per_h},
             findings);
  check_rate(subject, {"consistent.peak_rate", "Peak", s.peak_A, s.peak_per_h}, findings);
  check_rate(subject, {"consistent.charge_rate", "Charge", s.charge_A, s.charge_per_h}, findings);
  check_peak(subject, findings);
  check_density_text(
      subject,
      {"consistent.energy_per_mass", "Energy per mass", "Wh/kg", s.energy_Wh_per_kg, s.mass_kg, "kg", true},
      findings);
  check_density_text(subject,
                     {"consistent.energy_per_volume", "Energy per volume", "Wh/L", s.energy_Wh_per_L,
                      subject.volume_L, "L", false},
                     findings);
  check_volume(subject, findings);
  check_window("Charge", s.charge_min_C, s.charge_max_C, findings);
  check_window("Discharge", s.discharge_min_C, s.discharge_max_C, findings);
  check_reserve(subject, findings);
}

}  // namespace voltwright::claims
