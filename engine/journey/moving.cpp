#include "engine/journey/moving.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace voltwright::journey {

namespace {

constexpr double kRad = std::numbers::pi / 180.0;
/// Below this angle (and this far from opposite) the great circle is a straight line to rounding.
constexpr double kSmall_rad = 1e-6;

using Direction = std::array<double, 3>;

Direction direction_of(const sky::Site& site) {
  const double north = site.latitude_deg * kRad;
  const double east = site.longitude_deg * kRad;
  return {std::cos(north) * std::cos(east), std::cos(north) * std::sin(east), std::sin(north)};
}

}  // namespace

std::vector<float> driven_share(const Calendar& calendar) {
  const auto all = std::count_if(calendar.driving.begin(), calendar.driving.end(),
                                 [](std::uint8_t driving) { return driving != 0; });
  std::vector<float> share(calendar.driving.size(), 0.0F);
  if (all == 0) return share;
  double done_min = 0.0;
  for (std::size_t i = 0; i < share.size(); ++i) {
    const double now_min = calendar.driving[i] != 0 ? 1.0 : 0.0;
    share[i] = static_cast<float>((done_min + 0.5 * now_min) / static_cast<double>(all));
    done_min += now_min;
  }
  return share;
}

sky::Site site_between(const sky::Site& from, const sky::Site& to, double share) {
  const double height_m = from.elevation_m + share * (to.elevation_m - from.elevation_m);
  const Direction a = direction_of(from);
  const Direction b = direction_of(to);
  const double cosine = std::clamp(a[0] * b[0] + a[1] * b[1] + a[2] * b[2], -1.0, 1.0);
  const double angle = std::acos(cosine);
  if (angle < kSmall_rad || std::numbers::pi - angle < kSmall_rad) {
    const double east_deg = std::remainder(to.longitude_deg - from.longitude_deg, 360.0);
    return {from.latitude_deg + share * (to.latitude_deg - from.latitude_deg),
            std::remainder(from.longitude_deg + share * east_deg, 360.0), height_m};
  }
  const double from_part = std::sin((1.0 - share) * angle) / std::sin(angle);
  const double to_part = std::sin(share * angle) / std::sin(angle);
  const double x = from_part * a[0] + to_part * b[0];
  const double y = from_part * a[1] + to_part * b[1];
  const double z = from_part * a[2] + to_part * b[2];
  return {std::atan2(z, std::hypot(x, y)) / kRad, std::atan2(y, x) / kRad, height_m};
}

sky::SunMinutes moving_sun(const Leg& leg, std::span<const float> share) {
  sky::SunMinutes sun;
  sun.start_utc_s = leg.start_utc_s;
  std::size_t begin = 0;
  while (begin < share.size()) {
    // Minutes at the same place are taken together.
    std::size_t end = begin + 1;
    while (end < share.size() && share[end] == share[begin]) ++end;
    const sky::Site site =
        site_between(leg.place.site, leg.end_place->site, static_cast<double>(share[begin]));
    const sky::SunMinutes part =
        sky::sun_minutes(site, leg.start_utc_s + 60 * static_cast<std::int64_t>(begin), end - begin);
    sun.cos_zenith.insert(sun.cos_zenith.end(), part.cos_zenith.begin(), part.cos_zenith.end());
    sun.azimuth_rad.insert(sun.azimuth_rad.end(), part.azimuth_rad.begin(), part.azimuth_rad.end());
    sun.extraterrestrial_W_m2.insert(sun.extraterrestrial_W_m2.end(), part.extraterrestrial_W_m2.begin(),
                                     part.extraterrestrial_W_m2.end());
    begin = end;
  }
  return sun;
}

void mix_weather(sky::WeatherMinutes& weather, const sky::WeatherMinutes& end, std::span<const float> share,
                 const sky::SunMinutes& sun) {
  const auto mixed = [](float a, float b, float part) { return a + part * (b - a); };
  for (std::size_t i = 0; i < share.size(); ++i) {
    const float part = share[i];
    const float height = std::max(0.0F, sun.cos_zenith[i]);
    const float beam = height > 0.0F ? mixed(weather.dni_W_m2[i], end.dni_W_m2[i], part) : 0.0F;
    const float diffuse = height > 0.0F ? mixed(weather.dhi_W_m2[i], end.dhi_W_m2[i], part) : 0.0F;
    weather.dni_W_m2[i] = beam;
    weather.dhi_W_m2[i] = diffuse;
    weather.ghi_W_m2[i] = diffuse + beam * height;
    weather.temperature_C[i] = mixed(weather.temperature_C[i], end.temperature_C[i], part);
    weather.wind_m_s[i] = mixed(weather.wind_m_s[i], end.wind_m_s[i], part);
  }
}

}  // namespace voltwright::journey
