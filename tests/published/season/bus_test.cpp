// Constant power from a source behind a resistance: R I^2 - E I + P = 0, the smaller root; none if P > E^2 /
// 4R. All expected values are that quadratic solved independently; tolerance: the digits given.
#include "engine/season/bus.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/season/refined_step.h"
#include "tests/published/bank/plain_bank.h"

namespace voltwright::published {
namespace {

using season::BusSolution;
using season::Minute;
using season::System;

/// Loads and a source without limits of its own on a bus.
BusSolution<double> solve_on(const System<double>& system, const bank::Terminal<double>& t, double load_W,
                             double inverter_W, double solar_W) {
  Minute minute;
  minute.solar_W = solar_W;
  season::BusCase<double> bus{system, minute};
  bus.set_V.fill(1e3);
  bus.running.fill(1.0);
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
  BusSolution<double> solve(double load_W, double inverter_W, double solar_W) const {
    return solve_on(system, bank::terminal<double>(system.bank, state), load_W, inverter_W, solar_W);
  }
};

TEST(ConstantPower, OneResistance) {
  const struct {
    double open_V, ohm, load_W, current_A, bus_V;
  } kRows[] = {{13.2, 0.02, 1000.0, 87.306778, 11.453864},
               {13.2, 0.02, 2000.0, 235.660189, 8.486796},
               {13.2, 0.02, -500.0, -35.923489, 13.918470},
               {3.3, 0.001, 100.0, 30.586526, 3.269413},
               {12.7, 0.01, 1200.0, 102.811124, 11.671889}};
  for (const auto& row : kRows) {
    const Source source(row.open_V, row.ohm);
    const auto bus = source.solve(std::fmax(row.load_W, 0.0), 0.0, std::fmax(-row.load_W, 0.0));
    EXPECT_NEAR(bus.bank_A, row.current_A, 1e-6);
    EXPECT_NEAR(bus.bus_V, row.bus_V, 1e-6);
    EXPECT_FALSE(bus.collapsed);
  }
}

// The most that 13.2 V behind 0.02 ohm can give is 2178 W at 6.6 V; there the discriminant is -2.8e-14 in
// binary arithmetic. At and above it the bus must be called collapsed, with finite numbers.
TEST(ConstantPower, AtAndAboveTheLargestPower) {
  const Source source(13.2, 0.02);
  for (const double load_W : {2178.0, 2300.0, 1e5}) {
    const auto bus = source.solve(load_W, 0.0, 0.0);
    EXPECT_TRUE(bus.collapsed) << load_W;
    EXPECT_TRUE(std::isfinite(bus.bus_V) && std::isfinite(bus.bank_A)) << load_W;
    EXPECT_GE(bus.bus_V, 6.6 - 1e-3);
  }
  EXPECT_NEAR(season::cable_draw<double>(13.2, 2178.0, 0.02).current_A, 330.0, 0.05);
}

// Relaxation within a step: 13.2 V, pairs at 0.10 and 0.05 V, R0 8 mohm, 5 mohm 20 s, 4 mohm 300 s, 600 W.
// Before the pairs move 47.351520 A at 12.671188 V; with what they have become after 60 s 47.970741 A
// at 12.507624 V. The mean over the step lies between, and approaches the first as the step shrinks.
TEST(ConstantPower, WithRelaxation) {
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
  const auto solve = [&](double step_s) {
    System<double> system;
    system.bank = plain.parameters(step_s);
    return solve_on(system, bank::terminal<double>(system.bank, state), 600.0, 0.0, 0.0);
  };
  const auto start = solve(1e-4);
  EXPECT_NEAR(start.bank_A, 47.351520, 1e-5);
  EXPECT_NEAR(start.bus_V, 12.671188, 1e-5);
  const auto minute = solve(60.0);
  EXPECT_GT(minute.bank_A, 47.351520);
  EXPECT_LT(minute.bank_A, 47.970741);
  EXPECT_NEAR(minute.bank_A * minute.bus_V, 600.0, 1e-9);

  // The end form, from the state the engine reaches with its own current for the end of the step.
  const double end_A = 47.970741;
  bank::State<double> after = state;
  const auto p = plain.parameters(60.0);
  run(p, after, end_A);
  const auto t = bank::terminal<double>(p, after);
  EXPECT_NEAR(t.instant_V - t.instant_ohm * end_A, 12.507624, 2e-5);
  EXPECT_NEAR((t.instant_V - t.instant_ohm * end_A) * end_A, 600.0, 1e-3);
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
  EXPECT_TRUE(source.solve(0.0, 3700.0, 0.0).collapsed);
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
