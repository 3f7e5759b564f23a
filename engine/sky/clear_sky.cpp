#include "engine/sky/clear_sky.h"

#include <algorithm>
#include <cmath>

namespace voltwright::sky {

ClearSkyCoefficients::ClearSkyCoefficients(double elevation_m)
    : fh1(std::exp(-elevation_m / 8000.0)),
      fh2(std::exp(-elevation_m / 1250.0)),
      cg1(5.09e-5 * elevation_m + 0.868),
      cg2(3.92e-5 * elevation_m + 0.0387) {}

ClearSky ineichen_perez(double cos_zenith, double air_mass_absolute, double linke_turbidity,
                        double elevation_m, double extraterrestrial_W_m2) {
  if (!(cos_zenith > 0.0)) return {};
  const ClearSkyCoefficients h(elevation_m);
  const double excess = linke_turbidity - 1.0;
  ClearSky sky;
  sky.ghi_W_m2 = h.cg1 * extraterrestrial_W_m2 * cos_zenith *
                 std::exp(-h.cg2 * air_mass_absolute * (h.fh1 + h.fh2 * excess));
  const double beam =
      extraterrestrial_W_m2 * (0.664 + 0.163 / h.fh1) * std::exp(-0.09 * air_mass_absolute * excess);
  const double scattered = (0.1 - 0.2 * std::exp(-linke_turbidity)) / (0.1 + 0.882 / h.fh1);
  const double beam_limit = sky.ghi_W_m2 * std::max(0.0, (1.0 - scattered) / cos_zenith);
  sky.dni_W_m2 = std::min(beam, beam_limit);
  sky.dhi_W_m2 = sky.ghi_W_m2 - sky.dni_W_m2 * cos_zenith;
  return sky;
}

double haurwitz_W_m2(double cos_zenith) {
  return cos_zenith > 0.0 ? 1098.0 * cos_zenith * std::exp(-0.059 / cos_zenith) : 0.0;
}

ClearSkyTable::ClearSkyTable(const AirMassTable& air_mass, double elevation_m) : height_(elevation_m) {
  const double relative_pressure = pressure_Pa(elevation_m) / 101325.0;
  for (std::size_t i = 0; i < depth_.size(); ++i) {
    depth_[i] = height_.cg2 * air_mass.at_step(static_cast<int>(i)) * relative_pressure;
  }
  set_turbidity(2.0);
}

void ClearSkyTable::set_turbidity(double linke_turbidity) {
  const double path = height_.fh1 + height_.fh2 * (linke_turbidity - 1.0);
  for (std::size_t i = 0; i < value_.size(); ++i) {
    const double cos_zenith = static_cast<double>(i) / AirMassTable::kSteps;
    value_[i] = static_cast<float>(height_.cg1 * cos_zenith * std::exp(-depth_[i] * path));
  }
}

}  // namespace voltwright::sky
