#pragma once
// The current-voltage curve of a module whose highest power is that of the linear power model.
#include "engine/sky/module_model.h"

namespace voltwright::sky {

/// Current and its derivative by the voltage.
struct CurvePoint {
  double current_A = 0.0;
  double slope_A_V = 0.0;
};

/// Explicit curve of Rauschenbach 1980 of one module. Its current follows irradiance and temperature; its
/// voltages are stretched so that its peak has exactly the power of `module_power`. A directly coupled array
/// therefore never gives more than a tracked one, whatever the module's temperature coefficient of power.
/// A module whose peak point is not inside the corner of open and short circuit gives no current.
class CoupledModule {
 public:
  explicit CoupledModule(const Module& module);

  /// Highest power at an absorbed irradiance of 0 to 1400 W/m2 and a cell temperature, W.
  double peak_W(double irradiance_W_m2, double module_C) const;

  /// The curve at a voltage of the module of 0 or more.
  CurvePoint at(double irradiance_W_m2, double module_C, double voltage_V) const;

 private:
  double label_W_ = 0.0;
  double power_per_K_ = 0.0;
  double short_circuit_A_ = 0.0;  // at 1000 W/m2 and 25 degC
  double open_circuit_V_ = 0.0;
  double c1_ = 0.0;
  double c2_ = 1.0;
  double best_W_ = 0.0;  // of the unstretched curve
};

}  // namespace voltwright::sky
