#pragma once
// One-cell banks with round constants, so that published numbers can be put in directly: flat open-circuit voltage,
// no losses, no change with temperature unless a case sets it.
#include "engine/bank/electrochemistry.h"

namespace voltwright::published {

inline cell::Chemistry plain_chemistry(double open_circuit_V) {
  cell::Chemistry c;
  c.id = "plain";
  c.nominal_V = open_circuit_V;
  c.ocv_V = {{0.0, open_circuit_V}, {1.0, open_circuit_V}};
  c.resistance.activation_kJ_mol = 0.0;
  c.self_discharge_per_month = 0.0;
  return c;
}

/// A chemistry with its tables and one battery of one cell.
struct PlainBank {
  cell::Chemistry chemistry;
  bank::Battery battery;
  cell::Tables tables;

  PlainBank(const cell::Chemistry& kind, double capacity_Ah) : chemistry(kind) {
    battery.cells_in_series = 1;
    battery.capacity_Ah = capacity_Ah;
    battery.mass_kg = {10.0, 10.0, 10.0};
    battery.volume_L = {10.0, 10.0, 10.0};
    tables = cell::make_tables(chemistry);
  }
  bank::Parameters<double> parameters(double step_s) const {
    return bank::assemble(battery, chemistry, tables, {1, 1, 0.0}, 0.0, 1.0, step_s);
  }
};

/// One step at a constant current, discharge positive.
inline bank::StepLosses<double> run(const bank::Parameters<double>& p, bank::State<double>& s, double current_A,
                                    double surroundings_C = 25.0, double heater_W = 0.0) {
  return bank::advance<double>(p, bank::terminal<double>(p, s), s, current_A, surroundings_C, heater_W);
}

}  // namespace voltwright::published
