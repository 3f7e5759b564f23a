#pragma once
// Manganese-oxide ageing after Xu et al. 2018: linear damage behind a loss that starts fast.
// Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"

namespace voltwright::ageing {

/// loss = 1 - a exp(-b f) - (1 - a) exp(-f); f = sum of n S_D(D) S_s S_T + k t S_s S_T, t in seconds,
/// S_D = 1 / (d1 D^p + d2), S_s = exp(k_s (z - z0)), S_T = exp(k_T (T - T0) T0 / T).
struct XuConstants {
  double film_share = 0.0;   // a
  double film_factor = 0.0;  // b
  double depth_factor = 0.0;
  double depth_exponent = 0.0;
  double depth_offset = 0.0;
  double charge_factor = 0.0;
  double charge_centre = 0.0;
  double temperature_per_K = 0.0;
  double time_per_s = 0.0;
};

class Xu final : public Part {
 public:
  Xu(const XuConstants& constants, const Validity& validity) : Part(validity), constants_(constants) {}

  /// The loss is that of all damage together; calendar_loss and cycle_loss share it as time and swings share
  /// the damage.
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  double damage_of_swing(double depth) const;  // S_D, 0 at depth 0; depths above 1 count as 1
  double loss_of(double damage) const;

 private:
  double stress(double temperature_C, double soc) const;
  XuConstants constants_;
};

}  // namespace voltwright::ageing
