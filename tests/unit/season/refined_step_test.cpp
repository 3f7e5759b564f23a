// Steps in which something switches are met to the second; far loads, chargers side by side, heaters on
// surplus.
#include "engine/season/refined_step.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/season/ledger.h"
#include "engine/season/setup.h"
#include "tests/unit/season/sample_system.h"

namespace voltwright::season {
namespace {

class Refined : public ::testing::Test {
 protected:
  Refined() : chemistry_(flat_chemistry()), tables_(cell::make_tables(chemistry_)) {
    installation_.main_cable_ohm = 0.001;
  }
  System<double> system() const {
    return make_system(battery_of(chemistry_, 100.0), chemistry_, tables_, {1, 1, 0.0}, installation_);
  }
  static SystemState<double> at(const System<double>& system, double charge, double temperature_C = 20.0) {
    SystemState<double> s = full_and_rested(system, temperature_C);
    s.bank.charge = charge;
    s.bus_V = bank::terminal<double>(system.bank, s.bank).source_V;
    return s;
  }

  cell::Chemistry chemistry_;
  cell::Tables tables_;
  Installation installation_;
};

// The protection's inverse-time rule: twice the continuous current is borne for the peak time. 3C of 100 Ah
// with a continuous 1C, peak 3C for 10 s: the energy of about 10 s of the minute is delivered, not of all or
// none of it.
TEST_F(Refined, OverCurrentOpensWithinTheMinute) {
  System<double> s = system();
  s.guard.continuous_A = 100.0;
  s.guard.peak_A = 300.0;
  s.guard.peak_s = 10.0;
  SystemState<double> state = at(s, 0.8);
  Minute minute;
  minute.direct_W = 3600.0;
  minute.essential_direct_W = 3600.0;
  const StepReport<double> report = step<double>(s, minute, state);
  EXPECT_GT(report.bank_A * 60.0, 290.0 * 8.0);
  EXPECT_LT(report.bank_A * 60.0, 320.0 * 12.0);
  EXPECT_NEAR(report.unmet_W + report.direct_W, 3600.0, 1e-9);
  EXPECT_GT(report.over_current, 0.75);
}

// The same minute taken whole and taken in steps of a second end alike if nothing switches: no refinement
// then.
TEST_F(Refined, QuietMinutesAreTakenOnce) {
  const System<double> s = system();
  SystemState<double> once = at(s, 0.6);
  SystemState<double> plain = once;
  Minute minute;
  minute.direct_W = 200.0;
  step<double>(s, minute, once);
  plain_step<double>(s, 0, minute, plain);
  EXPECT_EQ(once.bank.charge, plain.bank.charge);
  EXPECT_EQ(once.bus_V, plain.bus_V);
}

// The books close over refined minutes as over plain ones.
TEST_F(Refined, EnergyClosesWhereThingsSwitch) {
  System<double> s = system();
  s.guard.continuous_A = 60.0;
  s.guard.peak_A = 120.0;
  SystemState<double> state = at(s, 0.9);
  Ledger<double> ledger;
  Minute minute;
  minute.direct_W = 1200.0;
  minute.solar_W = 300.0;
  double drawn_W = 0.0;
  for (int i = 0; i < 600; ++i) {
    const StepReport<double> report = step<double>(s, minute, state);
    ledger.add(report, state, 1.0 / 60.0);
    drawn_W += report.bank_A;
  }
  EXPECT_GT(ledger.over_current_h, 1.0);
  EXPECT_NEAR(ledger.in_Wh(), ledger.out_Wh(), 1e-9 * (ledger.charged_Wh + ledger.discharged_Wh));
  EXPECT_NE(drawn_W, 0.0);
}

// 8 A through 0.172 ohm leave a load at 10.8 V where the bus has 12.2 V (5 m each way of 1 mm2): with a
// cut-off of 11 V it drops out within the minute; beside the bus it would run.
TEST_F(Refined, FarLoadDropsOutWhileTheBankIsFine) {
  System<double> s = system();
  s.far_count = 1;
  s.far[0] = {0.172, 11.9, 13.5};
  SystemState<double> state = at(s, 0.5);
  Minute minute;
  minute.far_W[0] = 86.0F;
  minute.essential_far_W[0] = 86.0F;
  const StepReport<double> first = step<double>(s, minute, state);
  EXPECT_EQ(state.far_off[0], 1.0);
  EXPECT_GT(first.bus_V, 12.9);
  EXPECT_GT(first.unmet_essential_W, 80.0);
  EXPECT_LT(first.unmet_essential_W, 86.0) << "it ran for about a second";
  minute.mains = true;
  s.mains_limit_A = 40.0;
  SystemState<double> charged = state;
  for (int i = 0; i < 30; ++i) step<double>(s, minute, charged);
  EXPECT_EQ(charged.far_off[0], 0.0) << "back with the charger on";
}

// Two chargers with voltages of their own: the higher one holds the bus, the lower one falls silent.
TEST_F(Refined, TheLowerChargerFallsSilent) {
  System<double> s = system();
  s.mains_limit_A = 60.0;
  s.engine_limit_A = 60.0;
  s.chargers[kEngine].stages.absorption_V = 13.4;
  s.chargers[kMains].stages.absorption_V = 14.0;
  s.guard.charge_limit_A = 1e3;
  SystemState<double> state = at(s, 0.7);
  Minute minute;
  minute.mains = minute.engine = true;
  double engine_W = 1.0;
  for (int i = 0; i < 240 && engine_W > 0.0; ++i) {
    const StepReport<double> report = step<double>(s, minute, state);
    EXPECT_LE(report.engine_W, 60.0 * report.bus_V + 1e-9);
    EXPECT_LE(report.mains_W, 60.0 * report.bus_V + 1e-9);
    engine_W = report.engine_W;
    if (report.bus_V > 13.41) {
      EXPECT_EQ(engine_W, 0.0);
    }
  }
  EXPECT_EQ(engine_W, 0.0);
}

// A heater on surplus takes what the sun gives beyond the loads and nothing from the bank.
TEST_F(Refined, HeaterOnSurplusSparesTheBank) {
  System<double> s = system();
  s.heater_W = 80.0;
  s.heater_below_C = 5.0;
  s.heater_on_surplus = true;
  SystemState<double> state = at(s, 0.6, -10.0);
  Minute dark;
  dark.surroundings_C = -15.0;
  EXPECT_EQ(step<double>(s, dark, state).heater_W, 0.0);
  Minute sunny = dark;
  sunny.solar_W = 60.0;
  sunny.direct_W = 20.0;
  const double before = state.bank.charge;
  const StepReport<double> report = step<double>(s, sunny, state);
  EXPECT_NEAR(report.heater_W, 60.0 - 22.0, 1e-9);
  EXPECT_GE(state.bank.charge, before - 1e-6);
}

// An alternator behind a relay when the protection opens for charge: what it gave is kept as a load dump.
TEST_F(Refined, LoadDumpWhenProtectionOpensWhileCharging) {
  System<double> s = system();
  s.relay_V = s.relay_low_V = 15.0;
  s.relay_ohm = 0.01;
  s.engine_limit_A = 120.0;
  s.guard.charge_limit_A = 1e3;
  s.guard.over_voltage_V = 14.0;
  SystemState<double> state = at(s, 0.5);
  Minute minute;
  minute.engine = true;
  double dump_A = 0.0;
  double blocked = 0.0;
  for (int i = 0; i < 240 && dump_A <= 0.0; ++i) {
    const StepReport<double> report = step<double>(s, minute, state);
    dump_A = report.load_dump_A;
    blocked = report.charge_blocked;
  }
  EXPECT_GT(dump_A, 20.0);
  EXPECT_GT(blocked, 0.0);
}

// Drawn to the end, the bank shows no voltage: only a source that wakes it brings it back.
TEST_F(Refined, OnlyAWakingSourceStartsOnADeadBank) {
  for (const bool wakes : {false, true}) {
    System<double> s = system();
    s.guard.electronic = 1.0;
    s.mains_limit_A = 20.0;
    s.chargers[kMains].wakes = wakes;
    SystemState<double> state = at(s, 0.003);
    state.guard.dark = state.guard.empty = 1.0;
    Minute minute;
    minute.mains = true;
    double unwoken = 0.0;
    for (int i = 0; i < 60; ++i) unwoken += step<double>(s, minute, state).unwoken;
    EXPECT_EQ(state.bank.charge > 0.1, wakes);
    EXPECT_EQ(unwoken > 50.0, !wakes);
  }
}

}  // namespace
}  // namespace voltwright::season
