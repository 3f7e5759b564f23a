// One step of the bank: relaxation, heat, two tanks, energy.
#include <cmath>

#include "tests/published/bank/plain_bank.h"
#include "tests/published/cells/quantities.h"
#include "tests/published/cells/records.h"

namespace voltwright::published {

namespace {

/// A bank of one ampere-hour with constants in ohm, driven at a constant current.
struct Pairs {
  double open_V = 13.2;
  double current_A = 0.0;
  bank::State<double> state;
  bank::Terminal<double> terminal;

  double end_V() const { return terminal.instant_V - terminal.instant_ohm * current_A; }
};

Pairs run_pairs(Inputs& in, double current_A, double steps) {
  Pairs pairs;
  pairs.open_V = in.number_or("open_V", pairs.open_V);
  pairs.current_A = current_A;
  cell::Chemistry kind = plain_chemistry(pairs.open_V);
  kind.resistance.ohmic_ohm_Ah = in.number("ohmic_ohm");
  kind.resistance.fast_ohm_Ah = in.number("fast_ohm");
  kind.resistance.fast_tau_s = in.number("fast_tau_s");
  kind.resistance.slow_ohm_Ah = in.number_or("slow_ohm", 0.0);
  kind.resistance.slow_tau_s = in.number_or("slow_tau_s", 400.0);
  pairs.state.fast_V = in.number_or("fast_V", 0.0);
  pairs.state.slow_V = in.number_or("slow_V", 0.0);
  const PlainBank plain(kind, 1.0);
  const auto p = plain.parameters(in.number("step_s"));
  for (int i = 0; i < static_cast<int>(steps); ++i) run(p, pairs.state, current_A);
  pairs.terminal = bank::terminal<double>(p, pairs.state);
  return pairs;
}

Pairs run_pairs(Inputs& in) { return run_pairs(in, in.number("current_A"), in.number_or("steps", 1.0)); }

double pair_end_ohm(Inputs& in) {
  const Pairs idle = run_pairs(in, 0.0, 1.0);
  const Pairs loaded = run_pairs(in, in.number("current_A"), 1.0);
  return (idle.end_V() - loaded.end_V()) / loaded.current_A;
}

/// Current that a held voltage asks for before the pairs have moved.
double held_voltage_start_A(Inputs& in) {
  const Pairs before = run_pairs(in, 0.0, 0.0);
  return (before.terminal.instant_V - in.number("held_V")) / before.terminal.instant_ohm;
}

bank::StepLosses<double> heat(Inputs& in) {
  const double cells = in.number("cells");
  const double entropic_mV_K = in.number("entropic_mV_per_K");
  cell::Chemistry kind = plain_chemistry(3.3);
  kind.entropic_mV_per_K = {{0.0, entropic_mV_K}, {1.0, entropic_mV_K}};
  kind.resistance.ohmic_ohm_Ah = in.number("ohm") * 100.0 / cells;
  PlainBank plain(kind, 100.0);
  plain.battery.cells_in_series = static_cast<int>(cells);
  const auto p = plain.parameters(60.0);
  bank::State<double> state;
  state.temperature_C = in.number("temperature_C");
  state.charge = 0.5;  // what does not fit into a full bank would heat it too
  return run(p, state, in.number("current_A"));
}

double node_temperature_C(Inputs& in) {
  const double surroundings_C = in.number("surroundings_C");
  const double step_s = in.number("step_s");
  cell::Chemistry kind = plain_chemistry(3.3);
  kind.specific_heat_J_kgK = in.number("specific_heat_J_kgK");
  PlainBank plain(kind, 100.0);
  plain.battery.mass_kg.typical = in.number("mass_kg");
  const auto p = bank::assemble(plain.battery, plain.chemistry, plain.tables, {1, 1, 0.0}, 0.0,
                                in.number("loss_W_K"), step_s);
  bank::State<double> state;
  state.temperature_C = surroundings_C;
  const int steps = static_cast<int>(std::lround(in.number("seconds") / step_s));
  const double heater_W = in.number("heat_W");
  for (int i = 0; i < steps; ++i) run(p, state, 0.0, surroundings_C, heater_W);
  return state.temperature_C;
}

/// Two tanks without losses, `full_Ah` in all, driven hour by hour.
struct Tanks {
  PlainBank plain;
  bank::State<double> state;

  explicit Tanks(Inputs& in) : plain(kind(in), in.number("full_Ah")) {}
  static cell::Chemistry kind(Inputs& in) {
    cell::Chemistry made = plain_chemistry(2.0);
    made.availability = {in.number("fraction"), in.number("exchange_per_h"), 1.0};
    return made;
  }
  double fraction() const { return plain.chemistry.availability.fraction; }
  double available_Ah() const {
    return fraction() * plain.battery.capacity_Ah * (state.charge - (1.0 - fraction()) * state.imbalance);
  }
  double bound_Ah() const {
    return (1.0 - fraction()) * plain.battery.capacity_Ah * (state.charge + fraction() * state.imbalance);
  }
  void hours(Inputs& in, int parts) {
    const auto p = plain.parameters(3600.0 / parts);
    const int count = static_cast<int>(in.number("hours"));
    for (int hour = 1; hour <= count; ++hour) {
      const double current_A = in.number("hour_" + std::to_string(hour) + "_A");
      for (int i = 0; i < parts; ++i) run(p, state, current_A);
    }
  }
};

Tanks driven_tanks(Inputs& in) {
  Tanks tanks(in);
  tanks.hours(in, static_cast<int>(in.number("steps_per_hour")));
  return tanks;
}

double tank_parts_differ(Inputs& in) {
  Tanks whole(in), parted(in);
  whole.hours(in, 1);
  parted.hours(in, static_cast<int>(in.number("steps_per_hour")));
  return std::fmax(std::fabs(parted.available_Ah() / whole.available_Ah() - 1.0),
                   std::fabs(parted.bound_Ah() / whole.bound_Ah() - 1.0));
}

/// What a step of a catalogue battery leaves unaccounted of its energy, over the power at the poles.
double step_energy_residual(Inputs& in) {
  const auto& battery = battery_of(in);
  const cell::Chemistry* record = catalogue().chemistry(battery.chemistry);
  if (record == nullptr) return 1.0;
  const cell::Tables tables = cell::make_tables(*record);
  const auto p = bank::assemble(battery, *record, tables, {1, 1, 0.0}, 0.002, 5.0, in.number("step_s"));
  const double current_A = in.number("current_A");
  bank::State<double> state;
  state.charge = in.number("charge");
  state.imbalance = in.number_or("imbalance", 0.0);
  const auto t = bank::terminal<double>(p, state);
  const double ohm = current_A < 0.0 ? t.charge_ohm : t.discharge_ohm;
  const double poles_W = (t.source_V - ohm * current_A) * current_A;
  const auto w = bank::advance<double>(p, t, state, current_A, 25.0, 0.0);
  const double accounted_W =
      w.stored_W - w.ohmic_W - w.cable_W - w.relaxing_W - w.side_W - w.self_discharge_W;
  return (accounted_W - poles_W) / poles_W;
}

}  // namespace

Quantities step_quantities() {
  return {
      {"pair_fast_V", [](Inputs& in) { return run_pairs(in).state.fast_V; }},
      {"pair_slow_V", [](Inputs& in) { return run_pairs(in).state.slow_V; }},
      {"pair_drop_V",
       [](Inputs& in) {
         const Pairs pairs = run_pairs(in);
         return pairs.open_V - pairs.end_V();
       }},
      {"pair_end_V", [](Inputs& in) { return run_pairs(in).end_V(); }},
      {"pair_end_ohm", pair_end_ohm},
      {"held_voltage_start_A", held_voltage_start_A},
      {"heat_ohmic_W", [](Inputs& in) { return heat(in).ohmic_W; }},
      {"heat_reversible_W",
       [](Inputs& in) {
         const auto losses = heat(in);
         return losses.heat_W - losses.ohmic_W;
       }},
      {"node_temperature_C", node_temperature_C},
      {"tank_available_Ah", [](Inputs& in) { return driven_tanks(in).available_Ah(); }},
      {"tank_bound_Ah", [](Inputs& in) { return driven_tanks(in).bound_Ah(); }},
      {"tank_parts_differ", tank_parts_differ},
      {"step_energy_residual", step_energy_residual},
  };
}

}  // namespace voltwright::published
