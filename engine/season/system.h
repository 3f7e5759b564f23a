#pragma once
// The assembled direct-current system: bank, chargers, loads and inverter on one bus, and its state.
#include "engine/bank/electrochemistry.h"
#include "engine/bank/protection.h"
#include "engine/supply/stages.h"

namespace voltwright::season {

/// What does not change during a season. Scalars are shared by all lanes, R differs from bank to bank.
template <class R>
struct System {
  bank::Parameters<R> bank;
  bank::Guard<R> guard;
  supply::StageSettings<R> stages;
  R peak_A{1e9};                    // protection opens above this within seconds
  double inverter_cable_ohm = 0.0;  // loop
  double inverter_cut_off_V = 0.0;
  double inverter_restart_V = 0.0;
  double relay_V = 0.0;  // alternator voltage behind relay_ohm; 0 = no relay
  double relay_ohm = 1.0;
  double engine_limit_A = 0.0;
  double mains_limit_A = 0.0;
  double heater_W = 0.0;  // of a heated box; 0 = none
  double heater_below_C = 0.0;
};

/// One minute of what all banks share. Powers are means over the minute at the bus.
struct Minute {
  double direct_W = 0.0;            // direct-current loads
  double inverter_W = 0.0;          // input of the inverter
  double essential_direct_W = 0.0;  // parts of the two above
  double essential_inverter_W = 0.0;
  double surge_direct_W = 0.0;  // largest start within the minute, above the running power
  double surge_inverter_W = 0.0;
  double solar_W = 0.0;  // tracked arrays, after the controller
  double solar_A = 0.0;  // arrays coupled at battery voltage
  bool engine = false;
  bool mains = false;
  double surroundings_C = 20.0;  // of the bank

  bool has_source() const { return solar_W > 0.0 || solar_A > 0.0 || engine || mains; }
};

template <class R>
struct SystemState {
  bank::State<R> bank;
  bank::GuardState<R> guard;
  supply::StageState<R> stages;
  R bus_V{12.0};
  R inverter_off{0.0};  // latch, 1 = tripped on low voltage
};

/// What one step did: mean powers [W], currents [A, discharge positive] and voltages over the step.
template <class R>
struct StepReport {
  R bus_V, bank_A, inverter_V;
  R solar_W, solar_left_W, engine_W, mains_W;
  R direct_W, inverter_W, inverter_cable_W, heater_W;
  R unmet_W, unmet_essential_W;
  bank::StepLosses<R> bank;
  R residual_W;        // what the bus solution leaves unbalanced
  R surge_A, surge_V;  // bank current and lowest voltage at the largest start; 0 if none
  R failed_start;      // 1 if a start pulled the inverter below its cut-off or the bank over its peak current
  R collapsed;         // 1 if no bus voltage could carry the loads
  R loads_off;         // 1 if all loads were off
  R charge_limit_A;    // what the protection allowed; 0 = charging blocked
};

}  // namespace voltwright::season
