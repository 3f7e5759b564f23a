#pragma once
#include <cstdint>
#include <vector>

#include "engine/sky/weather.h"

namespace voltwright::files {

/// Mean over each hour of the cosine of the zenith angle above the horizon, 0 at night, for 8,760 hours of
/// 2023 that begin at `start_utc_s`.
std::vector<double> mean_cosine(const sky::Site& site, std::int64_t start_utc_s);

/// Completes global, direct normal and diffuse radiation by global = diffuse + direct cos z: whichever one of
/// the three is empty is worked out from the other two; it stays empty if another is empty too.
void close_radiation(sky::HourlyWeather& weather);

}  // namespace voltwright::files
