// Time of a year of made weather at one-minute steps, at a place with much broken cloud.
#include <benchmark/benchmark.h>

#include <cstddef>
#include <cstdint>
#include <numeric>

#include "engine/sky/made_weather.h"
#include "tests/unit/sky/climates.h"
#include "tests/unit/sky/matrices_csv.h"

namespace {

using namespace voltwright;

void year_of_made_sky(benchmark::State& state) {
  const sky::TestPlace place = sky::london();
  const sky::ClearnessMatrices matrices = sky::catalogue_matrices();
  constexpr std::int64_t kNewYear2026 = 1767225600;
  constexpr std::size_t kYearMinutes = 525600;
  const sky::SunMinutes sun = sky::sun_minutes(place.site, kNewYear2026, kYearMinutes);
  std::uint64_t season = 0;
  double light_Wh = 0.0;
  for (auto _ : state) {
    const sky::WeatherMinutes weather =
        sky::make_weather(place.site, place.climate, matrices, sun, 1, season++, 0);
    state.PauseTiming();
    light_Wh = std::accumulate(weather.ghi_W_m2.begin(), weather.ghi_W_m2.end(), 0.0) / 60.0;
    // London has about 1000 kWh/m2 a year; a single year stays within a third of it.
    if (light_Wh < 650e3 || light_Wh > 1350e3) state.SkipWithError("the year's light is wrong");
    state.ResumeTiming();
  }
  state.counters["kWh_per_m2"] = light_Wh / 1000.0;
}
BENCHMARK(year_of_made_sky)->Unit(benchmark::kMillisecond);

void year_of_sun(benchmark::State& state) {
  const sky::Site site = sky::london().site;
  for (auto _ : state) {
    const sky::SunMinutes sun = sky::sun_minutes(site, 1767225600, 525600);
    benchmark::DoNotOptimize(sun.cos_zenith.data());
  }
}
BENCHMARK(year_of_sun)->Unit(benchmark::kMillisecond);

}  // namespace
