#pragma once
// Catalogue appliance: the ranges a load may take its figures from.
#include <string>

#include "engine/demand/load.h"
#include "engine/units/ranged.h"

namespace voltwright::demand {

struct Appliance {
  std::string id;
  std::string name;
  units::Ranged power_W;        // while running
  units::Ranged energy_Wh_day;  // typical day, for orientation; 0 = not stated
  double surge_factor = 1.0;
  double surge_s = 0.0;
  double standby_W = 0.0;
  Feed feed = Feed::kDirect;
  Need need = Need::kComfort;
  Pattern pattern = Pattern::kHours;
  double hours_per_day = 1.0;   // for kHours
  double events_per_day = 0.0;  // for kEvents
  double event_min = 0.0;       // minutes
  int window_from_s = 0;
  int window_to_s = 0;
  double inside_C = 4.0;  // for kTemperature
  double heat_leak_W_per_K = 0.0;
  double cop_at_25C = 1.5;
  std::string trust;  // A, B or C: three or more sources, two, one or memory
};

}  // namespace voltwright::demand
