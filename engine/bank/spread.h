#pragma once
// Cells in series that differ: the weakest sets what can be used, the fullest ends the charge.
// Equations: docs/method/spread.md.
#include <cstddef>
#include <vector>

#include "engine/base/random.h"
#include "engine/cell/chemistry.h"

namespace voltwright::bank {

/// m(N): expected value of the largest of N independent standard normal numbers; the smallest is -m(N).
/// 0 for N = 1. @pre N >= 1
double expected_extreme(int count);

/// Standard deviation of the largest of N independent standard normal numbers; 1 for N = 1.
double extreme_deviation(int count);

/// Capacities of cells of one batch, normal.
struct CellCapacities {
  double mean_Ah = 100.0;
  double sigma_Ah = 1.0;
  int cells = 4;  // in series
};

/// Expected capacity of the weakest cell [Ah], and with it of the string: mean - sigma m(N).
double expected_minimum_Ah(const CellCapacities& capacities);

/// Chance that the weakest cell is below `limit_Ah`: 1 - (1 - Phi((limit - mean) / sigma))^N. @pre sigma > 0
double chance_weakest_below(const CellCapacities& capacities, double limit_Ah);

/// Mean over drawn strings, with its standard error.
struct DrawnMinimum {
  double mean_Ah = 0.0;
  double standard_error_Ah = 0.0;
};

/// The weakest cell by drawing `strings` strings (2 or more).
DrawnMinimum drawn_minimum_Ah(const CellCapacities& capacities, std::size_t strings,
                              base::RandomStream random);

/// One cell of a string: what it holds when full, and its state of charge now.
struct StringCell {
  double capacity_Ah = 100.0;
  double charge = 1.0;
};

/// Charge [Ah] between the first full and the first empty cell: least z C plus least (1 - z) C. One charge
/// passes through all cells, so the weakest limits, and cells at different charge lose more. 0 without cells.
double usable_Ah(const std::vector<StringCell>& cells);

/// A string of which one cell is fuller than the rest, all of equal capacity, while it is charged.
struct Ahead {
  int cells = 4;
  double ahead = 0.0;              // charge of the fullest above the mean of all, as a share of capacity
  double rate_per_h = 0.2;         // charge current over capacity, >= 0
  double resistance_factor = 1.0;  // of the cells against new
};

/// Voltage of a cell [V] charged for long at a rate, 25 degC: open circuit on the charging branch of the
/// hysteresis plus all resistances, those of the pairs and of lead-acid charging included. Beyond full the
/// last slope of the open-circuit curve goes on.
double charging_V(const cell::Chemistry& chemistry, double charge, double rate_per_h,
                  double resistance_factor);

/// Voltages of the string at a mean charge [V].
struct StringVoltages {
  double fullest_V = 0.0;
  double others_V = 0.0;  // of each other cell
  double string_V = 0.0;
};
StringVoltages voltages_at(const cell::Chemistry& chemistry, const Ahead& string, double mean_charge);

/// Where protection that watches single cells ends the charge.
struct Opening {
  double mean_charge = 0.0;  // of the string
  StringVoltages voltages;   // at that moment
  double lost_share = 0.0;   // of capacity, against a string whose cells are level
};

/// Opening at a cell voltage of `limit_V`. The share lost is ahead N / (N - 1): what the emptiest cells lack,
/// as they end the discharge. @pre cells >= 2, and the curve reaches limit_V or rises at its end
Opening opening_at(const cell::Chemistry& chemistry, const Ahead& string, double limit_V);

/// Levelling the fullest cell by bleeding it through a resistor.
struct Bleeding {
  double difference_Ah = 0.0;   // between the fullest and the others
  double hours = 0.0;           // of bleeding
  double hours_a_charge = 0.0;  // that the fullest cell spends above balance_V in one charge
  double charges = 0.0;         // until level; infinite if it is never above balance_V
};

/// @param balance_V  cells above it are bled
/// @param limit_V    cell voltage at which the charge ends
/// @param hold_h     how long the charger then holds, bleeding going on
/// @param bleed_A    > 0
Bleeding bleeding(const cell::Chemistry& chemistry, const Ahead& string, double capacity_Ah, double balance_V,
                  double limit_V, double hold_h, double bleed_A);

}  // namespace voltwright::bank
