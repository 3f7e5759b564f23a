#include "engine/supply/wind_turbine.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace voltwright::supply {

namespace {
constexpr double kSeaLevel_Pa = 101325.0;
constexpr double kGasConstant_J_kg_K = 287.05;
constexpr double kZero_K = 273.15;
constexpr double kLapsePerMetre = 2.25577e-5;
constexpr double kPressureExponent = 5.25588;
constexpr double kWindHeight_m = 10.0;
constexpr double kShear = 1.0 / 7.0;
}  // namespace

double air_kg_m3(double air_C, double elevation_m) {
  const double pressure_Pa = kSeaLevel_Pa * std::pow(1.0 - kLapsePerMetre * elevation_m, kPressureExponent);
  return pressure_Pa / (kGasConstant_J_kg_K * (air_C + kZero_K));
}

double wind_at_height(double wind_10_m_s, double height_m) {
  return wind_10_m_s * std::pow(height_m / kWindHeight_m, kShear);
}

double turbine_W(const WindTurbine& turbine, double hub_wind_m_s, double density_kg_m3) {
  if (hub_wind_m_s < turbine.cut_in_m_s || hub_wind_m_s >= turbine.cut_out_m_s) return 0.0;
  const double area_m2 = 0.25 * std::numbers::pi * turbine.diameter_m * turbine.diameter_m;
  const double cube = hub_wind_m_s * hub_wind_m_s * hub_wind_m_s;
  return std::min(turbine.rated_W, 0.5 * density_kg_m3 * area_m2 * turbine.power_share * cube);
}

double water_W(const WaterGenerator& generator, double boat_m_s) {
  if (boat_m_s < generator.cut_in_m_s) return 0.0;
  const double ratio = boat_m_s / generator.speed_m_s;
  return std::min(generator.rated_W, generator.power_W * ratio * ratio * ratio);
}

}  // namespace voltwright::supply
