#include "engine/sky/transposition.h"

#include "engine/sky/angle.h"

namespace voltwright::sky {

double cos_incidence(double zenith_deg, double sun_azimuth_deg, double tilt_deg, double plane_azimuth_deg) {
  const double zenith = radians(zenith_deg);
  if (tilt_deg == 0.0) return std::cos(zenith);
  const double tilt = radians(tilt_deg);
  return std::cos(zenith) * std::cos(tilt) +
         std::sin(zenith) * std::sin(tilt) * std::cos(radians(sun_azimuth_deg - plane_azimuth_deg));
}

PlaneIrradiance on_plane(SkyModel model, const PlaneInstant& instant, double tilt_deg,
                         double plane_azimuth_deg, double albedo) {
  const double zenith = radians(instant.zenith_deg);
  const double cos_zenith = std::cos(zenith);
  const double cos_tilt = std::cos(radians(tilt_deg));
  const double sin_tilt = std::sin(radians(tilt_deg));
  const double cos_aoi =
      cos_incidence(instant.zenith_deg, instant.sun_azimuth_deg, tilt_deg, plane_azimuth_deg);
  PlaneIrradiance plane;
  plane.beam_W_m2 = cos_zenith > 0.0 ? instant.dni_W_m2 * std::max(0.0, cos_aoi) : 0.0;
  switch (model) {
    case SkyModel::kIsotropic:
      plane.sky_W_m2 = isotropic_sky_W_m2(instant.dhi_W_m2, cos_tilt);
      break;
    case SkyModel::kHayDavies:
      plane.sky_W_m2 = hay_davies_sky_W_m2(instant.dhi_W_m2, instant.dni_W_m2, instant.extraterrestrial_W_m2,
                                           cos_zenith, cos_aoi, cos_tilt);
      break;
    case SkyModel::kPerez:
      plane.sky_W_m2 = perez_sky_W_m2(instant.dhi_W_m2, instant.dni_W_m2, instant.extraterrestrial_W_m2,
                                      instant.air_mass, zenith, cos_zenith, cos_aoi, cos_tilt, sin_tilt);
      break;
  }
  const double ghi = instant.dhi_W_m2 + instant.dni_W_m2 * std::max(0.0, cos_zenith);
  plane.ground_W_m2 = ground_reflected_W_m2(ghi, albedo, cos_tilt);
  return plane;
}

}  // namespace voltwright::sky
