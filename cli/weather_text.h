#pragma once
#include <string>

#include "app/weather.h"

namespace voltwright::cli {

/// What a weather file holds, for a terminal of this width.
std::string weather_text(const app::WeatherResponse& response, std::size_t width);

}  // namespace voltwright::cli
