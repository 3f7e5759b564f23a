#pragma once
// A generator set that feeds a mains charger: power, fuel, and when it runs. See docs/method/engine_side.md.
#include <optional>

#include "engine/units/day_window.h"

namespace voltwright::supply {

struct Generator {
  double rated_W = 1000.0;                // continuous
  double standing_L_h_per_kW = 0.280;     // fuel without load, for each rated kW
  double litres_per_kWh = 0.481;          // fuel for each kWh beyond that
  double charger_power_factor = 0.95;     // of the charger on it
  double start_below = 0.0;               // state of charge; 0 = never by itself
  double stop_above = 0.9;                // state of charge
  std::optional<units::DayWindow> runs;   // by schedule
  std::optional<units::DayWindow> quiet;  // must not run
};

/// A set that its schedule runs and a full bank stopped comes back when the bank is this much emptier
/// (assumption): short runs wear it.
inline constexpr double kEmptierBeforeRestart = 0.05;

/// Most that its charger can put out [W]: the charger's own output, or what the set's rated power (taken as
/// volt-amperes) leaves at the charger's power factor and efficiency.
double generator_output_W(const Generator& generator, double charger_output_W, double charger_efficiency);

/// Fuel while it runs [L/h] at an alternating-current load in W, clamped to 0..rated.
double generator_L_per_h(const Generator& generator, double load_W);

/// Litres for each kWh at that load; infinite without load.
double generator_L_per_kWh(const Generator& generator, double load_W);

/// Whether it runs in the coming minute. Quiet hours and a charge of `stop_above` stop it. It runs through
/// its schedule, once stopped not before the bank is kEmptierBeforeRestart below `stop_above`; one that may
/// start by itself starts below `start_below`, and any run of it goes on to `stop_above`.
/// @param second_of_day local time
/// @param running whether it ran in the minute before
bool generator_runs(const Generator& generator, int second_of_day, double charge, bool running);

}  // namespace voltwright::supply
