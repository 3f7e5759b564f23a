#include "engine/sky/atmosphere.h"

#include <algorithm>
#include <cmath>

#include "engine/sky/angle.h"

namespace voltwright::sky {

double refraction_deg(double true_elevation_deg, double pressure_hPa, double temperature_C) {
  constexpr double kSunRadiusDeg = 0.26667;
  constexpr double kHorizonRefractionDeg = 0.5667;
  if (true_elevation_deg < -(kSunRadiusDeg + kHorizonRefractionDeg)) return 0.0;
  const double lifted_deg = true_elevation_deg + 10.3 / (true_elevation_deg + 5.11);
  return (pressure_hPa / 1010.0) * (283.0 / (273.0 + temperature_C)) * 1.02 /
         (60.0 * std::tan(radians(lifted_deg)));
}

double air_mass(double apparent_zenith_deg) {
  const double zenith_deg = std::clamp(apparent_zenith_deg, 0.0, 90.0);
  return 1.0 / (std::cos(radians(zenith_deg)) + 0.50572 * std::pow(96.07995 - zenith_deg, -1.6364));
}

double pressure_Pa(double elevation_m) {
  return 101325.0 * std::pow(1.0 - 2.25577e-5 * elevation_m, 5.25588);
}

AirMassTable::AirMassTable() {
  constexpr double kStandardPressure_hPa = 1013.25;
  constexpr double kStandardTemperature_C = 15.0;
  for (int step = 0; step <= kSteps; ++step) {
    const double elevation_deg = degrees(std::asin(static_cast<double>(step) / kSteps));
    const double lifted_deg =
        elevation_deg + refraction_deg(elevation_deg, kStandardPressure_hPa, kStandardTemperature_C);
    value_[static_cast<std::size_t>(step)] = static_cast<float>(air_mass(90.0 - std::min(lifted_deg, 90.0)));
  }
}

}  // namespace voltwright::sky
