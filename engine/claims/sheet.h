#pragma once
// What a data sheet, a shop text or a seller says of a battery. Nothing here is believed yet.
#include <optional>
#include <string>

namespace voltwright::claims {

/// What the figures are of: a bare cell, or a finished battery with its case and protection.
enum class Level { kCell, kBattery };

/// Outer size; all three or none.
struct Outside {
  double length_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
};

/// The claims of one sheet. Whatever is not said is empty. Rates are multiples of the capacity per hour,
/// shares run from 0 to 1, temperatures are in degC.
struct Sheet {
  std::string name;
  std::string kind;  // id of a chemistry of the catalogue, or "lithium-ion" or "lead-acid" if no more is said
  Level level = Level::kBattery;
  std::string form;           // of a bare cell: "18650"; otherwise empty
  std::optional<int> year;    // of the sheet
  std::optional<int> series;  // cells in series

  std::optional<double> capacity_Ah;
  std::optional<double> capacity_h;  // discharge time at which the capacity is stated
  std::optional<double> nominal_V;
  std::optional<double> energy_Wh;

  std::optional<double> mass_kg;
  std::optional<Outside> outside;
  std::optional<double> volume_L;
  std::optional<double> energy_Wh_per_kg;
  std::optional<double> energy_Wh_per_L;

  std::optional<double> continuous_A;
  std::optional<double> continuous_s;  // how long "continuous" is said to last
  std::optional<double> continuous_per_h;
  std::optional<double> peak_A;
  std::optional<double> peak_s;
  std::optional<double> peak_per_h;
  std::optional<double> cold_cranking_A;    // at -18 degC
  std::optional<double> marine_cranking_A;  // at 0 degC
  std::optional<double> reserve_min;        // at 25 A

  std::optional<double> charge_A;
  std::optional<double> charge_per_h;
  std::optional<double> charge_V;
  std::optional<double> charge_time_h;  // from empty to full
  std::optional<double> charger_A;      // with this charger

  std::optional<double> cycles;
  std::optional<double> cycles_depth;
  std::optional<double> cycles_C;
  std::optional<double> cycles_end;  // share of the capacity that is left at the end
  std::optional<double> calendar_years;

  std::optional<double> charge_min_C;
  std::optional<double> charge_max_C;
  std::optional<double> discharge_min_C;
  std::optional<double> discharge_max_C;
  std::optional<bool> heated;           // a heater warms it before it is charged in the cold
  std::optional<double> cold_charge_A;  // reduced current that is allowed in the cold

  std::optional<double> self_discharge_per_month;
  std::optional<double> usable_share;
  std::optional<double> replaces_lead_Ah;  // "replaces 200 Ah of lead-acid"
  std::optional<bool> protection;          // electronic

  std::optional<double> price;
  std::string currency = "USD";
};

}  // namespace voltwright::claims
