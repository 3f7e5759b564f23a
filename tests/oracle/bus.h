#pragma once
// Sources, loads and a bank on one bus at one instant, once more from docs/method/{bus,charging}.md.
#include <algorithm>
#include <span>

#include "engine/supply/stages.h"
#include "tests/oracle/right_hand_side.h"

namespace voltwright::oracle {

/// A source with the charger that regulates it.
struct Source {
  double power_W = 0.0;  // what it could give: power, or current, at any voltage
  double current_A = 0.0;
  double set_V = 0.0;      // held at its own terminals
  double lead_ohm = 1e-3;  // from there to the bus

  bool there() const { return power_W > 0.0 || current_A > 0.0; }
  double full_A(double bus_V) const { return power_W / bus_V + current_A; }
  /// What would bring the voltage at its terminals to the set-point.
  double asked_A(double bus_V) const { return (set_V - bus_V) / lead_ohm; }
  double given_A(double bus_V) const {
    return there() ? std::clamp(asked_A(bus_V), 0.0, full_A(bus_V)) : 0.0;
  }
};

/// Voltage that a charger in a stage holds at a bank temperature [V].
double held_V(const supply::StageSettings<double>& settings, double stage, double temperature_C);

struct BusPoint {
  double bus_V = 0.0;
  double bank_A = 0.0;  // discharge positive
};

/// Where all currents balance, loads drawing a constant power; the bank takes no more than charge_limit_A.
BusPoint balance(const Poles& poles, std::span<const Source> sources, double load_W, double charge_limit_A);

}  // namespace voltwright::oracle
