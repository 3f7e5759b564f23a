#include "engine/sky/split.h"

#include <algorithm>
#include <cmath>

namespace voltwright::sky {
namespace {

struct EngererCoefficients {
  double floor, b0, b1, b2, b3, b4, b5;
};
constexpr EngererCoefficients kMinute{0.10562, -4.1332, 8.2578, 0.010087, 0.00088801, -4.9302, 0.44378};
constexpr EngererCoefficients kHour{-0.0097539, -5.3169, 8.5084, 0.013241, 0.0074356, -3.0329, 0.56403};

double engerer(const EngererCoefficients& c, double kt, double solar_time_h, double zenith_deg,
               double clear_sky_clearness, double cloud_enhancement) {
  const double exponent =
      c.b0 + c.b1 * kt + c.b2 * solar_time_h + c.b3 * zenith_deg + c.b4 * (clear_sky_clearness - kt);
  const double fraction = c.floor + (1.0 - c.floor) / (1.0 + std::exp(exponent)) + c.b5 * cloud_enhancement;
  return std::clamp(fraction, 0.0, 1.0);
}

}  // namespace

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

double engerer_minute_diffuse_fraction(double kt, double solar_time_h, double zenith_deg,
                                       double clear_sky_clearness, double cloud_enhancement) {
  return engerer(kMinute, kt, solar_time_h, zenith_deg, clear_sky_clearness, cloud_enhancement);
}

double engerer_hour_diffuse_fraction(double kt, double solar_time_h, double zenith_deg,
                                     double clear_sky_clearness, double cloud_enhancement) {
  return engerer(kHour, kt, solar_time_h, zenith_deg, clear_sky_clearness, cloud_enhancement);
}

}  // namespace voltwright::sky
