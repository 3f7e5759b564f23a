#pragma once
// Irradiance under a cloudless sky.
#include <array>

#include "engine/sky/atmosphere.h"

namespace voltwright::sky {

struct ClearSky {
  double ghi_W_m2 = 0.0;
  double dni_W_m2 = 0.0;
  double dhi_W_m2 = 0.0;
};

/// What the model of Ineichen and Perez 2002 takes from the height of a place.
struct ClearSkyCoefficients {
  explicit ClearSkyCoefficients(double elevation_m);
  double fh1, fh2, cg1, cg2;
};

/// Clear-sky irradiance of Ineichen and Perez 2002. `air_mass_absolute` is the relative air mass times
/// pressure over 101325 Pa; `linke_turbidity` for air mass 2, 1 to 10; `cos_zenith` in (0, 1], otherwise all
/// is 0.
ClearSky ineichen_perez(double cos_zenith, double air_mass_absolute, double linke_turbidity,
                        double elevation_m, double extraterrestrial_W_m2);

/// Global clear-sky irradiance from the cosine of the zenith angle alone (Haurwitz 1945), W/m2.
double haurwitz_W_m2(double cos_zenith);

/// Global clear-sky irradiance of Ineichen and Perez as a fraction of the normal extraterrestrial one against
/// the cosine of the zenith angle, for one turbidity and height, read by linear interpolation. Within 0.1
/// W/m2 of the model itself.
class ClearSkyTable {
 public:
  ClearSkyTable(const AirMassTable& air_mass, double elevation_m);

  /// Fills the table for a turbidity.
  void set_turbidity(double linke_turbidity);

  /// `cos_zenith` up to 1; 0 for values not above 0.
  float fraction(float cos_zenith) const {
    const float x = cos_zenith < 0.0F ? 0.0F : (cos_zenith > 1.0F ? 1.0F : cos_zenith);
    const float position = x * static_cast<float>(AirMassTable::kSteps);
    const int whole = static_cast<int>(position);
    const int step = whole < AirMassTable::kSteps ? whole : AirMassTable::kSteps - 1;
    const auto i = static_cast<std::size_t>(step);
    return value_[i] + (position - static_cast<float>(step)) * (value_[i + 1] - value_[i]);
  }

 private:
  ClearSkyCoefficients height_;
  std::array<double, AirMassTable::kSteps + 1> depth_{};  // cg2 times the absolute air mass
  std::array<float, AirMassTable::kSteps + 1> value_{};
};

}  // namespace voltwright::sky
