#include "engine/advise/runtime.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/advise/wording.h"
#include "engine/bank/laboratory.h"

namespace voltwright::advise {

namespace {

constexpr double kSecondsPerHour = 3600.0;
constexpr double kShortestStep_s = 1.0;
constexpr double kLongestStep_s = 60.0;
/// Steps that a run of the expected length is cut into.
constexpr double kSteps = 3000.0;
/// Heat loss that holds a bank at the temperature around it.
constexpr double kHeld_W_K = 1e6;
constexpr double kNotANumber = std::numeric_limits<double>::quiet_NaN();

double nominal_V(const BankOnHand& bank) { return bank.battery->nominal_V * bank.layout.in_series; }

double capacity_Ah(const BankOnHand& bank) {
  return bank::bank_figures(*bank.battery, bank.layout).capacity_Ah;
}

double current_at(const SteadyLoad& load, double bank_V) { return bank_power_W(load, bank_V) / bank_V; }

double step_for(double expected_h) {
  return std::clamp(expected_h * kSecondsPerHour / kSteps, kShortestStep_s, kLongestStep_s);
}

/// Current of the coming step; not a number where the bank gives no more, with the reason.
struct Draw {
  const SteadyLoad* load;
  Ending* reason;

  double operator()(const bank::Terminal<double>& t, double /*time_s*/) const {
    *reason = Ending::kUnderVoltage;
    if (t.available <= t.usable_floor) {
      *reason = Ending::kEmpty;
      return kNotANumber;
    }
    if (load->current_A > 0.0) return load->current_A;
    const double power_W = bank_power_W(*load, t.source_V);
    const double under_root = t.source_V * t.source_V - 4.0 * t.discharge_ohm * power_W;
    if (under_root < 0.0) {
      *reason = Ending::kCannotCarry;
      return kNotANumber;
    }
    return 2.0 * power_W / (t.source_V + std::sqrt(under_root));
  }
};

/// A place on the way: the run up to a share of the step that ends at `points[index]`.
bank::LabPoint part_way(const std::vector<bank::LabPoint>& points, std::size_t index, double share,
                        double start_charge, double start_C) {
  bank::LabPoint from;
  from.charge = start_charge;
  from.temperature_C = start_C;
  if (index > 0) from = points[index - 1];
  const bank::LabPoint& to = points[index];
  const auto between = [share](double a, double b) { return a + share * (b - a); };
  bank::LabPoint at = to;
  at.time_s = between(from.time_s, to.time_s);
  at.charge = between(from.charge, to.charge);
  at.drawn_Ah = between(from.drawn_Ah, to.drawn_Ah);
  at.drawn_Wh = between(from.drawn_Wh, to.drawn_Wh);
  at.temperature_C = between(from.temperature_C, to.temperature_C);
  return at;
}

/// The electrolyte freezes below this [°C]; absolute zero if it never does.
double freezing_C(const cell::Chemistry& chemistry, double charge) {
  constexpr double kNever_C = -273.15;
  return base::curve_at(chemistry.freezing_C, charge, kNever_C);
}

/// Where the run ends for a reason of its own, before the laboratory stopped it.
struct EarlyEnd {
  bool found = false;
  bank::LabPoint at;
  Ending ending = Ending::kDepth;
};

/// Follows what the battery's own protection and the depth rule would do over the points of a run.
class Watcher {
 public:
  Watcher(const BankOnHand& bank, const RuntimeConditions& conditions)
      : figures_(bank::bank_figures(*bank.battery, bank.layout)),
        peak_s_(bank.battery->peak_s),
        electronic_(bank.battery->has_protection),
        chemistry_(*bank.chemistry),
        conditions_(conditions) {}

  EarlyEnd look(const std::vector<bank::LabPoint>& points) {
    const double floor = 1.0 - conditions_.depth;
    double before_s = 0.0;
    double before_charge = conditions_.start_charge;
    double overload = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const bank::LabPoint& point = points[i];
      const double step_s = point.time_s - before_s;
      if (conditions_.depth < 1.0 && point.charge < floor) {
        const double share = (before_charge - floor) / (before_charge - point.charge);
        return ended(points, i, std::clamp(share, 0.0, 1.0), Ending::kDepth);
      }
      const double more = electronic_ ? heating(point.current_A) * step_s / peak_s_ : 0.0;
      if (overload + more >= 1.0) {
        return ended(points, i, (1.0 - overload) / more, Ending::kOverCurrent);
      }
      overload = std::max(overload + more, 0.0);
      if (point.temperature_C > chemistry_.limits.discharge_max_C) {
        return ended(points, i, 1.0, Ending::kTooHot);
      }
      if (point.temperature_C < freezing_C(chemistry_, point.charge)) {
        return ended(points, i, 1.0, Ending::kTooCold);
      }
      before_s = point.time_s;
      before_charge = point.charge;
    }
    return {};
  }

 private:
  /// Inverse time between the continuous current (never) and the peak: as bank::watch has it.
  double heating(double current_A) const {
    const double allowed = figures_.continuous_A * figures_.continuous_A;
    constexpr double kLeast_A2 = 1e-6;  // a record whose peak is no more than its continuous current
    const double span = std::max(figures_.peak_A * figures_.peak_A - allowed, kLeast_A2);
    return (current_A * current_A - allowed) / span;
  }
  EarlyEnd ended(const std::vector<bank::LabPoint>& points, std::size_t index, double share,
                 Ending ending) const {
    return {true, part_way(points, index, share, conditions_.start_charge, conditions_.temperature_C),
            ending};
  }

  bank::BankFigures figures_;
  double peak_s_;
  bool electronic_;
  const cell::Chemistry& chemistry_;
  RuntimeConditions conditions_;
};

Run summary(const std::vector<bank::LabPoint>& points, const bank::LabPoint& end, const SteadyLoad& load,
            Ending ending) {
  Run run;
  run.hours = end.time_s / kSecondsPerHour;
  run.bank_Wh = end.drawn_Wh;
  run.drawn_Ah = end.drawn_Ah;
  run.start_V = points.front().bank_V;
  run.end_V = end.bank_V;
  run.mean_V = end.drawn_Ah > 0.0 ? end.drawn_Wh / end.drawn_Ah : end.bank_V;
  run.mean_A = run.hours > 0.0 ? end.drawn_Ah / run.hours : end.current_A;
  run.load_Wh = load.current_A > 0.0 ? end.drawn_Wh : load.power_W * run.hours;
  run.end_charge = end.charge;
  run.end_temperature_C = end.temperature_C;
  run.ending = ending;
  return run;
}

/// Nothing comes out at all.
Run not_started(const RuntimeConditions& conditions, Ending ending) {
  Run run;
  run.end_charge = conditions.start_charge;
  run.end_temperature_C = conditions.temperature_C;
  run.ending = ending;
  return run;
}

bool too_cold(const cell::Chemistry& chemistry, const RuntimeConditions& conditions) {
  if (conditions.temperature_C < chemistry.limits.discharge_min_C) return true;
  return conditions.temperature_C < freezing_C(chemistry, conditions.start_charge);
}

}  // namespace

double bank_power_W(const SteadyLoad& load, double bank_V) {
  if (load.current_A > 0.0) return load.current_A * bank_V;
  return load.idle_W + load.power_W / load.efficiency;
}

std::string_view text_of(Ending ending) {
  switch (ending) {
    case Ending::kDepth:
      return "the depth rule is reached";
    case Ending::kLoadCutOff:
      return "the load or inverter cuts out on low voltage";
    case Ending::kUnderVoltage:
      return "the battery's low-voltage cut-off is reached";
    case Ending::kEmpty:
      return "nothing more can be drawn at this rate and temperature";
    case Ending::kCannotCarry:
      return "the voltage collapses: the bank cannot give this power";
    case Ending::kOverCurrent:
      return "the battery's protection opens for too much current";
    case Ending::kTooCold:
      return "it is too cold for this battery to discharge";
    case Ending::kTooHot:
      return "the battery is too hot to discharge";
    case Ending::kStillRunning:
      break;
  }
  return "it still runs after a year";
}

Run run_down(const BankOnHand& bank, const SteadyLoad& load, const RuntimeConditions& conditions) {
  const cell::Chemistry& chemistry = *bank.chemistry;
  if (too_cold(chemistry, conditions)) return not_started(conditions, Ending::kTooCold);
  if (conditions.temperature_C > chemistry.limits.discharge_max_C) {
    return not_started(conditions, Ending::kTooHot);
  }
  const cell::Tables tables = cell::make_tables(chemistry);
  const bank::BankFigures figures = bank::bank_figures(*bank.battery, bank.layout);
  const double loss_W_K =
      conditions.held_temperature ? kHeld_W_K : bank::free_standing_loss_W_K(figures.volume_L.typical);
  const double expected_h = figures.capacity_Ah / current_at(load, figures.nominal_V);
  const auto parameters =
      bank::assemble(*bank.battery, chemistry, tables, bank.layout, 0.0, loss_W_K, step_for(expected_h));
  bank::State<double> state;
  state.charge = conditions.start_charge;
  state.temperature_C = conditions.temperature_C;
  Ending reason = Ending::kUnderVoltage;
  const double lowest_V = std::max(conditions.cut_off_V, figures.under_voltage_V);
  const bank::LabRun lab = bank::run_current(parameters, state, Draw{&load, &reason}, lowest_V,
                                             std::numeric_limits<double>::infinity(),
                                             conditions.temperature_C, kLongestRun_h * kSecondsPerHour);
  if (reason == Ending::kUnderVoltage && conditions.cut_off_V > figures.under_voltage_V) {
    reason = Ending::kLoadCutOff;
  }
  if (lab.points.empty()) return not_started(conditions, reason);
  const EarlyEnd early = Watcher(bank, conditions).look(lab.points);
  if (early.found) return summary(lab.points, early.at, load, early.ending);
  return summary(lab.points, lab.points.back(), load, lab.stopped ? reason : Ending::kStillRunning);
}

Runtime how_long(const BankOnHand& bank, const SteadyLoad& load, const RuntimeConditions& conditions) {
  Runtime answer;
  const double volts = nominal_V(bank);
  SteadyLoad bare = load;
  bare.efficiency = 1.0;
  bare.idle_W = 0.0;
  bank::Layout fresh = bank.layout;
  fresh.lost_capacity = 0.0;
  fresh.weakest_below = 0.0;
  const double rated_Ah = capacity_Ah({bank.battery, bank.chemistry, fresh});
  const double at_load_A = current_at(bare, volts);
  answer.bank_W = bank_power_W(load, volts);
  const auto add = [&answer](const char* name, double hours, const std::string& why) {
    answer.working.push_back({name, hours, why});
  };

  double hours = std::min(rated_Ah / at_load_A, kLongestRun_h);
  answer.naive_h = hours;
  add("In the head", hours,
      figure(rated_Ah, "Ah") + " ÷ " + figure(at_load_A, "A") + " at " + figure(volts, "V"));
  const double taken_A = answer.bank_W / volts;
  if (taken_A > at_load_A) {
    hours = std::min(rated_Ah / taken_A, kLongestRun_h);
    add("Inverter", hours,
        figure(answer.bank_W, "W") + " come from the bank for " + figure(load.power_W, "W") + " at the load");
  }
  const double held_Ah = capacity_Ah(bank);
  if (held_Ah < rated_Ah) {
    hours = std::min(held_Ah / taken_A, kLongestRun_h);
    add("Age", hours, "its capacity is now " + figure(held_Ah, "Ah"));
  }
  const double usable = std::max(conditions.start_charge - (1.0 - conditions.depth), 0.0);
  if (usable < 1.0) {
    hours = std::min(held_Ah * usable / taken_A, kLongestRun_h);
    add("Depth rule", hours,
        percent(usable) + " of it may be used" +
            (conditions.start_charge < 1.0 ? ", as it starts at " + percent(conditions.start_charge) : ""));
  }
  RuntimeConditions warm = conditions;
  constexpr double kRated_C = 25.0;
  warm.temperature_C = kRated_C;
  const Run at_rated = run_down(bank, load, warm);
  add("Rate and voltage", at_rated.hours,
      "by simulation at 25 °C: " + figure(at_rated.drawn_Ah, "Ah") + " at " + figure(at_rated.mean_V, "V") +
          " on average, until " + std::string(text_of(at_rated.ending)));
  answer.run = at_rated;
  if (std::fabs(conditions.temperature_C - kRated_C) > 0.0) {
    answer.run = run_down(bank, load, conditions);
    add("Temperature", answer.run.hours,
        "at " + figure(conditions.temperature_C, "°C") + ": " + figure(answer.run.drawn_Ah, "Ah") +
            ", until " + std::string(text_of(answer.run.ending)));
  }
  return answer;
}

}  // namespace voltwright::advise
