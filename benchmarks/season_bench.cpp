// Time of one bank's year at one-minute steps, and of the shared series that it runs through.
#include <benchmark/benchmark.h>

#include "engine/season/run.h"
#include "tests/unit/season/sample_system.h"

namespace {

using namespace voltwright;

std::vector<season::Minute> plain_year() {
  std::vector<season::Minute> minutes(525600);
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    season::Minute& m = minutes[i];
    const double hour = static_cast<double>(i % 1440) / 60.0;
    m.direct_W = i % 37 == 0 ? 400.0 : 60.0;
    m.inverter_W = hour > 18.0 && hour < 19.0 ? 500.0 : 12.0;
    m.essential_direct_W = m.direct_W;
    m.surge_inverter_W = i % 240 == 0 ? 600.0 : 0.0;
    m.solar_W = hour > 7.0 && hour < 17.0 ? 300.0 : 0.0;
    m.engine = hour > 9.0 && hour < 10.0;
  }
  return minutes;
}

void year_of_one_bank(benchmark::State& state) {
  const bool lead = state.range(0) != 0;
  const cell::Chemistry chemistry = lead ? season::two_tank_chemistry() : season::flat_chemistry();
  const cell::Tables tables = cell::make_tables(chemistry);
  demand::Inverter inverter;
  inverter.rated = units::watts(1500.0);
  inverter.cut_off = units::volts(10.5);
  inverter.restart = units::volts(12.2);
  supply::EngineCharging engine;
  engine.output_limit = units::amperes(30.0);
  season::Installation installation;
  installation.inverter = &inverter;
  installation.engine = &engine;
  installation.main_cable_ohm = 0.001;
  installation.inverter_cable_ohm = 0.001;
  installation.usable_depth = chemistry.usable_depth;
  const auto system =
      season::make_system(season::battery_of(chemistry, 200.0), chemistry, tables, {1, 1, 0.0}, installation);
  const auto minutes = plain_year();
  for (auto _ : state) {
    season::Passage passage(system, chemistry, 0, 20.0);
    passage.run(minutes);
    benchmark::DoNotOptimize(passage.finish().lowest_charge);
  }
  state.counters["system_years_per_s"] =
      benchmark::Counter(static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}
BENCHMARK(year_of_one_bank)->ArgName("two_tank")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace
