#include "files/weather/read_weather.h"

#include "files/weather/epw.h"
#include "files/weather/lines.h"
#include "files/weather/plain_csv.h"
#include "files/weather/power.h"
#include "files/weather/pvgis.h"
#include "files/weather/recogniser.h"
#include "files/weather/tmy3.h"

namespace voltwright::files {

namespace {

base::Result<WeatherSeries> series_in(std::string_view text, const std::string& name,
                                      const WeatherOptions& options) {
  switch (weather_format(text)) {
    case WeatherFormat::kEpw:
      return read_epw(text, name);
    case WeatherFormat::kTmy3:
      return read_tmy3(text, name);
    case WeatherFormat::kTmy2:
      return read_tmy2(text, name);
    case WeatherFormat::kPvgisCsv:
      return read_pvgis_csv(text, name, options);
    case WeatherFormat::kPvgisJson:
      return read_pvgis_json(text, name, options);
    case WeatherFormat::kPower:
      return read_power(text, name);
    case WeatherFormat::kPlainCsv:
      return read_plain_csv(text, name, options);
    case WeatherFormat::kUnknown:
      break;
  }
  Lines lines(text);
  lines.next();
  constexpr std::size_t kShown = 40;
  return text_problem(
      name, 1, 1,
      {.what = "This is no weather file of a known format.",
       .field = "",
       .given = std::string(lines.text().substr(0, kShown)),
       .limit = "EPW (begins with LOCATION), TMY3, TMY2, PVGIS, POWER, or CSV with named columns",
       .remedy = "Fetch the file again, or give its columns the titles time, ghi, temperature."});
}

}  // namespace

base::Result<ReadWeather> read_weather(std::string_view text, const std::string& name,
                                       const WeatherOptions& options) {
  auto series = series_in(text, name, options);
  if (!series.ok()) return series.problems();
  return year_of(std::move(series).value(), name, options);
}

}  // namespace voltwright::files
