// Catalogue cells driven through a published test, at a steady temperature or with their own heat.
#include "engine/bank/laboratory.h"
#include "tests/published/cells/quantities.h"
#include "tests/published/cells/records.h"

namespace voltwright::published {

namespace {

constexpr double kStep_s = 0.5;
constexpr double kHolding_W_K = 1e6;
constexpr double kLongest_s = 100.0 * 3600.0;

/// One cell of a record in air of its temperature: held there by a loss without bounds, unless the row gives
/// a mass and a heat loss.
struct HeldCell {
  cell::Tables tables;
  double temperature_C;
  bank::Parameters<double> parameters;
  bank::State<double> state;

  explicit HeldCell(Inputs& in)
      : HeldCell(record_of(in), in.number("capacity_Ah"), in.number("temperature_C"),
                 in.number_or("mass_kg", 1.0), in.number_or("heat_loss_W_K", kHolding_W_K)) {}
  HeldCell(const cell::Chemistry& kind, double capacity_Ah, double held_C, double mass_kg, double loss_W_K)
      : tables(cell::make_tables(kind)), temperature_C(held_C) {
    bank::Battery one;
    one.cells_in_series = 1;
    one.capacity_Ah = capacity_Ah;
    one.mass_kg.typical = mass_kg;
    parameters = bank::assemble(one, kind, tables, {1, 1, 0.0}, 0.0, loss_W_K, kStep_s);
    state.temperature_C = held_C;
  }
  HeldCell(const HeldCell&) = delete;  // the parameters point into the tables
  HeldCell& operator=(const HeldCell&) = delete;
};

/// Voltage after `seconds` of a constant current.
double cell_V(Inputs& in) {
  HeldCell held(in);
  held.state.charge = in.number("charge");
  const double current_A = in.number("current_A");
  const double seconds = in.number("seconds");
  const auto run =
      bank::discharge_at_current(held.parameters, held.state, current_A, 0.0, held.temperature_C, seconds);
  const auto t = bank::terminal<double>(held.parameters, run.state);
  return t.instant_V - t.instant_ohm * current_A;
}

/// Energy out over energy in, from the state that the test's own charge leaves: discharged at a constant
/// current to `lowest_V`, charged at another to `highest_V` and on until the current has fallen to `tail_A`.
double round_trip(Inputs& in) {
  HeldCell held(in);
  const double out_A = in.number("discharge_A");
  const double in_A = in.number("charge_A");
  const double lowest_V = in.number("lowest_V");
  const double highest_V = in.number("highest_V");
  const double tail_A = in.number("tail_A");
  double efficiency = 0.0;
  for (int pass = 0; pass < 2; ++pass) {
    const auto out = bank::discharge_at_current(held.parameters, held.state, out_A, lowest_V,
                                                held.temperature_C, kLongest_s);
    const auto back =
        bank::charge_to(held.parameters, out.state, in_A, highest_V, tail_A, held.temperature_C, kLongest_s);
    held.state = back.state;
    efficiency = out.drawn_Wh() / -back.drawn_Wh();
  }
  return efficiency;
}

}  // namespace

Quantities driven_quantities() { return {{"cell_V", cell_V}, {"round_trip", round_trip}}; }

}  // namespace voltwright::published
