#pragma once
// Horizontal irradiance moved onto a tilted plane. Templated on the number type, because the minute loop runs
// the same equations in single precision. All cosines of incidence and zenith may be negative: a sun behind
// the plane or below the horizon gives no beam. On a level plane (sin_tilt or 1 - cos_tilt exactly 0) every
// sky model returns the diffuse horizontal irradiance itself.
#include <algorithm>
#include <array>
#include <cmath>

namespace voltwright::sky {

/// Cosine of the angle between sun and plane normal; angles in deg, azimuths from north over east.
double cos_incidence(double zenith_deg, double sun_azimuth_deg, double tilt_deg, double plane_azimuth_deg);

/// Light from the ground onto the plane, W/m2; `albedo` 0 to 1.
template <class T>
T ground_reflected_W_m2(T ghi, T albedo, T cos_tilt) {
  return ghi * albedo * (T(1) - cos_tilt) * T(0.5);
}

/// Sky diffuse on the plane if the sky is equally bright everywhere (Liu and Jordan 1963), W/m2.
template <class T>
T isotropic_sky_W_m2(T dhi, T cos_tilt) {
  return dhi * (T(1) + cos_tilt) * T(0.5);
}

/// Sky diffuse on a plane, and how much of it comes from close around the sun and goes when the sun is
/// hidden.
template <class T>
struct SkyParts {
  T total = T(0);
  T circumsolar = T(0);
};

/// Sky diffuse with a bright disc around the sun in proportion to the beam (Hay and Davies 1980), W/m2.
template <class T>
SkyParts<T> hay_davies_sky_parts_W_m2(T dhi, T dni, T extraterrestrial, T cos_zenith, T cos_aoi, T cos_tilt) {
  const T anisotropy = dni / extraterrestrial;
  const T beam_ratio = std::max(T(0), cos_aoi) / std::max(cos_zenith, T(0.01745));
  const T tilted = dhi * (anisotropy * beam_ratio + (T(1) - anisotropy) * (T(1) + cos_tilt) * T(0.5));
  const T total = cos_tilt == T(1) ? dhi : tilted;
  return {total, std::min(total, dhi * anisotropy * beam_ratio)};
}

/// The same as one sum.
template <class T>
T hay_davies_sky_W_m2(T dhi, T dni, T extraterrestrial, T cos_zenith, T cos_aoi, T cos_tilt) {
  if (cos_tilt == T(1)) return dhi;
  return hay_davies_sky_parts_W_m2(dhi, dni, extraterrestrial, cos_zenith, cos_aoi, cos_tilt).total;
}

/// Coefficients of one class of sky clearness: f11 f12 f13 f21 f22 f23.
using PerezClass = std::array<double, 6>;

/// All-sites composite of Perez et al. 1990, class by class.
inline constexpr std::array<PerezClass, 8> kPerez1990{{
    {-0.008, 0.588, -0.062, -0.060, 0.072, -0.022},
    {0.130, 0.683, -0.151, -0.019, 0.066, -0.029},
    {0.330, 0.487, -0.221, 0.055, -0.064, -0.026},
    {0.568, 0.187, -0.295, 0.109, -0.152, -0.014},
    {0.873, -0.392, -0.362, 0.226, -0.462, 0.001},
    {1.132, -1.237, -0.412, 0.288, -0.823, 0.056},
    {1.060, -1.600, -0.359, 0.264, -1.127, 0.131},
    {0.678, -0.327, -0.250, 0.156, -1.377, 0.251},
}};

/// Sky diffuse with a circumsolar and a horizon part that depend on clearness and brightness of the sky
/// (Perez et al. 1990), W/m2. `air_mass` is the relative one, `zenith_rad` the zenith angle of `cos_zenith`.
template <class T>
SkyParts<T> perez_sky_parts_W_m2(T dhi, T dni, T extraterrestrial, T air_mass, T zenith_rad, T cos_zenith,
                                 T cos_aoi, T cos_tilt, T sin_tilt) {
  if (!(dhi > T(0))) return {dhi, T(0)};
  constexpr std::array<T, 7> kEdges{T(1.065), T(1.23), T(1.5), T(1.95), T(2.8), T(4.5), T(6.2)};
  const T cubed = T(1.041) * zenith_rad * zenith_rad * zenith_rad;
  const T clearness = ((dhi + dni) / dhi + cubed) / (T(1) + cubed);
  std::size_t sky_class = 0;
  for (const T edge : kEdges) sky_class += clearness >= edge ? 1 : 0;
  const PerezClass& f = kPerez1990[sky_class];
  const T brightness = dhi * air_mass / extraterrestrial;
  const T circumsolar = std::max(
      T(0), static_cast<T>(f[0]) + static_cast<T>(f[1]) * brightness + static_cast<T>(f[2]) * zenith_rad);
  const T horizon =
      static_cast<T>(f[3]) + static_cast<T>(f[4]) * brightness + static_cast<T>(f[5]) * zenith_rad;
  constexpr T kCos85 = T(0.0871557427476582);
  const T ratio = std::max(T(0), cos_aoi) / std::max(cos_zenith, kCos85);
  const T tilted = std::max(T(0), dhi * ((T(1) - circumsolar) * (T(1) + cos_tilt) * T(0.5) +
                                         circumsolar * ratio + horizon * sin_tilt));
  const T total = sin_tilt == T(0) ? dhi : tilted;
  return {total, std::min(total, dhi * circumsolar * ratio)};
}

/// The same as one sum.
template <class T>
T perez_sky_W_m2(T dhi, T dni, T extraterrestrial, T air_mass, T zenith_rad, T cos_zenith, T cos_aoi,
                 T cos_tilt, T sin_tilt) {
  if (sin_tilt == T(0) || !(dhi > T(0))) return dhi;
  return perez_sky_parts_W_m2(dhi, dni, extraterrestrial, air_mass, zenith_rad, cos_zenith, cos_aoi, cos_tilt,
                              sin_tilt)
      .total;
}

enum class SkyModel { kIsotropic, kHayDavies, kPerez };

/// Irradiance on a plane by its three paths, W/m2.
struct PlaneIrradiance {
  double beam_W_m2 = 0.0;
  double sky_W_m2 = 0.0;
  double ground_W_m2 = 0.0;
  double total_W_m2() const { return beam_W_m2 + sky_W_m2 + ground_W_m2; }
};

/// One instant for a plane: angles in deg, azimuths from north over east, irradiance in W/m2.
struct PlaneInstant {
  double zenith_deg = 0.0;
  double sun_azimuth_deg = 180.0;
  double extraterrestrial_W_m2 = 1361.1;
  double air_mass = 1.0;
  double dni_W_m2 = 0.0;
  double dhi_W_m2 = 0.0;
};

/// Global irradiance on the plane; the horizontal one is taken as dhi + dni cos z.
PlaneIrradiance on_plane(SkyModel model, const PlaneInstant& instant, double tilt_deg,
                         double plane_azimuth_deg, double albedo);

}  // namespace voltwright::sky
