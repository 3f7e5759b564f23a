#pragma once
// What the sky gives a place: climate normals in, minutes of weather out. All instants are UTC seconds since
// 1970.
#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace voltwright::sky {

struct Site {
  double latitude_deg = 0.0;   // north positive
  double longitude_deg = 0.0;  // east positive
  double elevation_m = 0.0;
};

/// Monthly means of a place, January first.
struct MonthlyClimate {
  std::array<double, 12> clearness{};        // monthly mean clearness index KT, 0..1
  std::array<double, 12> temperature_C{};    // monthly mean air temperature
  std::array<double, 12> daily_range_K{};    // monthly mean of daily maximum minus daily minimum
  std::array<double, 12> linke_turbidity{};  // air mass 2
  std::array<double, 12> wind_m_s{};         // at 10 m
  bool wind_known = false;  // false: the wind is an assumption, good enough to cool a module only
  std::string origin;       // in words, for the report: which stations, how far, what was assumed
};

/// A year or less of hourly means, as read from a weather file. Index i covers the hour starting at
/// start_utc_s + 3600 i; irradiance is the mean over that hour, temperature and wind are its mean too.
struct HourlyWeather {
  Site site;
  std::int64_t start_utc_s = 0;  // typical years are laid onto the non-leap year 2023
  std::vector<double> ghi_W_m2;
  std::vector<double> dni_W_m2;
  std::vector<double> dhi_W_m2;
  std::vector<double> temperature_C;
  std::vector<double> wind_m_s;
  std::string origin;
};

/// One-minute weather of a stay. Index i covers the minute starting at start_utc_s + 60 i.
struct WeatherMinutes {
  std::int64_t start_utc_s = 0;
  std::vector<float> ghi_W_m2;
  std::vector<float> dni_W_m2;
  std::vector<float> dhi_W_m2;
  std::vector<float> temperature_C;
  std::vector<float> wind_m_s;
};

}  // namespace voltwright::sky
