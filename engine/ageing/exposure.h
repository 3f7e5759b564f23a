#pragma once
// What a stretch of use does to a bank, as far as ageing asks: time at temperature and charge, and swings.
#include <vector>

#include "engine/ageing/plate_use.h"

namespace voltwright::ageing {

/// Hours spent at a temperature and a state of charge.
struct Dwell {
  double temperature_C = 25.0;
  double soc = 0.5;
  double hours = 0.0;
};

/// One counted swing of the state of charge; `count` is 1 for a closed cycle and 0.5 for a half cycle.
struct Swing {
  double depth = 0.0;     // range of the state of charge, 0..1
  double mean_soc = 0.5;  // midpoint of the range
  double count = 1.0;
  double charge_per_h = 0.0;     // mean C-rate of its charging part [1/h]; 0 = not known
  double discharge_per_h = 0.0;  // the same of its discharging part
  double temperature_C = 25.0;   // mean over the swing
};

struct Exposure {
  double hours = 0.0;
  std::vector<Dwell> dwell;  // hours add up to `hours`
  std::vector<Swing> swings;
  PlateUse plates;  // of lead-acid, if it was recorded
};

}  // namespace voltwright::ageing
