#include "engine/bank/builder_check.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>

namespace voltwright::bank {

namespace {

std::string shown(double value) {
  std::array<char, 32> digits{};
  constexpr int kDigits = 3;
  const auto end =
      std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::general, kDigits);
  return {digits.data(), end.ptr};
}

std::string percent(double share) {
  constexpr double kPercent = 100.0;
  return std::to_string(std::lround(share * kPercent)) + " %";
}

base::Problem error(std::string field, std::string what, std::string given, std::string limit,
                    std::string remedy) {
  base::Problem problem;
  problem.field = std::move(field);
  problem.what = std::move(what);
  problem.given = std::move(given);
  problem.limit = std::move(limit);
  problem.remedy = std::move(remedy);
  return problem;
}

base::Problem warning(std::string field, std::string what, std::string given, std::string limit,
                      std::string remedy) {
  base::Problem problem =
      error(std::move(field), std::move(what), std::move(given), std::move(limit), std::move(remedy));
  problem.severity = base::Severity::kWarning;
  return problem;
}

void check_count(base::Problems& problems, const char* field, int count, int most) {
  if (count >= 1 && count <= most) return;
  problems.push_back(error(field, "This count of cells is out of range.", std::to_string(count),
                           "1 to " + std::to_string(most), "Give a whole number of cells."));
}

void check_least(base::Problems& problems, const char* field, double value, bool zero_allowed) {
  if (std::isfinite(value) && (value > 0.0 || (zero_allowed && value == 0.0))) return;
  problems.push_back(error(field, "This figure cannot be used.", shown(value),
                           zero_allowed ? "0 or more" : "more than 0", "Give a finite number."));
}

void check_optional(base::Problems& problems, const char* field, const std::optional<double>& value,
                    bool zero_allowed) {
  if (value) check_least(problems, field, *value, zero_allowed);
}

void check_peak(base::Problems& problems, const char* field, const std::optional<double>& continuous_A,
                const std::optional<double>& peak_A) {
  if (!continuous_A || !peak_A || *peak_A >= *continuous_A) return;
  problems.push_back(error(field, "The peak current is below the continuous one.", shown(*peak_A) + " A",
                           shown(*continuous_A) + " A or more", "Exchange the two or leave the peak out."));
}

void check_cell(base::Problems& problems, const cell::CellFormat& format) {
  check_least(problems, "capacity_Ah", format.capacity_Ah, false);
  check_least(problems, "mass_kg", format.mass_kg.min, false);
  check_least(problems, "ohmic_ohm", format.ohmic_ohm.min, false);
  check_least(problems, "height_mm", format.size.height_mm, false);
  if (format.form == cell::FormFactor::kCylindrical) {
    check_least(problems, "diameter_mm", format.size.diameter_mm, false);
  } else {
    check_least(problems, "thickness_mm", format.size.thickness_mm, false);
    check_least(problems, "width_mm", format.size.width_mm, false);
  }
  check_least(problems, "continuous_A", format.continuous_A, false);
  check_least(problems, "charge_A", format.charge_A, false);
  check_peak(problems, "peak_A", format.continuous_A, format.peak_A);
}

void check_overheads(base::Problems& problems, const Overheads& o) {
  check_least(problems, "cylinder_gap_mm", o.cylinder_gap_mm, true);
  check_least(problems, "prismatic_gap_share", o.prismatic_gap_share, true);
  check_least(problems, "pouch_gap_share", o.pouch_gap_share, true);
  check_least(problems, "clearance_mm", o.clearance_mm, true);
  check_least(problems, "headroom_mm", o.headroom_mm, true);
  check_least(problems, "wall_mm", o.wall_mm, true);
  check_least(problems, "wall_kg_L", o.wall_kg_L, true);
  check_least(problems, "busbar_share", o.busbar_share, true);
  check_least(problems, "protection_ohm", o.protection_ohm, true);
  check_least(problems, "protection_kg", o.protection_kg, true);
  check_optional(problems, "case_kg", o.case_kg, true);
  check_optional(problems, "joint_ohm", o.joint_ohm, true);
  check_optional(problems, "protection_continuous_A", o.protection_continuous_A, false);
  check_optional(problems, "protection_peak_A", o.protection_peak_A, false);
  check_optional(problems, "protection_charge_A", o.protection_charge_A, false);
  check_optional(problems, "busbar_continuous_A", o.busbar_continuous_A, false);
  check_optional(problems, "busbar_peak_A", o.busbar_peak_A, false);
  check_peak(problems, "protection_peak_A", o.protection_continuous_A, o.protection_peak_A);
  check_peak(problems, "busbar_peak_A", o.busbar_continuous_A, o.busbar_peak_A);
}

}  // namespace

base::Problems composition_errors(const cell::CellFormat& format, const cell::Chemistry& chemistry,
                                  int in_series, int in_parallel, const Overheads& overheads) {
  base::Problems problems;
  check_count(problems, "series", in_series, kMostInSeries);
  check_count(problems, "parallel", in_parallel, kMostInParallel);
  if (format.chemistry != chemistry.id) {
    problems.push_back(error("chemistry", "The cell is of another chemistry.", chemistry.id, format.chemistry,
                             "Take the chemistry that the cell names."));
  }
  check_cell(problems, format);
  check_overheads(problems, overheads);
  return problems;
}

base::Problems composition_findings(const Composition& made, const cell::Chemistry& chemistry,
                                    double clamped_ohm) {
  // Less than this of the charge outside the window is no matter: the ends of a curve are steep.
  constexpr double kNoMatter = 0.005;
  base::Problems findings;
  const HouseFit& fit = made.house;
  const std::string system = shown(fit.system.system_V) + " V";
  const std::string window = shown(made.empty_V) + " to " + shown(made.highest_V) + " V";
  if (fit.system.system_V == 0.0) {
    findings.push_back(warning("series", "No house system runs at the voltage of these cells.", window,
                               "12, 24 or 48 V systems", "Change the count in series."));
    return findings;
  }
  const double rest_above_V = std::max(made.full_V, made.charge_V);
  if (fit.lost_above >= kNoMatter || made.charge_V > fit.system.bears_V) {
    findings.push_back(
        warning("voltage",
                "Charged to the full it exceeds what the appliances of a " + system + " system bear; the " +
                    percent(fit.lost_above) + " of the charge above that must be left unused.",
                shown(rest_above_V) + " V", shown(fit.system.bears_V) + " V",
                "Charge to a lower voltage, put a converter in between, or take a cell less in series."));
  }
  if (fit.lost_below >= kNoMatter) {
    findings.push_back(warning(
        "voltage",
        "Below " + percent(fit.lost_below) + " charge it lies, at rest, under the usual cut-off of a " +
            system + " system; that part of the charge is out of reach, and more of it under load.",
        window, shown(fit.system.cut_off_V) + " V",
        "Use appliances with a wider range, a converter, or a cell more in series."));
  }
  if (!chemistry.simulated) {
    findings.push_back(
        warning("chemistry", "No life can be computed for this chemistry: " + chemistry.not_simulated_because,
                chemistry.id, "", ""));
  }
  if (clamped_ohm > 0.0) {
    constexpr double kMilli = 1e3;
    findings.push_back(
        warning("resistance",
                "The simulation takes the resistance of the chemistry, " + shown(clamped_ohm * kMilli) +
                    " mohm more than these parts have: its voltages and losses are on the pessimistic side.",
                "", "", ""));
  }
  return findings;
}

}  // namespace voltwright::bank
