#include "engine/season/setup.h"

#include <algorithm>
#include <limits>

namespace voltwright::season {

namespace {

constexpr double kStep_s = 60.0;
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
  guard.cold_below_C = limits.cold_charge_below_C;
  guard.cold_limit_A = limits.cold_charge_rate * figures.capacity_Ah;
  if (figures.over_voltage_V > 0.0) guard.over_voltage_V = figures.over_voltage_V;
  guard.under_voltage_V = figures.under_voltage_V;
  guard.under_voltage_release_V = figures.under_voltage_release_V;
  guard.floor_charge = usable_depth < 1.0 ? 1.0 - usable_depth : -std::numeric_limits<double>::infinity();
  guard.floor_release = kReconnectAbove;
  return guard;
}

/// State of charge at which the open-circuit voltage reaches a cell voltage, at most 1; by halving.
double full_charge_at(const cell::Chemistry& chemistry, double cell_V) {
  if (cell::open_circuit_V(chemistry, 1.0) <= cell_V) return 1.0;
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (cell::open_circuit_V(chemistry, middle) < cell_V ? low : high) = middle;
  }
  return low;
}

supply::StageSettings<double> make_stages(const bank::Battery& battery, const cell::Chemistry& chemistry,
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
  settings.full_charge = full_charge_at(chemistry, stages.absorption_V);
  settings.highest_V = std::max(settings.absorption_V, system_V * kHighestOver12V);
  return settings;
}

}  // namespace

double loop_resistance_ohm(double one_way_m, double area_mm2) {
  return one_way_m > 0.0 && area_mm2 > 0.0 ? 2.0 * kCopper_ohm_mm2_m * one_way_m / area_mm2 : 0.0;
}

System<double> make_system(const bank::Battery& battery, const cell::Chemistry& chemistry,
                           const cell::Tables& tables, const bank::Layout& layout,
                           const Installation& installation) {
  const bank::BankFigures figures = bank::bank_figures(battery, layout);
  const bool boxed = installation.surroundings.location == bank::Location::kHeatedBox;
  const double loss_W_K = boxed ? units::as_watts_per_kelvin(installation.surroundings.box_loss)
                                : bank::free_standing_loss_W_K(figures.volume_L.typical);
  System<double> system;
  system.bank =
      bank::assemble(battery, chemistry, tables, layout, installation.main_cable_ohm, loss_W_K, kStep_s);
  system.guard = make_guard(battery, chemistry, layout, installation.usable_depth);
  system.stages = make_stages(battery, chemistry, layout, installation.system_V);
  system.peak_A = figures.peak_A;
  system.inverter_cable_ohm = installation.inverter_cable_ohm;
  if (installation.inverter != nullptr) {
    system.inverter_cut_off_V = units::as_volts(installation.inverter->cut_off);
    system.inverter_restart_V = units::as_volts(installation.inverter->restart);
  }
  if (installation.engine != nullptr) {
    system.engine_limit_A = units::as_amperes(installation.engine->output_limit);
    if (installation.engine->coupling == supply::EngineCoupling::kRelay) {
      system.relay_V = units::as_volts(installation.engine->alternator_voltage);
      system.relay_ohm = std::max(1e-4, units::as_ohms(installation.engine->loop_resistance));
    }
  }
  if (installation.mains != nullptr)
    system.mains_limit_A = units::as_amperes(installation.mains->output_limit);
  if (boxed) {
    system.heater_W = units::as_watts(installation.surroundings.heater_power);
    system.heater_below_C = installation.surroundings.heater_below.as_celsius();
  }
  return system;
}

SystemState<double> full_and_rested(const System<double>& system, double temperature_C) {
  SystemState<double> state;
  state.bank.charge = system.stages.full_charge;
  state.bank.temperature_C = temperature_C;
  state.bus_V = bank::terminal<double>(system.bank, state.bank).ocv_V;
  return state;
}

}  // namespace voltwright::season
