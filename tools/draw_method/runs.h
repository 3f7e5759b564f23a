#pragma once
// The engine's discharges and charges behind the pictures of the method pages. Voltages are per cell.
#include <vector>

#include "engine/cell/chemistry.h"
#include "engine/cell/tables.h"

namespace voltwright::tools {

/// A cell kind with its look-up tables, in one place as long as runs need both.
struct Kind {
  const cell::Chemistry* record = nullptr;
  cell::Tables tables;
  double continuous_per_h = 1.0;  // discharge rate that batteries of the kind bear, over rated capacity
  double charger_per_h = 0.2;     // charge rate of the picture, over rated capacity
};

/// A single cell on a bench that holds its temperature, full at the start.
struct Bench {
  double capacity_Ah = 100.0;  // rated, > 0
  double current_A = 5.0;      // > 0
  double end_V = 1.75;         // the run ends here or where nothing more can be drawn at this temperature
  double temperature_C = 25.0;
};

/// One discharge, a point for each step.
struct Discharge {
  std::vector<double> time_s;     // middle of the step
  std::vector<double> voltage_V;  // mean over the step
  std::vector<double> drawn_Ah;   // at the middle of the step
  double hours = 0.0;             // whole run
  double total_Ah = 0.0;
  double total_Wh = 0.0;

  /// Voltage after this time or this much charge [V], straight between the points; the last one beyond the
  /// end.
  double at_time(double seconds) const;
  double at_charge(double Ah) const;
};

/// Runs the bank model (engine/bank/laboratory.h) until the end voltage or the last of the usable charge.
Discharge discharge(const Kind& kind, const Bench& bench);

/// Voltage of the same cell, empty at the start and charged at the bench's current, when it has come to a
/// state of charge [V]; the end voltage does not matter.
double charge_voltage(const Kind& kind, const Bench& bench, double charge);

/// One point of a charge; voltages are per cell, the current is positive into the cell.
struct ChargePoint {
  double hours = 0.0;
  double voltage_V = 0.0;
  double current_per_h = 0.0;  // over rated capacity
  double charge = 0.0;         // state of charge
  int stage = 0;               // 0 bulk, 1 absorption, 2 float or rest
};

/// Charge from `start` (state of charge) by a mains charger with the stages of the record, step by step
/// through engine/season/step.h at a held 25 degC, for at most `longest_h`; it ends `after_h` after the last
/// stage began.
std::vector<ChargePoint> charge(const Kind& kind, double start, double longest_h, double after_h);

}  // namespace voltwright::tools
