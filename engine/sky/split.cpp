#include "engine/sky/split.h"

#include <cstddef>

namespace voltwright::sky {
double erbs_daily_diffuse_fraction(double clearness, double sunset_hour_angle_deg) {
  const double k = clearness;
  if (sunset_hour_angle_deg <= 81.4) {
    return k < 0.715 ? 1.0 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))) : 0.143;
  }
  return k < 0.722 ? 1.0 + k * (0.2832 + k * (-2.5557 + k * 0.8448)) : 0.175;
}

Split erbs_split(double ghi_W_m2, double extraterrestrial_W_m2, double cos_zenith) {
  if (!(cos_zenith > kLowestCosForBeam)) return {0.0, ghi_W_m2};
  const double kt = clearness_index(ghi_W_m2, extraterrestrial_W_m2, cos_zenith);
  const double dhi = ghi_W_m2 * erbs_diffuse_fraction(kt);
  return {(ghi_W_m2 - dhi) / cos_zenith, dhi};
}

const EngererWeights& engerer_weights(SplitStep step) {
  static constexpr EngererWeights kWeights[] = {
      {0.10562, -4.1332, 8.2578, 0.010087, 0.00088801, -4.9302, 0.44378},
      {0.093936, -4.5771, 8.4641, 0.010012, 0.003975, -4.3921, 0.39331},
      {0.079965, -4.8539, 8.4764, 0.018849, 0.0051497, -4.1457, 0.37466},
      {0.065972, -4.7211, 8.3294, 0.0095444, 0.0053493, -4.169, 0.39526},
      {0.032675, -4.8681, 8.1867, 0.015829, 0.0059922, -4.0304, 0.47371},
      {-0.0097539, -5.3169, 8.5084, 0.013241, 0.0074356, -3.0329, 0.56403},
  };
  return kWeights[static_cast<std::size_t>(step)];
}

}  // namespace voltwright::sky
