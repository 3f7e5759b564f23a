// Time of a year of light on one array's plane, under an open sky and behind horizon, mast, trees and roof.
#include <benchmark/benchmark.h>

#include <cstddef>
#include <cstdint>
#include <numeric>
#include <vector>

#include "engine/sky/plane.h"

namespace {

using namespace voltwright;

constexpr std::size_t kMinutes = 525600;
constexpr std::int64_t kNewYear2026_s = 1767225600;

sky::WeatherMinutes hazy_year(const sky::SunMinutes& sun) {
  sky::WeatherMinutes weather;
  for (const float c : sun.cos_zenith) {
    const float up = c > 0.0F ? c : 0.0F;
    weather.dni_W_m2.push_back(up > 0.0F ? 500.0F : 0.0F);
    weather.dhi_W_m2.push_back(200.0F * up);
    weather.ghi_W_m2.push_back(700.0F * up);
    weather.temperature_C.push_back(12.0F);
    weather.wind_m_s.push_back(3.0F);
  }
  return weather;
}

double sum_of(const sky::PlaneMinutes& minutes) {
  return std::accumulate(minutes.absorbed_W_m2.begin(), minutes.absorbed_W_m2.end(), 0.0);
}

/// 0: open; 1: horizon alone; 2: horizon, mast, trees and roof.
sky::Skyline skyline(std::int64_t kind) {
  if (kind == 0) return {};
  const std::vector<sky::HorizonPoint> land{{90.0, 8.0}, {180.0, 12.0}, {270.0, 5.0}};
  if (kind == 1) return sky::Skyline(land);
  sky::Skyline all(land,
                   {sky::mast(200.0, 2.0, 8.0, 0.15, 0.0), sky::tree_line(100.0, 150.0, 15.0, 9.0, 0.3)});
  all.raise(sky::rising_roof(180.0, 20.0));
  return all;
}

void year_on_a_plane(benchmark::State& state) {
  const sky::SunMinutes sun = sky::sun_minutes({52.0, 10.0, 100.0}, kNewYear2026_s, kMinutes);
  const sky::WeatherMinutes weather = hazy_year(sun);
  sky::Plane plane{30.0, 180.0};
  const double open = sum_of(sky::plane_minutes(sun, weather, plane));
  plane.skyline = skyline(state.range(0));
  sky::PlaneMinutes minutes;
  for (auto _ : state) {
    minutes = sky::plane_minutes(sun, weather, plane);
    benchmark::DoNotOptimize(minutes.absorbed_W_m2.data());
  }
  const double share = sum_of(minutes) / open;
  state.counters["share_of_open"] = share;
  if (state.range(0) == 0 ? share != 1.0 : !(share > 0.3 && share < 1.0)) {
    state.SkipWithError("the shade took too much or nothing");
  }
}
BENCHMARK(year_on_a_plane)->ArgName("shade")->Arg(0)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond);

}  // namespace
