#pragma once
#include "engine/units/quantity.h"

namespace voltwright::sky {

/// How a module is mounted, which decides how warm it gets.
enum class Mounting { kOpenRack, kVentilatedRoof, kGluedFlat };

/// Data-sheet values of one photovoltaic module at 1000 W/m2 and 25 degC.
struct Module {
  units::Power peak;
  units::Voltage open_circuit;
  units::Current short_circuit;
  units::Voltage at_peak_voltage;
  units::Current at_peak_current;
  double power_per_K = -0.0040;    // relative, negative
  double voltage_per_K = -0.0030;  // relative, negative
};

}  // namespace voltwright::sky
