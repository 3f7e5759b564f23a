#include "tools/draw_method/runs.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/bank/laboratory.h"
#include "engine/season/refined_step.h"
#include "engine/season/setup.h"

namespace voltwright::tools {

namespace {

/// So large a loss holds the cell at the temperature of its surroundings.
constexpr double kHeld_W_K = 1e6;
constexpr double kMinute_s = 60.0;

bank::Battery bench_cell(const Kind& kind, double capacity_Ah) {
  bank::Battery battery;
  battery.chemistry = kind.record->id;
  battery.nominal_V = kind.record->nominal_V;
  battery.capacity_Ah = capacity_Ah;
  battery.cells_in_series = 1;
  battery.mass_kg = {1.0, 1.0, 1.0};
  battery.volume_L = {1.0, 1.0, 1.0};
  battery.charge_A = kind.charger_per_h * capacity_Ah;
  battery.has_protection = false;
  return battery;
}

/// A thousand steps a run, as relaxation is exact for any step and the curves are drawn from the means.
double step_of(double whole_s) { return std::clamp(whole_s * 1e-3, 0.5, kMinute_s); }

/// Straight between points; the end values beyond.
double between(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const auto after = std::lower_bound(x.begin(), x.end(), at);
  if (after == x.end()) return y.empty() ? 0.0 : y.back();
  if (after == x.begin()) return y.front();
  const auto i = static_cast<std::size_t>(after - x.begin());
  return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
}

}  // namespace

double Discharge::at_time(double seconds) const { return between(time_s, voltage_V, seconds); }
double Discharge::at_charge(double Ah) const { return between(drawn_Ah, voltage_V, Ah); }

Discharge discharge(const Kind& kind, const Bench& bench) {
  const double nominal_s = bench.capacity_Ah / bench.current_A * 3600.0;
  const bank::Battery battery = bench_cell(kind, bench.capacity_Ah);
  const auto parameters =
      bank::assemble(battery, *kind.record, kind.tables, {1, 1, 0.0}, 0.0, kHeld_W_K, step_of(nominal_s));
  bank::State<double> full;
  full.side = -1.0;  // as a charge leaves it
  full.temperature_C = bench.temperature_C;
  full.enclosure_C = bench.temperature_C;
  const bank::LabCurrent current = [&bench](const bank::Terminal<double>& t, double) {
    const bool left = t.available > t.usable_floor;
    return left ? bench.current_A : std::numeric_limits<double>::quiet_NaN();
  };
  const bank::LabRun run =
      bank::run_current(parameters, full, current, bench.end_V, std::numeric_limits<double>::infinity(),
                        bench.temperature_C, 3.0 * nominal_s);
  Discharge result;
  double before_s = 0.0;
  for (const bank::LabPoint& point : run.points) {
    const double middle_s = 0.5 * (before_s + point.time_s);
    before_s = point.time_s;
    result.time_s.push_back(middle_s);
    result.voltage_V.push_back(point.bank_V);
    result.drawn_Ah.push_back(bench.current_A * middle_s / 3600.0);
  }
  result.hours = run.time_s() / 3600.0;
  result.total_Ah = run.drawn_Ah();
  result.total_Wh = run.drawn_Wh();
  return result;
}

double charge_voltage(const Kind& kind, const Bench& bench, double charge) {
  const double whole_s = bench.capacity_Ah / bench.current_A * 3600.0;
  const bank::Battery battery = bench_cell(kind, bench.capacity_Ah);
  const auto parameters =
      bank::assemble(battery, *kind.record, kind.tables, {1, 1, 0.0}, 0.0, kHeld_W_K, step_of(whole_s));
  bank::State<double> empty;
  empty.charge = 0.0;
  empty.side = 1.0;  // as a discharge leaves it
  empty.temperature_C = bench.temperature_C;
  empty.enclosure_C = bench.temperature_C;
  const bank::LabRun run =
      bank::discharge_at_current(parameters, empty, -bench.current_A, std::numeric_limits<double>::infinity(),
                                 bench.temperature_C, whole_s);
  std::vector<double> middle, voltage_V;
  double before = 0.0;
  for (const bank::LabPoint& point : run.points) {
    middle.push_back(0.5 * (before + point.charge));
    before = point.charge;
    voltage_V.push_back(point.bank_V);
  }
  return between(middle, voltage_V, charge);
}

std::vector<ChargePoint> charge(const Kind& kind, double start, double longest_h, double after_h) {
  // One small cell, so that the lead of the charger, made for a whole bank, drops less than a millivolt.
  constexpr double kCapacity_Ah = 10.0;
  constexpr double kLead_ohm = 1e-4;
  constexpr double kTemperature_C = 25.0;
  const bank::Battery battery = bench_cell(kind, kCapacity_Ah);
  supply::MainsCharger charger;
  charger.output_limit = units::amperes(kind.charger_per_h * kCapacity_Ah);
  charger.regulation.lead = units::ohms(kLead_ohm);
  season::Installation installation;
  installation.mains = &charger;
  installation.system_V = kind.record->nominal_V;
  season::System<double> system =
      season::make_system(battery, *kind.record, kind.tables, {1, 1, 0.0}, installation);
  system.bank =
      bank::assemble(battery, *kind.record, kind.tables, {1, 1, 0.0}, 0.0, kHeld_W_K, system.bank.step_s);
  for (std::size_t i = 0; i < system.finer_count; ++i) {
    system.finer[i] = bank::with_step(system.bank, system.finer[i].step_s);
  }
  season::SystemState<double> state = season::full_and_rested(system, kTemperature_C);
  state.bank.charge = start;
  state.bank.side = 1.0;  // as a discharge leaves it
  season::Minute minute;
  minute.mains = true;
  minute.surroundings_C = kTemperature_C;

  std::vector<ChargePoint> points;
  double last_stage_h = longest_h;
  for (double hours = 0.0; hours < std::min(longest_h, last_stage_h + after_h);) {
    const int stage = static_cast<int>(std::lround(state.stages[season::kMains].stage));
    if (stage == 2 && last_stage_h >= longest_h) last_stage_h = hours;
    const season::StepReport<double> report = season::step<double>(system, minute, state);
    hours += system.bank.step_s / 3600.0;
    points.push_back({hours, report.bus_V, -report.bank_A / kCapacity_Ah, state.bank.charge, stage});
  }
  return points;
}

}  // namespace voltwright::tools
