#include "engine/sky/plane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "engine/sky/angle.h"
#include "engine/sky/atmosphere.h"
#include "engine/sky/incidence.h"
#include "engine/sky/module_model.h"
#include "engine/sky/transposition.h"

namespace voltwright::sky {
namespace {

/// Incidence factor against the cosine of incidence, read by linear interpolation.
class IncidenceTable {
 public:
  IncidenceTable() {
    for (std::size_t i = 0; i < value_.size(); ++i) {
      const double incidence_deg = degrees(std::acos(static_cast<double>(i) / kSteps));
      value_[i] = static_cast<float>(martin_ruiz_incidence_factor(incidence_deg));
    }
  }
  /// `cos_aoi` 0 to 1.
  float at(float cos_aoi) const {
    const float position = std::min(cos_aoi, 1.0F) * static_cast<float>(kSteps);
    const auto i = std::min<std::size_t>(kSteps - 1, static_cast<std::size_t>(static_cast<int>(position)));
    return value_[i] + (position - static_cast<float>(static_cast<int>(i))) * (value_[i + 1] - value_[i]);
  }

 private:
  static constexpr int kSteps = 128;
  std::array<float, kSteps + 1> value_{};
};

/// One minute as the models of the sky want it.
struct Instant {
  float dhi, dni, extraterrestrial, cos_zenith, cos_aoi;
};

/// Light of the sky on a plane under a sun that is up.
SkyParts<float> sky_on_plane(SkyModel model, const Instant& now, float cos_tilt, float sin_tilt,
                             const AirMassTable& air_mass) {
  switch (model) {
    case SkyModel::kIsotropic:
      return {isotropic_sky_W_m2(now.dhi, cos_tilt), 0.0F};
    case SkyModel::kHayDavies:
      return hay_davies_sky_parts_W_m2(now.dhi, now.dni, now.extraterrestrial, now.cos_zenith, now.cos_aoi,
                                       cos_tilt);
    case SkyModel::kPerez:
      break;
  }
  return perez_sky_parts_W_m2(now.dhi, now.dni, now.extraterrestrial, air_mass.at(now.cos_zenith),
                              fast_acos(now.cos_zenith), now.cos_zenith, now.cos_aoi, cos_tilt, sin_tilt);
}

}  // namespace

PlaneMinutes plane_minutes(const SunMinutes& sun, const WeatherMinutes& weather, const Plane& plane) {
  const std::size_t minutes =
      std::min({sun.cos_zenith.size(), sun.azimuth_rad.size(), sun.extraterrestrial_W_m2.size(),
                weather.ghi_W_m2.size(), weather.dni_W_m2.size(), weather.dhi_W_m2.size(),
                weather.temperature_C.size(), weather.wind_m_s.size()});
  PlaneMinutes out;
  out.absorbed_W_m2.resize(minutes);
  out.module_C.resize(minutes);
  const bool level = plane.tilt_deg == 0.0;
  const auto cos_tilt = static_cast<float>(level ? 1.0 : std::cos(radians(plane.tilt_deg)));
  const auto sin_tilt = static_cast<float>(level ? 0.0 : std::sin(radians(plane.tilt_deg)));
  const double turns = std::floor(plane.azimuth_deg / 360.0);
  const auto azimuth = static_cast<float>(radians(plane.azimuth_deg - 360.0 * turns));
  const auto albedo = static_cast<float>(plane.albedo);
  constexpr auto kDiffuse = static_cast<float>(kDiffuseIncidenceFactor);
  const AirMassTable air_mass;
  const IncidenceTable incidence;
  const MountingHeat heat = mounting_heat(plane.mounting);
  const bool shaded = !plane.skyline.open();
  const auto view = static_cast<float>(plane.skyline.view_of_sky(plane.tilt_deg, plane.azimuth_deg));
  float wind = -1.0F;
  float rise = 0.0F;

  for (std::size_t i = 0; i < minutes; ++i) {
    const float air = weather.temperature_C[i];
    const float ghi = weather.ghi_W_m2[i];
    if (!(ghi > 0.0F)) {
      out.absorbed_W_m2[i] = 0.0F;
      out.module_C[i] = air;
      continue;
    }
    const float dni = weather.dni_W_m2[i];
    const float dhi = weather.dhi_W_m2[i];
    const float cos_zenith = sun.cos_zenith[i];
    float cos_aoi = std::max(0.0F, cos_zenith);
    if (!level) {
      const float sin_zenith = std::sqrt(std::max(0.0F, 1.0F - cos_zenith * cos_zenith));
      cos_aoi = std::max(
          0.0F, cos_zenith * cos_tilt + sin_zenith * sin_tilt * fast_cos(sun.azimuth_rad[i] - azimuth));
    }
    const bool up = cos_zenith > 0.0F;
    float sky = isotropic_sky_W_m2(dhi, cos_tilt);
    float passes = 1.0F;
    if (shaded || (up && !level)) {
      const Instant now{dhi, dni, sun.extraterrestrial_W_m2[i], cos_zenith, cos_aoi};
      const SkyParts<float> parts =
          up ? sky_on_plane(plane.sky_model, now, cos_tilt, sin_tilt, air_mass) : SkyParts<float>{sky, 0.0F};
      sky = parts.total;
      if (shaded) {
        passes = up ? plane.skyline.beam(sun.azimuth_rad[i], cos_zenith) : 0.0F;
        sky = (sky - parts.circumsolar) * view + parts.circumsolar * passes;
      }
    }
    const float beam = dni * cos_aoi * passes;
    const float scattered = sky + ground_reflected_W_m2(ghi, albedo, cos_tilt);
    if (weather.wind_m_s[i] != wind) {
      wind = weather.wind_m_s[i];
      rise = static_cast<float>(cell_rise_K_m2_W(heat, static_cast<double>(wind)));
    }
    out.absorbed_W_m2[i] = beam * incidence.at(cos_aoi) + kDiffuse * scattered;
    out.module_C[i] = air + rise * (beam + scattered);
  }
  return out;
}

std::vector<float> array_power_W(const PlaneMinutes& plane, const Module& module, int modules) {
  const std::size_t minutes = std::min(plane.absorbed_W_m2.size(), plane.module_C.size());
  std::vector<float> power(minutes);
  const auto peak = static_cast<float>(units::as_watts(module.peak) * std::max(0, modules));
  const auto per_K = static_cast<float>(module.power_per_K);
  constexpr auto kLoss = static_cast<float>(kLowLightLoss);
  for (std::size_t i = 0; i < minutes; ++i) {
    power[i] = module_power(peak, per_K, plane.absorbed_W_m2[i], plane.module_C[i], kLoss);
  }
  return power;
}

}  // namespace voltwright::sky
