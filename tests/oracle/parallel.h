#pragma once
// Batteries in a row, joined pole to pole, the main cables both at the first: who carries how much at one
// instant. Once more from Kirchhoff's laws, without the engine's network.
#include <span>
#include <vector>

#include "tests/oracle/right_hand_side.h"

namespace voltwright::oracle {

struct Row {
  std::vector<Bank> batteries;
  std::vector<double> link_ohm;  // between neighbours, both poles together; one fewer than batteries
  std::vector<double> lead_ohm;  // of each battery's own leads, both poles together
};

/// Currents of the batteries [A, discharge positive] at a total current.
std::vector<double> currents_of(const Row& row, const std::vector<Poles>& poles, double total_A);

}  // namespace voltwright::oracle
