// The bus that joins a source behind a resistance with loads of constant power.
#include <cmath>

#include "engine/season/bus.h"
#include "tests/published/bank/plain_bank.h"
#include "tests/published/cells/quantities.h"

namespace voltwright::published {

namespace {

/// Balance of a load (a source if negative) with a bank of one ampere-hour, constants in ohm.
season::BusSolution<double> solve(Inputs& in) {
  const double open_V = in.number("open_V");
  cell::Chemistry kind = plain_chemistry(open_V);
  kind.resistance.ohmic_ohm_Ah = in.number("ohm");
  kind.resistance.fast_ohm_Ah = in.number_or("fast_ohm", 0.0);
  kind.resistance.fast_tau_s = in.number_or("fast_tau_s", 20.0);
  kind.resistance.slow_ohm_Ah = in.number_or("slow_ohm", 0.0);
  kind.resistance.slow_tau_s = in.number_or("slow_tau_s", 400.0);
  const PlainBank plain(kind, 1.0);
  bank::State<double> state;
  state.fast_V = in.number_or("fast_V", 0.0);
  state.slow_V = in.number_or("slow_V", 0.0);
  season::System<double> system;
  system.bank = plain.parameters(in.number_or("step_s", 60.0));
  const double load_W = in.number("load_W");
  season::Minute minute;
  minute.solar_W = std::fmax(-load_W, 0.0);
  season::BusCase<double> bus{system, minute};
  constexpr double kNeverHeld_V = 1e3;
  bus.set_V.fill(kNeverHeld_V);
  bus.running.fill(1.0);
  bus.direct_W = std::fmax(load_W, 0.0);
  const auto t = bank::terminal<double>(system.bank, state);
  return season::solve_bus<double>(bus, t, t.source_V);
}

}  // namespace

Quantities bus_quantities() {
  return {
      {"bus_bank_A", [](Inputs& in) { return solve(in).bank_A; }},
      {"bus_V", [](Inputs& in) { return solve(in).bus_V; }},
      {"bus_collapses", [](Inputs& in) { return yes(solve(in).collapsed); }},
      {"bus_is_finite",
       [](Inputs& in) {
         const auto bus = solve(in);
         return yes(std::isfinite(bus.bus_V) && std::isfinite(bus.bank_A));
       }},
      {"cable_draw_A",
       [](Inputs& in) {
         return season::cable_draw<double>(in.number("open_V"), in.number("power_W"), in.number("ohm"))
             .current_A;
       }},
  };
}

}  // namespace voltwright::published
