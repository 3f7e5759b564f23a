// Constant power from a source behind a resistance: R I^2 - E I + P = 0, the smaller root; none if P > E^2 /
// 4R. Single balances are rows of tests/published/cells/checks.json; here the mean of a step and the
// inverter.
#include "engine/season/bus.h"

#include <gtest/gtest.h>

#include "engine/season/refined_step.h"
#include "tests/published/bank/plain_bank.h"

namespace voltwright::published {
namespace {

using season::BusSolution;
using season::Minute;
using season::System;

/// Loads on a bus without a source.
BusSolution<double> solve_on(const System<double>& system, const bank::Terminal<double>& t, double load_W,
                             double inverter_W) {
  const Minute minute;
  season::BusCase<double> bus{system, minute};
  bus.direct_W = load_W;
  bus.inverter_W = inverter_W;
  return season::solve_bus<double>(bus, t, t.source_V);
}

/// A source of `open_V` behind `ohm`, with no relaxation, on a bus.
struct Source {
  PlainBank plain;
  System<double> system;
  bank::State<double> state;

  Source(double open_V, double ohm) : plain(kind(open_V, ohm), 1.0) { system.bank = plain.parameters(60.0); }
  static cell::Chemistry kind(double open_V, double ohm) {
    cell::Chemistry c = plain_chemistry(open_V);
    c.resistance.ohmic_ohm_Ah = ohm;
    return c;
  }
  BusSolution<double> solve(double inverter_W) const {
    return solve_on(system, bank::terminal<double>(system.bank, state), 0.0, inverter_W);
  }
};

// Relaxation within a step: 13.2 V, pairs at 0.10 and 0.05 V, R0 8 mohm, 5 mohm 20 s, 4 mohm 300 s, 600 W.
// Before the pairs move 47.351520 A at 12.671188 V; with what they have become after 60 s 47.970741 A
// at 12.507624 V. The mean over the step lies between.
TEST(ConstantPower, MeanWithRelaxation) {
  cell::Chemistry c = plain_chemistry(13.2);
  c.resistance.ohmic_ohm_Ah = 0.008;
  c.resistance.fast_ohm_Ah = 0.005;
  c.resistance.fast_tau_s = 20.0;
  c.resistance.slow_ohm_Ah = 0.004;
  c.resistance.slow_tau_s = 300.0;
  const PlainBank plain(c, 1.0);
  bank::State<double> state;
  state.fast_V = 0.10;
  state.slow_V = 0.05;
  System<double> system;
  system.bank = plain.parameters(60.0);
  const auto minute = solve_on(system, bank::terminal<double>(system.bank, state), 600.0, 0.0);
  EXPECT_GT(minute.bank_A, 47.351520);
  EXPECT_LT(minute.bank_A, 47.970741);
  EXPECT_NEAR(minute.bank_A * minute.bus_V, 600.0, 1e-9);
}

// Inverter input of 2196 W: 12.8 V, 5 mohm 184.9 A, 11.88 V; 12.0 V, 10 mohm 225.3 A, 9.75 V; 11.5 V, 15 mohm
// 360 A, 6.1 V; 25.6 V, 10 mohm 88.9 A; 51.2 V, 20 mohm 43.6 A. Half a unit of the last digit.
TEST(InverterInput, BehindItsCable) {
  const struct {
    double bus_V, ohm, current_A, input_V;
  } kRows[] = {{12.8, 0.005, 184.9, 11.88},
               {12.0, 0.010, 225.3, 9.75},
               {11.5, 0.015, 360.0, 6.1},
               {25.6, 0.010, 88.9, 24.71},
               {51.2, 0.020, 43.6, 50.33}};
  for (const auto& row : kRows) {
    const auto draw = season::cable_draw<double>(row.bus_V, 2196.0, row.ohm);
    EXPECT_NEAR(draw.current_A, row.current_A, 0.05) << row.bus_V;
    EXPECT_NEAR(row.bus_V - row.ohm * draw.current_A, row.input_V, 0.0051) << row.bus_V;
  }
}

// 3700 W from 12.0 V behind 10 mohm is more than the 3600 W there are: with the resistance inside the bank
// the bus collapses and the energy counts as not delivered.
TEST(InverterInput, MoreThanThereIs) {
  Source source(12.0, 0.010);
  EXPECT_TRUE(source.solve(3700.0).collapsed);
  season::SystemState<double> state;
  state.bus_V = 12.0;
  state.bank.temperature_C = 25.0;
  Minute minute;
  minute.inverter_W = 3700.0;
  minute.essential_inverter_W = 3700.0;
  const auto report = season::step<double>(source.system, minute, state);
  EXPECT_EQ(report.collapsed, 1.0);
  EXPECT_NEAR(report.unmet_essential_W, 3700.0, 1e-9);
  EXPECT_NEAR(report.bank_A, 0.0, 1e-9);
}

// 2196 W behind 10 mohm from 12.0 V leave 9.75 V at the inverter, which a cut-off of 10.5 V does not allow:
// it is off from the next minute on, and back when the bus is above the restart voltage.
TEST(InverterInput, TripsOnLowVoltage) {
  Source source(12.0, 1e-7);
  source.system.inverter_cable_ohm = 0.010;
  source.system.inverter_cut_off_V = 10.5;
  source.system.inverter_restart_V = 12.5;
  season::SystemState<double> state;
  state.bus_V = 12.0;
  Minute minute;
  minute.inverter_W = 2196.0;
  const auto first = season::step<double>(source.system, minute, state);
  EXPECT_NEAR(first.inverter_V, 9.747, 0.002);
  EXPECT_EQ(state.inverter_off, 1.0);
  EXPECT_NEAR(season::step<double>(source.system, minute, state).unmet_W, 2196.0, 1e-9);
}

}  // namespace
}  // namespace voltwright::published
