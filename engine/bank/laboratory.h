#pragma once
// What a laboratory does with a bank: constant current, constant power, charge at a limited current and
// voltage, rest. Pure runs of the bank model in short steps, for records to be held against measured curves.
#include <functional>
#include <vector>

#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {

struct LabPoint {
  double time_s = 0.0;
  double bank_V = 0.0;     // mean over the step that ends here
  double current_A = 0.0;  // discharge positive
  double charge = 1.0;     // state of charge at the end of the step
  double drawn_Ah = 0.0;   // since the start of the run; negative while charging
  double drawn_Wh = 0.0;
  double temperature_C = 25.0;
};

struct LabRun {
  std::vector<LabPoint> points;  // one for each step; empty if the first step already stops
  State<double> state;           // at the end
  bool stopped = false;          // by the voltage or the tail current; false if the time ran out

  double time_s() const { return points.empty() ? 0.0 : points.back().time_s; }
  double drawn_Ah() const { return points.empty() ? 0.0 : points.back().drawn_Ah; }
  double drawn_Wh() const { return points.empty() ? 0.0 : points.back().drawn_Wh; }

  /// Bank voltage when this much had been drawn, linear between points; of the first or last point beyond.
  double voltage_at(double drawn_Ah) const;
};

/// The current that a step is to have, from the terminal behaviour and the time since the start; nothing to
/// end the run.
using LabCurrent = std::function<double(const Terminal<double>&, double time_s)>;

/// Runs a bank through steps of its own length. A step whose mean voltage lies beyond `lowest_V` or
/// `highest_V` is not taken: it is shortened so that the run ends at the limit (to a thousandth of a step).
/// @param longest_s  > 0
LabRun run_current(const Parameters<double>& parameters, State<double> state, const LabCurrent& current,
                   double lowest_V, double highest_V, double surroundings_C, double longest_s);

/// Constant current, discharge positive, until the voltage reaches `cut_off_V` from above (discharge) or
/// below (charge).
LabRun discharge_at_current(const Parameters<double>& parameters, const State<double>& state,
                            double current_A, double cut_off_V, double surroundings_C, double longest_s);

/// Constant power out of the poles [W], > 0, until the voltage reaches `cut_off_V` or no current gives it.
LabRun discharge_at_power(const Parameters<double>& parameters, const State<double>& state, double power_W,
                          double cut_off_V, double surroundings_C, double longest_s);

/// Charge with at most `current_A` (> 0) and at most `voltage_V` until the current has fallen to `tail_A`.
LabRun charge_to(const Parameters<double>& parameters, const State<double>& state, double current_A,
                 double voltage_V, double tail_A, double surroundings_C, double longest_s);

}  // namespace voltwright::bank
