#pragma once
// Iron-phosphate cycling after Naumann, Spingler and Jossen 2020. Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"

namespace voltwright::ageing {

/// loss [%] = (by_rate C + base)(cubic (D - centre)^3 + middle) sqrt(full cycles);
/// growth [%] = max(0, r_base + r_by_rate min(C, r_most_rate)) (r_cubic (D - r_centre)^3 + r_middle) full
/// cycles. C the mean of charging and discharging rate.
struct NaumannCyclingConstants {
  double by_rate = 0.0;
  double base = 0.0;
  double cubic = 0.0;
  double middle = 0.0;
  double centre_depth = 0.0;
  double resistance_by_rate = 0.0;
  double resistance_base = 0.0;
  double resistance_most_per_h = 0.0;  // the rate above which the growth no longer falls
  double resistance_cubic = 0.0;
  double resistance_middle = 0.0;
  double resistance_centre_depth = 0.0;
};

class NaumannCycling final : public Part {
 public:
  NaumannCycling(const NaumannCyclingConstants& constants, const Validity& validity)
      : Part(validity), constants_(constants) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// Loss per root of a full cycle, and growth per full cycle, shares.
  double loss_per_root_cycle(double rate_per_h, double depth) const;
  double growth_per_cycle(double rate_per_h, double depth) const;

 private:
  NaumannCyclingConstants constants_;
};

}  // namespace voltwright::ageing
