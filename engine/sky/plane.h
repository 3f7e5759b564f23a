#pragma once
// Light and warmth of a module plane minute by minute, and the power of an array on it.
#include <vector>

#include "engine/sky/horizon.h"
#include "engine/sky/module.h"
#include "engine/sky/sun.h"
#include "engine/sky/transposition.h"
#include "engine/sky/weather.h"

namespace voltwright::sky {

struct Plane {
  double tilt_deg = 0.0;       // from level, 0 to 90
  double azimuth_deg = 180.0;  // where the plane looks, from north over east
  Mounting mounting = Mounting::kGluedFlat;
  double albedo = 0.2;   // of the ground around
  Skyline skyline = {};  // what hides the sun and parts of the sky
  SkyModel sky_model = SkyModel::kPerez;
};

struct PlaneMinutes {
  std::vector<float> absorbed_W_m2;  // irradiance on the plane less incidence losses
  std::vector<float> module_C;       // cell temperature
};

/// Irradiance on the plane, the sky's part by the plane's model; beam reduced by Martin and Ruiz 2001, sky
/// and ground light by 0.95; cell temperature by King, Boyson and Kratochvil 2004. Where the skyline hides
/// the sun, the beam and the brightness around it go too; the rest of the sky is reduced to the part in view.
/// `weather` covers the minutes of `sun`; of unequal lengths the shorter counts.
PlaneMinutes plane_minutes(const SunMinutes& sun, const WeatherMinutes& weather, const Plane& plane);

/// Power of an array at its maximum power point before soiling and other losses, W a minute.
std::vector<float> array_power_W(const PlaneMinutes& plane, const Module& module, int modules);

}  // namespace voltwright::sky
