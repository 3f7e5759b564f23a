#pragma once
// Parallel batteries whose currents can be worked by hand.
#include <string>
#include <utility>
#include <vector>

#include "engine/bank/group.h"

namespace voltwright::bank {

/// Four cells with a straight voltage curve from 12.0 to 13.6 V and 4 mohm at 100 Ah, and no other losses, so
/// that every current can be worked by hand.
inline cell::Chemistry straight() {
  cell::Chemistry c;
  c.id = "straight";
  c.ocv_V = {{0.0, 3.0}, {1.0, 3.4}};
  c.resistance.ohmic_ohm_Ah = 0.1;
  c.resistance.activation_kJ_mol = 0.0;
  c.self_discharge_per_month = 0.0;
  return c;
}

inline Member member(double capacity_Ah = 100.0) {
  Member m;
  m.battery.name = "A " + std::to_string(static_cast<int>(capacity_Ah)) + " Ah battery";
  m.battery.chemistry = "straight";
  m.battery.capacity_Ah = capacity_Ah;
  m.battery.mass_kg = {10.0, 10.0, 10.0};
  m.battery.continuous_A = 100.0;
  m.battery.peak_A = 200.0;
  m.battery.peak_s = 3.0;
  m.guard.electronic = 1.0;
  m.guard.continuous_A = 100.0;
  m.guard.peak_A = 200.0;
  m.guard.peak_s = 3.0;
  m.guard.charge_limit_A = 100.0;
  m.charge = 0.9;
  m.temperature_C = 25.0;
  return m;
}

struct Bench {
  cell::Chemistry chemistry = straight();
  cell::Tables tables = cell::make_tables(chemistry);

  Group group(std::vector<Member> members, double step_s, const Wiring* wiring = nullptr) const {
    GroupSetup setup;
    setup.wiring = wiring != nullptr ? *wiring : bus_bars(std::vector<double>(members.size(), 0.0));
    setup.members = std::move(members);
    setup.step_s = step_s;
    return make_group(setup, chemistry, tables).value();
  }
};

}  // namespace voltwright::bank
