#pragma once
// What the air does to the sun's direct path: refraction, relative air mass and pressure with height.
#include <array>

namespace voltwright::sky {

/// Refraction in deg to add to the true elevation of the sun, 0 when the sun's disc is wholly set. Valid for
/// elevations -0.83 to 90 deg; pressure in hPa, temperature in degC. Source: Reda and Andreas 2004.
double refraction_deg(double true_elevation_deg, double pressure_hPa, double temperature_C);

/// Relative optical air mass for an apparent zenith angle of 0 to 90 deg (larger angles give the value at
/// 90). Source: Kasten and Young 1989.
double air_mass(double apparent_zenith_deg);

/// Mean pressure in Pa at a height of -400 to 11000 m in the standard atmosphere (ISO 2533, from memory).
double pressure_Pa(double elevation_m);

/// Relative air mass against the cosine of the true zenith angle, refraction of standard air included, as a
/// table that is read by linear interpolation. The error is below 1 % where the cosine exceeds 0.02.
class AirMassTable {
 public:
  static constexpr int kSteps = 256;

  AirMassTable();

  double at_step(int step) const { return static_cast<double>(value_[static_cast<std::size_t>(step)]); }

  /// `cos_zenith` in [0, 1]; values outside are clamped.
  float at(float cos_zenith) const {
    const float x = cos_zenith < 0.0F ? 0.0F : (cos_zenith > 1.0F ? 1.0F : cos_zenith);
    const float position = x * static_cast<float>(kSteps);
    const int step = position >= static_cast<float>(kSteps) ? kSteps - 1 : static_cast<int>(position);
    const float part = position - static_cast<float>(step);
    const auto i = static_cast<std::size_t>(step);
    return value_[i] + part * (value_[i + 1] - value_[i]);
  }

 private:
  std::array<float, kSteps + 1> value_{};
};

}  // namespace voltwright::sky
