#include "engine/bank/builder.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "engine/bank/builder_check.h"
#include "engine/base/curve.h"

namespace voltwright::bank {

namespace {

// Protection opens this much above the upper limit of the cells, and lets discharge again this much above the
// lower one. Inside the spans of published boards: iron-phosphate 3.65 to 3.90 V, NMC 4.25 to 4.35 V.
constexpr double kOpensAbove = 1.02;
constexpr double kReleasesAbove = 1.05;
// Median of published 12 V iron-phosphate batteries, per hour.
constexpr double kProtectionRate = 1.0;
constexpr double kPeakOverContinuous = 2.0;

double gap_of(const cell::CellFormat& format, const Overheads& overheads) {
  switch (format.form) {
    case cell::FormFactor::kCylindrical:
      return overheads.cylinder_gap_mm;
    case cell::FormFactor::kPrismatic:
      return overheads.prismatic_gap_share * format.size.thickness_mm;
    case cell::FormFactor::kPouch:
      return overheads.pouch_gap_share * format.size.thickness_mm;
  }
  return 0.0;
}

CurrentLimit least_of(double cells_A, std::optional<double> busbars_A, double protection_A) {
  CurrentLimit limit{cells_A, Binding::kCells};
  if (busbars_A && *busbars_A < limit.current_A) limit = {*busbars_A, Binding::kBusbars};
  if (protection_A < limit.current_A) limit = {protection_A, Binding::kProtection};
  return limit;
}

void set_voltages(Composition& made, const cell::Chemistry& chemistry) {
  const double n = made.in_series;
  made.empty_V = n * chemistry.limits.min_V;
  made.nominal_V = n * chemistry.nominal_V;
  made.mean_V = n * mean_open_circuit_V(chemistry);
  made.full_V = n * base::curve_at(chemistry.ocv_V, 1.0, chemistry.limits.max_V);
  made.charge_V = n * chemistry.stages.absorption_V;
  made.highest_V = n * chemistry.limits.max_V;
  made.house = fit_house(chemistry.ocv_V, made.in_series);
}

void set_mass_and_room(Composition& made, const cell::CellFormat& format, const Overheads& overheads) {
  const int count = made.in_series * made.in_parallel;
  made.arrangement = arrange(format, count, overheads.packing, gap_of(format, overheads));
  Room inside = grown(made.arrangement.block, overheads.clearance_mm);
  // Below the cells there is a floor plate at most: the clearance of that side is part of the headroom.
  inside.height_mm = made.arrangement.block.height_mm + overheads.headroom_mm;
  made.outside = grown(inside, overheads.wall_mm);
  made.volume_L = litres(made.outside);
  made.cells_share = count * cell_litres(format) / made.volume_L;

  made.cells_kg = count * format.mass_kg.typical;
  made.busbars_kg = overheads.busbar_share * made.cells_kg;
  made.case_kg = overheads.case_kg.value_or((made.volume_L - litres(inside)) * overheads.wall_kg_L);
  made.protection_kg = overheads.protection_kg;
  const double beside_kg = made.busbars_kg + made.case_kg + made.protection_kg;
  made.mass_kg = {count * format.mass_kg.min + beside_kg, made.cells_kg + beside_kg,
                  count * format.mass_kg.max + beside_kg};
  made.Wh_per_kg = made.nominal_Wh / made.mass_kg.typical;
  made.Wh_per_L = made.nominal_Wh / made.volume_L;
}

void set_currents(Composition& made, const cell::CellFormat& format, const Overheads& overheads) {
  const double m = made.in_parallel;
  // A peak that was given without a continuous current bounds that too.
  double protection_A = kProtectionRate * made.capacity_Ah;
  if (overheads.protection_peak_A) protection_A = std::min(protection_A, *overheads.protection_peak_A);
  protection_A = overheads.protection_continuous_A.value_or(protection_A);
  std::optional<double> busbar_A = overheads.busbar_continuous_A;
  std::optional<double> busbar_peak_A = overheads.busbar_peak_A;
  if (!busbar_A) {
    busbar_A = busbar_peak_A;
  } else if (!busbar_peak_A) {
    busbar_peak_A = kPeakOverContinuous * *busbar_A;
  }
  made.continuous = least_of(m * format.continuous_A, busbar_A, protection_A);
  made.peak = least_of(m * format.peak_A, busbar_peak_A,
                       overheads.protection_peak_A.value_or(kPeakOverContinuous * protection_A));
  made.charge = least_of(m * format.charge_A, busbar_A, overheads.protection_charge_A.value_or(protection_A));
}

void set_resistance(Composition& made, const cell::CellFormat& format, const Overheads& overheads) {
  const double strings = static_cast<double>(made.in_series) / made.in_parallel;
  const bool welded = format.form == cell::FormFactor::kCylindrical && format.capacity_Ah < kWeldedBelow_Ah;
  const double usual_ohm = welded ? kWelded_ohm : kBolted_ohm;
  made.cells_ohm = strings * format.ohmic_ohm.typical;
  made.joints_ohm = strings * 2.0 * overheads.joint_ohm.value_or(usual_ohm);
  made.protection_ohm = overheads.protection_ohm;
  made.resistance_ohm = made.cells_ohm + made.joints_ohm + made.protection_ohm;
  const auto current_A = [&](double cell_ohm) {
    return made.full_V / (strings * cell_ohm + made.joints_ohm);
  };
  made.short_circuit_A = {current_A(format.ohmic_ohm.max), current_A(format.ohmic_ohm.typical),
                          current_A(format.ohmic_ohm.min)};
}

Battery battery_of(const Composition& made, const cell::CellFormat& format, const cell::Chemistry& chemistry,
                   double extra_ohm) {
  const std::string counts = std::to_string(made.in_series) + "s" + std::to_string(made.in_parallel) + "p";
  Battery battery;
  battery.id = format.id + "-" + counts;
  battery.name = format.name + ", " + counts;
  battery.chemistry = chemistry.id;
  battery.nominal_V = made.nominal_V;
  battery.system_V = made.house.system.system_V;
  battery.capacity_Ah = made.capacity_Ah;
  battery.cells_in_series = made.in_series;
  battery.max_in_series = 1;  // protection made for this string does not bear the voltage of two
  battery.mass_kg = made.mass_kg;
  battery.volume_L = {made.volume_L, made.volume_L, made.volume_L};
  battery.price_is_assumption = true;
  battery.continuous_A = made.continuous.current_A;
  battery.peak_A = made.peak.current_A;
  battery.peak_s = format.peak_s;
  battery.charge_A = made.charge.current_A;
  battery.extra_resistance_ohm = extra_ohm;
  battery.has_protection = true;
  battery.over_voltage_V = made.highest_V * kOpensAbove;
  battery.under_voltage_V = made.empty_V;
  battery.under_voltage_release_V = made.empty_V * kReleasesAbove;
  return battery;
}

}  // namespace

const char* name_of(Binding binding) {
  switch (binding) {
    case Binding::kCells:
      return "the cells";
    case Binding::kBusbars:
      return "the busbars";
    case Binding::kProtection:
      return "the protection";
  }
  return "";
}

double mean_open_circuit_V(const cell::Chemistry& chemistry) {
  std::vector<double> stops = {0.0};
  for (const base::CurvePoint& point : chemistry.ocv_V) {
    if (point.x > 0.0 && point.x < 1.0) stops.push_back(point.x);
  }
  stops.push_back(1.0);
  double area_V = 0.0;
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const double ends_V =
        base::curve_at(chemistry.ocv_V, stops[i - 1], 0.0) + base::curve_at(chemistry.ocv_V, stops[i], 0.0);
    area_V += 0.5 * ends_V * (stops[i] - stops[i - 1]);
  }
  return area_V;
}

base::Result<Composition> compose(const cell::CellFormat& format, const cell::Chemistry& chemistry,
                                  int in_series, int in_parallel, const Overheads& overheads) {
  base::Problems errors = composition_errors(format, chemistry, in_series, in_parallel, overheads);
  if (!errors.empty()) return errors;
  Composition made;
  made.in_series = in_series;
  made.in_parallel = in_parallel;
  made.capacity_Ah = in_parallel * format.capacity_Ah;
  set_voltages(made, chemistry);
  made.nominal_Wh = made.nominal_V * made.capacity_Ah;
  made.rest_Wh = made.mean_V * made.capacity_Ah;
  set_mass_and_room(made, format, overheads);
  set_currents(made, format, overheads);
  set_resistance(made, format, overheads);
  // The simulation takes the cells' part from the chemistry; what the composition has beyond it is added.
  const double simulated_cells_ohm = chemistry.resistance.ohmic_ohm_Ah * in_series / made.capacity_Ah;
  const double extra_ohm = made.resistance_ohm - simulated_cells_ohm;
  made.battery = battery_of(made, format, chemistry, std::max(0.0, extra_ohm));
  made.findings = composition_findings(made, chemistry, std::max(0.0, -extra_ohm));
  return made;
}

}  // namespace voltwright::bank
