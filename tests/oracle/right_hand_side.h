#pragma once
// The equations of docs/method/{cell,bank,heat}.md once more, in continuous time and from the curves of the
// record: no grid, no step, nothing of engine/bank but the records themselves.
#include <cstddef>
#include <span>
#include <vector>

#include "engine/bank/assembly.h"
#include "engine/bank/battery.h"
#include "engine/cell/chemistry.h"

namespace voltwright::oracle {

/// The unknowns of one bank, in this order, then sums over time for comparison.
enum Unknown : std::size_t {
  kCharge,     // z, 1 = full
  kImbalance,  // d, level of the bound less that of the available tank
  kFast_V,     // over R1
  kSlow_V,     // over R2
  kTemperature_C,
  kEnclosure_C,
  kSide,  // of the hysteresis, +1 after a long discharge
  kDischarged_Ah,
  kCharged_Ah,
  kDischarged_Wh,
  kCharged_Wh,
  kUnknowns
};

/// Absolute tolerances of the above, so that every quantity is known to about a billionth of its size.
std::vector<double> tolerances();

/// A bank in the words of the method pages.
struct Bank {
  const cell::Chemistry* chemistry = nullptr;  // outlives the bank
  double cells = 0.0;                          // N, in series
  double capacity_Ah = 0.0;                    // Q, worn
  double rated_Ah = 0.0;                       // m Q_battery
  double resistance_factor = 1.0;              // of the cells against new
  double fixed_ohm = 0.0;                      // R_fixed
  double cable_ohm = 0.0;                      // R_cable, part of it
  double heat_capacity_J_K = 0.0;
  double heat_loss_W_K = 0.0;
  bank::Enclosure enclosure;
};

Bank make_bank(const bank::Battery& battery, const cell::Chemistry& chemistry, const bank::Layout& layout,
               double cable_ohm, double heat_loss_W_K, const bank::Enclosure& enclosure = {});

/// The bank between its poles at one instant: V = source_V - R I with R by the direction of the current.
struct Poles {
  double source_V = 0.0;
  double discharge_ohm = 0.0;
  double charge_ohm = 0.0;
  double ocv_V = 0.0;      // N U, between the branches of the hysteresis
  double side_V = 0.0;     // by which the voltage lies below it
  double available = 0.0;  // h1
  double floor = 0.0;      // h_floor, where nothing more can be had

  double voltage_V(double current_A) const {
    return source_V - (current_A < 0.0 ? charge_ohm : discharge_ohm) * current_A;
  }
  /// Current that holds a voltage [A].
  double current_at_A(double voltage_V) const {
    return (source_V - voltage_V) / (voltage_V > source_V ? charge_ohm : discharge_ohm);
  }
  /// Current that gives a power at the poles [A], the smaller of two; NaN if there is none.
  double current_for_A(double power_W) const;
};

Poles poles_of(const Bank& bank, std::span<const double> y);

/// Time derivative [per second] of all unknowns of a bank at a current (discharge positive).
void slope_of(const Bank& bank, std::span<const double> y, double current_A, double air_C, double heater_W,
              std::span<double> dydt);

}  // namespace voltwright::oracle
