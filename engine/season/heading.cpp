#include "engine/season/heading.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "engine/base/random.h"

namespace voltwright::season {

namespace {

constexpr std::size_t kHeadings = 8;
constexpr std::uint64_t kHeadingStream = 0x4ead;

sky::PlaneMinutes towards(const supply::SolarArray& array, const sky::SunMinutes& sun,
                          const sky::WeatherMinutes& weather, double front_deg) {
  sky::Plane plane{array.tilt_deg, std::fmod(array.azimuth_deg + front_deg, 360.0), array.mounting};
  plane.skyline = array.land;
  plane.skyline.add(array.near.turned(static_cast<int>(std::lround(front_deg))));
  plane.sky_model = array.sky_model;
  return sky::plane_minutes(sun, weather, plane);
}

std::size_t drawn_heading(const Heading& heading, std::int32_t day) {
  base::RandomStream stream(heading.seed, heading.season, static_cast<std::uint64_t>(day), kHeadingStream);
  return static_cast<std::size_t>(stream.uniform() * static_cast<double>(kHeadings));
}

}  // namespace

sky::PlaneMinutes array_minutes(const supply::SolarArray& array, const sky::SunMinutes& sun,
                                const sky::WeatherMinutes& weather, const Heading& heading) {
  const bool same_all_around = array.tilt_deg == 0.0 && array.near.open();
  if (!array.turns || same_all_around) return towards(array, sun, weather, 0.0);
  if (heading.stated_deg) return towards(array, sun, weather, *heading.stated_deg);
  std::array<sky::PlaneMinutes, kHeadings> all;
  for (std::size_t k = 0; k < kHeadings; ++k) {
    all[k] = towards(array, sun, weather, 360.0 * static_cast<double>(k) / kHeadings);
  }
  sky::PlaneMinutes drawn = all[0];
  const std::size_t count = std::min(heading.day.size(), drawn.absorbed_W_m2.size());
  std::size_t now = 0;
  for (std::size_t i = 0; i < count; ++i) {
    if (i == 0 || heading.day[i] != heading.day[i - 1]) now = drawn_heading(heading, heading.day[i]);
    drawn.absorbed_W_m2[i] = all[now].absorbed_W_m2[i];
    drawn.module_C[i] = all[now].module_C[i];
  }
  return drawn;
}

}  // namespace voltwright::season
