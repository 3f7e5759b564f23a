#include "engine/season/setup.h"

#include <algorithm>
#include <limits>

#include "engine/supply/engine_use.h"

namespace voltwright::season {

namespace {

constexpr double kStep_s = 60.0;
/// Steps in which something switches are taken again in these.
constexpr double kFiner_s[] = {6.0, 1.0};
/// A charger's lead of nothing would make its curve a corner.
constexpr double kLeastLead_ohm = 1e-4;
/// Peak over continuous current below which the inverse-time rule would have no room.
constexpr double kLeastPeak = 1.05;
/// More than any state of charge: the chargers may fill the bank to the brim.
constexpr double kNoCeiling = 2.0;
constexpr double kCopper_ohm_mm2_m = 0.017241;
/// Loads that were switched off come back when the bank is this much fuller; common practice, no source.
constexpr double kReconnectAbove = 0.05;
/// Highest compensated charge voltage for each 12 V of the system; common practice, protects the loads.
constexpr double kHighestOver12V = 15.5 / 12.0;

bank::Guard<double> make_guard(const bank::Battery& battery, const cell::Chemistry& chemistry,
                               const bank::Layout& layout, double usable_depth) {
  const bank::BankFigures figures = bank::bank_figures(battery, layout);
  const cell::CellLimits& limits = chemistry.limits;
  bank::Guard<double> guard;
  guard.charge_min_C = limits.charge_min_C;
  guard.charge_max_C = limits.charge_max_C;
  guard.discharge_min_C = limits.discharge_min_C;
  guard.discharge_max_C = limits.discharge_max_C;
  guard.hysteresis_K = limits.hysteresis_K;
  guard.charge_limit_A = figures.charge_A;
  if (battery.reduced_charge_rate > 0.0) {
    guard.reduced_below_C = limits.charge_min_C;
    guard.reduced_A = battery.reduced_charge_rate * figures.capacity_Ah;
    guard.charge_min_C = battery.reduced_charge_min_C;
  }
  if (figures.over_voltage_V > 0.0) guard.over_voltage_V = figures.over_voltage_V;
  guard.under_voltage_V = figures.under_voltage_V;
  guard.under_voltage_release_V = figures.under_voltage_release_V;
  guard.floor_charge = usable_depth < 1.0 ? 1.0 - usable_depth : -std::numeric_limits<double>::infinity();
  guard.floor_release = kReconnectAbove;
  if (battery.has_protection) {
    guard.electronic = 1.0;
    guard.continuous_A = figures.continuous_A;
    guard.peak_A = std::max(figures.peak_A, kLeastPeak * figures.continuous_A);
    guard.peak_s = battery.peak_s;
  }
  return guard;
}

/// State of charge at which the open-circuit voltage reaches a cell voltage, at most what the cells store; by
/// halving.
double full_charge_at(const cell::Chemistry& chemistry, double cell_V) {
  const double most = cell::most_charge(chemistry);
  if (cell::open_circuit_V(chemistry, most) <= cell_V) return kNoCeiling;
  double low = 0.0;
  double high = most;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (cell::open_circuit_V(chemistry, middle) < cell_V ? low : high) = middle;
  }
  return low;
}

/// The profile that the bank's chemistry asks for.
supply::StageSettings<double> own_stages(const bank::Battery& battery, const cell::Chemistry& chemistry,
                                         const bank::Layout& layout, double system_V) {
  const double cells = static_cast<double>(battery.cells_in_series) * layout.in_series;
  const cell::ChargeStages& stages = chemistry.stages;
  supply::StageSettings<double> settings;
  settings.absorption_V = stages.absorption_V * cells;
  settings.rebulk_V = stages.rebulk_V * cells;
  settings.float_V = (stages.float_V > 0.0 ? stages.float_V : stages.rebulk_V) * cells;
  settings.tail_A = stages.tail_rate * battery.capacity_Ah * layout.in_parallel;
  settings.absorption_max_s = stages.absorption_max_h * 3600.0;
  settings.compensation_V_per_K = stages.compensation_V_per_K * cells;
  settings.highest_V = std::max(settings.absorption_V, system_V * kHighestOver12V);
  return settings;
}

/// A charger on this bank: the bank's own profile, or the one it is set to.
supply::Charger<double> make_charger(const supply::StageSettings<double>& own,
                                     const cell::Chemistry& chemistry, double cells,
                                     const supply::Regulation& regulation) {
  supply::Charger<double> charger;
  charger.lead_ohm = std::max(kLeastLead_ohm, units::as_ohms(regulation.lead));
  charger.wakes = regulation.wakes;
  supply::StageSettings<double>& stages = charger.stages;
  stages = own;
  if (regulation.profile.has_value()) {
    const supply::ChargeProfile& set = *regulation.profile;
    stages.absorption_V = units::as_volts(set.absorption);
    const double float_V = units::as_volts(set.float_voltage);
    stages.rebulk_V = std::min(own.rebulk_V, float_V > 0.0 ? float_V : stages.absorption_V);
    stages.float_V = float_V > 0.0 ? float_V : stages.rebulk_V;
    stages.compensation_V_per_K = set.compensation_V_per_K;
    stages.absorption_max_s = units::as_seconds(set.absorption_at_most);
    stages.highest_V = std::max(stages.absorption_V, own.highest_V);
  }
  const double every_s = units::as_seconds(regulation.equalise_every);
  if (every_s > 0.0 && chemistry.stages.equalise_V > 0.0) {
    stages.equalise_V = chemistry.stages.equalise_V * cells;
    stages.equalise_s = chemistry.stages.equalise_h * 3600.0;
    stages.equalise_every_s = every_s;
  }
  const double in_frost_V =
      stages.absorption_V + stages.compensation_V_per_K * (supply::kLeastCompensated_C - 25.0);
  stages.full_charge = full_charge_at(chemistry, std::min(in_frost_V, stages.highest_V) / cells);
  return charger;
}

/// Output current of the engine's charging at an alternator voltage; a DC-DC converter that would fall below
/// its lock-out gives nothing.
double engine_limit_A(const supply::EngineCharging& engine, double alternator_V, double output_V) {
  const double limit_A = units::as_amperes(engine.output_limit);
  if (engine.coupling == supply::EngineCoupling::kRelay) return limit_A;
  // With an alternator described by itself the minutes say whether the converter runs.
  if (engine.alternator) return limit_A;
  return supply::converter_runs(engine, alternator_V, limit_A * output_V) ? limit_A : 0.0;
}

void add_engine(const supply::EngineCharging& engine, const cell::Chemistry& chemistry, double cells,
                double output_V, System<double>& system) {
  const double high_V = units::as_volts(engine.alternator_voltage);
  const double low_V = engine.low_share > 0.0 ? units::as_volts(engine.alternator_low_voltage) : high_V;
  system.engine_limit_A = engine_limit_A(engine, high_V, output_V);
  system.engine_low_limit_A = engine_limit_A(engine, low_V, output_V);
  if (engine.coupling != supply::EngineCoupling::kRelay) return;
  system.relay_V = high_V;
  system.relay_low_V = low_V;
  system.relay_ohm = std::max(kLeastLead_ohm, supply::engine_loop_ohm(engine));
  system.chargers[kEngine].stages.full_charge =
      full_charge_at(chemistry, supply::highest_alternator_V(engine) / cells);
}

void add_generator(const supply::Generator& generator, const supply::MainsCharger& mains,
                   System<double>& system) {
  // The charger's own limit is kept as a current, besides this power.
  system.generator_W =
      supply::generator_output_W(generator, std::numeric_limits<double>::infinity(), mains.efficiency);
  system.generator_start_below = generator.start_below;
  system.generator_stop_above = generator.stop_above;
}

void add_far_loads(std::span<const demand::Load> loads, System<double>& system) {
  for (const demand::Load& load : loads) {
    if (!load.far.has_value() || system.far_count == kMostFarLoads) continue;
    FarLoad& far = system.far[system.far_count++];
    far.ohm = units::as_ohms(load.far->loop);
    far.cut_off_V = units::as_volts(load.far->cut_off);
    far.restart_V = units::as_volts(load.far->restart);
  }
}

}  // namespace

double loop_resistance_ohm(double one_way_m, double area_mm2) {
  return one_way_m > 0.0 && area_mm2 > 0.0 ? 2.0 * kCopper_ohm_mm2_m * one_way_m / area_mm2 : 0.0;
}

System<double> make_system(const bank::Battery& battery, const cell::Chemistry& chemistry,
                           const cell::Tables& tables, const bank::Layout& layout,
                           const Installation& installation) {
  const bank::BankFigures figures = bank::bank_figures(battery, layout);
  const bank::Surroundings& around = installation.surroundings;
  bank::Enclosure box;
  if (around.location == bank::Location::kHeatedBox)
    box.loss_W_K = units::as_watts_per_kelvin(around.box_loss);
  System<double> system;
  system.bank = bank::assemble(battery, chemistry, tables, layout, installation.main_cable_ohm,
                               bank::free_standing_loss_W_K(figures.volume_L.typical), kStep_s, box);
  for (const double shorter_s : kFiner_s) {
    system.finer[system.finer_count++] = bank::with_step(system.bank, shorter_s);
  }
  system.cell_Ah = battery.capacity_Ah;
  system.guard = make_guard(battery, chemistry, layout, installation.usable_depth);
  system.peak_A = figures.peak_A;
  const double cells = static_cast<double>(battery.cells_in_series) * layout.in_series;
  const auto own = own_stages(battery, chemistry, layout, installation.system_V);
  system.start_charge = std::min(1.0, full_charge_at(chemistry, chemistry.stages.absorption_V));
  system.start_ahead = layout.ahead;
  system.chargers[kSolar] = make_charger(own, chemistry, cells, installation.solar);
  system.chargers[kEngine] =
      make_charger(own, chemistry, cells,
                   installation.engine != nullptr ? installation.engine->regulation : supply::Regulation{});
  system.chargers[kMains] =
      make_charger(own, chemistry, cells,
                   installation.mains != nullptr ? installation.mains->regulation : supply::Regulation{});
  system.chargers[kGenerator] = system.chargers[kMains];
  system.chargers[kWind] =
      make_charger(own, chemistry, cells,
                   installation.wind != nullptr ? installation.wind->regulation : supply::Regulation{});
  system.chargers[kWater] =
      make_charger(own, chemistry, cells,
                   installation.water != nullptr ? installation.water->regulation : supply::Regulation{});
  system.inverter_cable_ohm = installation.inverter_cable_ohm;
  if (installation.inverter != nullptr) {
    system.inverter_cut_off_V = units::as_volts(installation.inverter->cut_off);
    system.inverter_restart_V = units::as_volts(installation.inverter->restart);
  }
  if (installation.engine != nullptr)
    add_engine(*installation.engine, chemistry, cells, own.absorption_V, system);
  if (installation.mains != nullptr)
    system.mains_limit_A = units::as_amperes(installation.mains->output_limit);
  if (installation.mains != nullptr && installation.generator != nullptr)
    add_generator(*installation.generator, *installation.mains, system);
  if (around.location == bank::Location::kHeatedBox) {
    system.heater_W = units::as_watts(around.heater_power);
    system.heater_below_C = around.heater_below.as_celsius();
    system.heater_on_surplus = around.heater_on_surplus;
  }
  add_far_loads(installation.loads, system);
  return system;
}

SystemState<double> full_and_rested(const System<double>& system, double temperature_C) {
  SystemState<double> state;
  state.bank.charge = system.start_charge;
  state.bank.side = -1.0;
  state.bank.ahead = system.start_ahead;
  state.bank.temperature_C = temperature_C;
  state.bank.enclosure_C = temperature_C;
  state.bus_V = bank::terminal<double>(system.bank, state.bank).source_V;
  return state;
}

}  // namespace voltwright::season
