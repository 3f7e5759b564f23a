#pragma once
// A battery: cells plus protection, what is bought.
#include <string>

#include "engine/units/ranged.h"

namespace voltwright::bank {

struct Battery {
  std::string id;         // file name without extension
  std::string name;       // "LFP 12.8 V 100 Ah"
  std::string chemistry;  // catalogue id
  double nominal_V = 12.8;
  double system_V = 12.0;      // the system it is made for: 12, 24 or 48 (6 for half blocks)
  double capacity_Ah = 100.0;  // at the chemistry's rated hours
  int cells_in_series = 4;
  int max_in_series = 1;
  units::Ranged mass_kg;
  units::Ranged volume_L;
  units::Ranged price;  // in `price_currency` of `price_year`
  std::string price_currency = "USD";
  int price_year = 2025;
  bool price_is_assumption = false;
  double continuous_A = 100.0;  // discharge
  double peak_A = 200.0;
  double peak_s = 10.0;
  double charge_A = 50.0;
  double extra_resistance_ohm = 0.0;  // protection, fuse and terminals beyond the cells
  bool has_protection = true;         // electronic; false for lead-acid
  double over_voltage_V = 0.0;        // protection opens for charge; 0 if none
  double under_voltage_V = 0.0;  // protection opens for discharge; for lead-acid the cut-off of the loads
  double under_voltage_release_V = 0.0;
  /// Where the maker permits a reduced charge below the chemistry's lower limit: down to this temperature at
  /// this rate, multiples of the capacity per hour. Rate 0 = not permitted.
  double reduced_charge_min_C = 0.0;
  double reduced_charge_rate = 0.0;
};

}  // namespace voltwright::bank
