#include "engine/bank/laboratory.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace voltwright::bank {

namespace {

constexpr double kAnyVoltage = std::numeric_limits<double>::infinity();

double mean_V(const Terminal<double>& t, double current_A) {
  return t.source_V - (current_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * current_A;
}

/// One step of a run and where it leads.
struct LabStep {
  State<double> state;
  LabPoint point;
};

LabStep take(const Parameters<double>& p, const State<double>& from, const LabPoint& before, double current_A,
             double surroundings_C) {
  LabStep step{from, before};
  const Terminal<double> t = terminal<double>(p, from);
  const double hours = p.step_s / 3600.0;
  step.point.bank_V = mean_V(t, current_A);
  step.point.current_A = current_A;
  advance<double>(p, t, step.state, current_A, surroundings_C, 0.0);
  step.point.time_s += p.step_s;
  step.point.charge = step.state.charge;
  step.point.drawn_Ah += current_A * hours;
  step.point.drawn_Wh += current_A * step.point.bank_V * hours;
  step.point.temperature_C = step.state.temperature_C;
  return step;
}

}  // namespace

double LabRun::voltage_at(double drawn_Ah) const {
  if (points.empty()) return 0.0;
  const auto after = std::find_if(points.begin(), points.end(), [&](const LabPoint& point) {
    return std::fabs(point.drawn_Ah) >= std::fabs(drawn_Ah);
  });
  if (after == points.begin()) return points.front().bank_V;
  if (after == points.end()) return points.back().bank_V;
  const LabPoint& before = *(after - 1);
  const double share = (drawn_Ah - before.drawn_Ah) / (after->drawn_Ah - before.drawn_Ah);
  return before.bank_V + share * (after->bank_V - before.bank_V);
}

LabRun run_current(const Parameters<double>& parameters, State<double> state, const LabCurrent& current,
                   double lowest_V, double highest_V, double surroundings_C, double longest_s) {
  LabRun run;
  LabPoint point;
  Parameters<double> p = parameters;
  const double shortest_s = parameters.step_s * 1e-3;
  while (point.time_s < longest_s) {
    const Terminal<double> t = terminal<double>(p, state);
    const double current_A = current(t, point.time_s);
    const LabStep step =
        std::isfinite(current_A) ? take(p, state, point, current_A, surroundings_C) : LabStep{};
    const double bank_V = step.point.bank_V;
    if (!std::isfinite(current_A) || bank_V < lowest_V || bank_V > highest_V) {
      if (p.step_s <= shortest_s) {
        run.stopped = true;
        break;
      }
      p = with_step(p, p.step_s * 0.1);
      continue;
    }
    state = step.state;
    point = step.point;
    run.points.push_back(point);
  }
  run.state = state;
  return run;
}

LabRun discharge_at_current(const Parameters<double>& parameters, const State<double>& state,
                            double current_A, double cut_off_V, double surroundings_C, double longest_s) {
  const bool charging = current_A < 0.0;
  return run_current(
      parameters, state, [current_A](const Terminal<double>&, double) { return current_A; },
      charging ? -kAnyVoltage : cut_off_V, charging ? cut_off_V : kAnyVoltage, surroundings_C, longest_s);
}

LabRun discharge_at_power(const Parameters<double>& parameters, const State<double>& state, double power_W,
                          double cut_off_V, double surroundings_C, double longest_s) {
  const LabCurrent current = [power_W](const Terminal<double>& t, double) {
    const double under_root = t.source_V * t.source_V - 4.0 * t.discharge_ohm * power_W;
    return 2.0 * power_W / (t.source_V + std::sqrt(under_root));  // not a number where none gives it
  };
  return run_current(parameters, state, current, cut_off_V, kAnyVoltage, surroundings_C, longest_s);
}

LabRun charge_to(const Parameters<double>& parameters, const State<double>& state, double current_A,
                 double voltage_V, double tail_A, double surroundings_C, double longest_s) {
  const LabCurrent current = [=](const Terminal<double>& t, double) {
    const double held_A = (t.source_V - voltage_V) / t.charge_ohm;
    const double taken_A = std::max(held_A, -current_A);
    return taken_A < -tail_A ? taken_A : std::numeric_limits<double>::quiet_NaN();
  };
  return run_current(parameters, state, current, -kAnyVoltage, kAnyVoltage, surroundings_C, longest_s);
}

}  // namespace voltwright::bank
