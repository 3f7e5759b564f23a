#pragma once
// Iron-phosphate cycling after Wang et al. 2011. Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"
#include "engine/base/curve.h"

namespace voltwright::ageing {

/// loss [%] = B(C) exp((-E + relief C)/(R T)) Ah^z, Ah discharged, C the discharging rate. What time does is
/// in it; depth was found not to matter.
struct Wang2011Constants {
  base::Curve factor_by_per_h;  // B, straight between the points, its ends held outside
  double activation_J_per_mol = 0.0;
  double relief_J_per_mol = 0.0;  // per 1/h
  double exponent = 0.0;
  double cell_Ah = 0.0;
};

class Wang2011 final : public Part {
 public:
  Wang2011(Wang2011Constants constants, const Validity& validity)
      : Part(validity), constants_(std::move(constants)) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

 private:
  Wang2011Constants constants_;
};

}  // namespace voltwright::ageing
