#pragma once
// One battery of a chemistry twice: as the engine steps it and as the equations say in continuous time.
#include <cstdio>
#include <string>

#include "engine/bank/electrochemistry.h"
#include "tests/laws/chemistries/every_chemistry.h"
#include "tests/oracle/right_hand_side.h"

namespace voltwright::oracle {

inline constexpr double kWhole_s = 60.0;   // the engine's step
inline constexpr double kRefined_s = 1.0;  // and around events
inline constexpr double kCable_ohm = 0.001;

/// A state of the engine as the unknowns of the equations.
inline std::vector<double> unknowns_of(const bank::State<double>& s) {
  std::vector<double> y(kUnknowns, 0.0);
  y[kCharge] = s.charge;
  y[kImbalance] = s.imbalance;
  y[kFast_V] = s.fast_V;
  y[kSlow_V] = s.slow_V;
  y[kTemperature_C] = s.temperature_C;
  y[kEnclosure_C] = s.enclosure_C;
  y[kSide] = s.side;
  return y;
}

class Oracle : public laws::EveryChemistry {
 protected:
  Oracle()
      : loss_W_K_(bank::free_standing_loss_W_K(battery_.volume_L.typical)),
        bank_(make_bank(battery_, chemistry_, {1, 1, 0.0}, kCable_ohm, loss_W_K_)) {}

  bank::Parameters<double> stepped(double step_s) const {
    return bank::assemble(battery_, chemistry_, tables_, {1, 1, 0.0}, kCable_ohm, loss_W_K_, step_s);
  }
  /// A rested bank in both forms.
  static bank::State<double> rested(double charge, double temperature_C) {
    bank::State<double> s;
    s.charge = charge;
    s.temperature_C = temperature_C;
    s.enclosure_C = temperature_C;
    return s;
  }

  double loss_W_K_;
  Bank bank_;
};

/// What both forms say of one stretch.
struct Course {
  double time_s = 0.0;
  double discharged_Ah = 0.0, charged_Ah = 0.0, discharged_Wh = 0.0, charged_Wh = 0.0;
  double charge = 0.0;
  double temperature_C = 0.0;

  /// Adds a step of the engine at a mean voltage and a current.
  void add(double step_s, double voltage_V, double current_A) {
    time_s += step_s;
    const double Ah = current_A * step_s / 3600.0;
    (Ah > 0.0 ? discharged_Ah : charged_Ah) += std::fabs(Ah);
    (Ah > 0.0 ? discharged_Wh : charged_Wh) += std::fabs(Ah) * voltage_V;
  }
};

inline Course course_of(double time_s, std::span<const double> y) {
  return {time_s,         y[kDischarged_Ah], y[kCharged_Ah],   y[kDischarged_Wh],
          y[kCharged_Wh], y[kCharge],        y[kTemperature_C]};
}

/// Relative difference; the difference itself where nothing is expected.
inline double apart(double found, double expected) {
  return expected != 0.0 ? found / expected - 1.0 : found;
}

}  // namespace voltwright::oracle
