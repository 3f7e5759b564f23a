#pragma once
// Which house system a string of cells suits, and the share of its charge that lies outside what the
// appliances of that system take. Source and limits: docs/method/bank_from_cells.md.
#include "engine/base/curve.h"

namespace voltwright::bank {

/// What the appliances of a house system take between their poles.
struct HouseSystem {
  double system_V = 0.0;   // 12, 24 or 48; 0: none
  double cut_off_V = 0.0;  // inverters and fridges switch off below
  double bears_V = 0.0;    // electronics are not safe above
};

struct HouseFit {
  HouseSystem system;
  double lost_below = 0.0;  // share of the charge at which the cells at rest lie under the cut-off
  double lost_above = 0.0;  // share at which they lie above what the appliances bear
};

/// Share of the states of charge from 0 to 1 at which the open-circuit voltage is below `voltage_V` [1].
/// Exact for the straight lines of the curve, whatever lies outside 0..1 and whether or not it rises.
double share_below(const base::Curve& ocv_V, double voltage_V);

/// The system of 12, 24 and 48 V that leaves the largest share of the charge of `cells` in series usable
/// at rest; of equals the lowest. system_V is 0 if none leaves anything.
HouseFit fit_house(const base::Curve& ocv_V, int cells);

}  // namespace voltwright::bank
