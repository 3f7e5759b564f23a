// Catalogue cells driven through a published test at a steady temperature.
#include <algorithm>
#include <cmath>

#include "engine/bank/electrochemistry.h"
#include "tests/published/cells/quantities.h"
#include "tests/published/cells/records.h"

namespace voltwright::published {

namespace {

constexpr double kStep_s = 0.5;
constexpr int kLongest_steps = 2 * 3600 * 100;

/// One cell of a record, held at its temperature by a loss without bounds.
class DrivenCell {
 public:
  DrivenCell(const cell::Chemistry& kind, double capacity_Ah, double temperature_C)
      : tables_(cell::make_tables(kind)), temperature_C_(temperature_C) {
    constexpr double kHolding_W_K = 1e6;
    bank::Battery one;
    one.cells_in_series = 1;
    one.capacity_Ah = capacity_Ah;
    one.mass_kg.typical = 1.0;
    parameters_ = bank::assemble(one, kind, tables_, {1, 1, 0.0}, 0.0, kHolding_W_K, kStep_s);
    state.temperature_C = temperature_C;
  }
  DrivenCell(const DrivenCell&) = delete;
  DrivenCell& operator=(const DrivenCell&) = delete;

  bank::Terminal<double> terminal() const { return bank::terminal<double>(parameters_, state); }

  /// One step; the energy that the poles gave [Wh].
  double step(double current_A) {
    const auto t = terminal();
    const double ohm = current_A < 0.0 ? t.charge_ohm : t.discharge_ohm;
    bank::advance<double>(parameters_, t, state, current_A, temperature_C_, 0.0);
    return (t.source_V - ohm * current_A) * current_A * kStep_s / 3600.0;
  }

  bank::State<double> state;

 private:
  cell::Tables tables_;
  bank::Parameters<double> parameters_;
  double temperature_C_;
};

double cell_V(Inputs& in) {
  const auto& record = record_of(in);
  DrivenCell driven(record, in.number("capacity_Ah"), in.number("temperature_C"));
  driven.state.charge = in.number("charge");
  const double current_A = in.number("current_A");
  const int steps = static_cast<int>(std::lround(in.number("seconds") / kStep_s));
  for (int i = 0; i < steps; ++i) driven.step(current_A);
  const auto t = driven.terminal();
  return t.instant_V - t.instant_ohm * current_A;
}

/// Energy out over energy in: discharged at a constant current to `lowest_V`, charged at another to
/// `highest_V` and on at that voltage until the current has fallen to `tail_A`.
double round_trip(Inputs& in) {
  const auto& record = record_of(in);
  DrivenCell driven(record, in.number("capacity_Ah"), in.number("temperature_C"));
  const double out_A = in.number("discharge_A");
  const double in_A = in.number("charge_A");
  const double lowest_V = in.number("lowest_V");
  const double highest_V = in.number("highest_V");
  const double tail_A = in.number("tail_A");
  double out_Wh = 0.0;
  double in_Wh = 0.0;
  const auto charge = [&] {
    double current_A = in_A;
    for (int i = 0; i < kLongest_steps && current_A > tail_A && driven.state.charge < 1.0; ++i) {
      in_Wh -= driven.step(-current_A);
      const auto t = driven.terminal();
      current_A = std::clamp((highest_V - t.source_V) / t.charge_ohm, 0.0, in_A);
    }
  };
  const auto discharge = [&] {
    for (int i = 0; i < kLongest_steps; ++i) {
      const auto t = driven.terminal();
      if (t.source_V - t.discharge_ohm * out_A < lowest_V || t.available <= t.usable_floor) break;
      out_Wh += driven.step(out_A);
    }
  };
  discharge();
  charge();
  out_Wh = in_Wh = 0.0;  // counted from the state that the test's own charge leaves
  discharge();
  charge();
  return out_Wh / in_Wh;
}

}  // namespace

Quantities driven_quantities() { return {{"cell_V", cell_V}, {"round_trip", round_trip}}; }

}  // namespace voltwright::published
