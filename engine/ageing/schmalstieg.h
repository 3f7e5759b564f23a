#pragma once
// Nickel-manganese-cobalt ageing after Schmalstieg et al. 2014. Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"
#include "engine/base/curve.h"

namespace voltwright::ageing {

/// capacity = 1 - a t^0.75 - b sqrt(Q), resistance = 1 + c t^0.75 + d Q; t in days, Q in Ah in plus Ah out;
/// a and c = max(0, slope V - offset) exp(-K/T), V the rest voltage;
/// b = square (Vm - V0)^2 + base + by_depth D; d = max(least, square (Vm - V0)^2 + base + by_depth D),
/// Vm the quadratic mean voltage of the swing.
struct SchmalstiegConstants {
  double cell_Ah = 0.0;
  base::Curve rest_V_by_soc;
  double time_exponent = 0.0;
  double held_below_C = 0.0;  // the rates of time are held below it
  double capacity_slope_per_V = 0.0;
  double capacity_offset = 0.0;
  double capacity_K = 0.0;
  double resistance_slope_per_V = 0.0;
  double resistance_offset = 0.0;
  double resistance_K = 0.0;
  double use_square = 0.0;
  double use_centre_V = 0.0;
  double use_base = 0.0;
  double use_by_depth = 0.0;
  double growth_square = 0.0;
  double growth_centre_V = 0.0;
  double growth_base = 0.0;
  double growth_by_depth = 0.0;
  double growth_least = 0.0;
};

/// Quadratic mean of the rest voltage between two states of charge [V]; the voltage itself if they are one.
double quadratic_mean_V(const base::Curve& rest_V_by_soc, double low_soc, double high_soc);

class Schmalstieg final : public Part {
 public:
  Schmalstieg(SchmalstiegConstants constants, const Validity& validity)
      : Part(validity), constants_(std::move(constants)) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// The four rates: per day^0.75 at a rest voltage, per root Ah and per Ah at a mean voltage and depth.
  double loss_per_day_power(double temperature_C, double rest_V) const;
  double growth_per_day_power(double temperature_C, double rest_V) const;
  double loss_per_root_Ah(double mean_V, double depth) const;
  double growth_per_Ah(double mean_V, double depth) const;

 private:
  SchmalstiegConstants constants_;
};

}  // namespace voltwright::ageing
