#pragma once
// One catalogue battery in the laboratory of the engine: held at a temperature, discharged at constant
// current to an end voltage, charged at constant current and then at constant voltage.
#include <limits>

#include "engine/bank/laboratory.h"
#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {

class DrivenBank {
 public:
  /// The battery stands in so strong a stream of air that it stays at `temperature_C`.
  DrivenBank(const char* kind, const char* battery_id, double temperature_C = 25.0, double step_s = 60.0)
      : tables_(cell::make_tables(chemistry(kind))),
        p_(bank::assemble(*catalogue().battery(battery_id), chemistry(kind), tables_, {1, 1, 0.0}, 0.0,
                          kStrongLoss_W_K, step_s)),
        temperature_C_(temperature_C) {}
  DrivenBank(const DrivenBank&) = delete;
  DrivenBank& operator=(const DrivenBank&) = delete;
  DrivenBank(DrivenBank&&) = delete;
  DrivenBank& operator=(DrivenBank&&) = delete;
  ~DrivenBank() = default;

  double capacity_Ah() const { return p_.capacity_Ah; }
  double cells() const { return p_.cells; }

  bank::State<double> rested(double charge) const {
    bank::State<double> state;
    state.charge = charge;
    state.temperature_C = temperature_C_;
    return state;
  }

  /// Discharge at a multiple of the capacity per hour to a voltage per cell.
  bank::LabRun discharge_from(const bank::State<double>& from, double end_V, double rate_per_h) const {
    return bank::discharge_at_current(p_, from, rate_per_h * p_.capacity_Ah, end_V * p_.cells, temperature_C_,
                                      kLongest_s);
  }
  /// Hours of that discharge from full and rested; not a number if the voltage is not reached within three
  /// weeks.
  double hours_to(double end_V, double rate_per_h) const {
    const bank::LabRun run = discharge_from(rested(1.0), end_V, rate_per_h);
    return run.stopped ? run.time_s() / kSecondsPerHour : std::numeric_limits<double>::quiet_NaN();
  }
  /// Share of the rated capacity given from full and rested, to a voltage per cell or to the level below
  /// which the tanks give no more at this temperature.
  double usable_from_full(double end_V, double rate_per_h) const {
    const double current_A = rate_per_h * p_.capacity_Ah;
    const auto current = [current_A](const bank::Terminal<double>& t, double) {
      return t.available > t.usable_floor ? current_A : std::numeric_limits<double>::quiet_NaN();
    };
    const auto run = bank::run_current(p_, rested(1.0), current, end_V * p_.cells,
                                       std::numeric_limits<double>::infinity(), temperature_C_, kLongest_s);
    return run.drawn_Ah() / p_.capacity_Ah;
  }
  /// Charge at a multiple of the capacity per hour and then at a voltage per cell until the current has
  /// fallen to `tail_per_h` times the capacity per hour, or the hours are over.
  bank::LabRun charge(const bank::State<double>& from, double set_V, double rate_per_h, double tail_per_h,
                      double longest_h) const {
    return bank::charge_to(p_, from, rate_per_h * p_.capacity_Ah, set_V * p_.cells,
                           tail_per_h * p_.capacity_Ah, temperature_C_, longest_h * kSecondsPerHour);
  }
  bank::Terminal<double> terminal(const bank::State<double>& state) const {
    return bank::terminal<double>(p_, state);
  }
  /// Share of the current at a voltage per cell that a step from the rested state does not store.
  double unstored_share(double charge, double set_V) const {
    bank::State<double> state = rested(charge);
    const auto t = terminal(state);
    const double current_A = (t.source_V - set_V * p_.cells) / t.charge_ohm;
    const auto w = bank::advance<double>(p_, t, state, current_A, temperature_C_, 0.0);
    return w.side_A / -current_A;
  }

 private:
  static constexpr double kSecondsPerHour = 3600.0;
  static constexpr double kLongest_s = 21.0 * 24.0 * kSecondsPerHour;
  static constexpr double kStrongLoss_W_K = 1e6;

  cell::Tables tables_;
  bank::Parameters<double> p_;
  double temperature_C_;
};

}  // namespace voltwright::published
