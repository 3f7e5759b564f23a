#include "app/weather.h"

#include <algorithm>
#include <utility>

#include "files/text_file.h"
#include "files/utc_text.h"

namespace voltwright::app {

base::Result<WeatherResponse> read_weather(const std::string& path, const files::WeatherOptions& options) {
  const auto text = files::read_text(path);
  if (!text) return text.problems();
  auto read = files::read_weather(text.value(), path, options);
  if (!read) return read.problems();
  files::ReadWeather& year = read.value();
  WeatherResponse response;
  response.file = path;
  response.format = year.format;
  response.place = year.place;
  response.site = year.weather.site;
  response.filled = year.filled;
  response.noon_offset_h = year.noon_offset_h;
  response.repairs = std::move(year.repairs);
  response.warnings = std::move(year.warnings);
  response.climate = year.climate;
  response.source = year.climate ? year.climate->origin : year.weather.origin;
  if (year.climate) return response;

  const sky::HourlyWeather& weather = year.weather;
  const std::size_t n = weather.ghi_W_m2.size();
  response.hours = year.hours;
  response.has_split = !weather.dhi_W_m2.empty();
  const auto hours = static_cast<double>(year.hours);
  response.coldest_C = response.warmest_C = weather.temperature_C[year.first_hour];
  for (std::size_t k = 0; k < year.hours; ++k) {
    const std::size_t i = (year.first_hour + k) % n;
    response.ghi_kWh_m2 += weather.ghi_W_m2[i] / 1000.0;
    if (response.has_split) {
      response.dni_kWh_m2 += weather.dni_W_m2[i] / 1000.0;
      response.dhi_kWh_m2 += weather.dhi_W_m2[i] / 1000.0;
    }
    response.temperature_C += weather.temperature_C[i] / hours;
    response.coldest_C = std::min(response.coldest_C, weather.temperature_C[i]);
    response.warmest_C = std::max(response.warmest_C, weather.temperature_C[i]);
    response.wind_m_s += weather.wind_m_s[i] / hours;
  }
  const std::int64_t first = weather.start_utc_s + 3600 * static_cast<std::int64_t>(year.first_hour);
  response.first = files::utc_text(first);
  response.last = files::utc_text(first + 3600 * static_cast<std::int64_t>(year.hours));
  return response;
}

}  // namespace voltwright::app
