// Wind, water, the limits of an engine from minute to minute, and the generator set on the bus.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/season/ledger.h"
#include "engine/season/refined_step.h"
#include "engine/season/setup.h"
#include "engine/supply/engine_use.h"
#include "tests/unit/season/sample_system.h"

namespace voltwright::season {
namespace {

class Sources : public ::testing::TestWithParam<bool> {
 protected:
  Sources()
      : chemistry_(GetParam() ? two_tank_chemistry() : flat_chemistry()),
        tables_(cell::make_tables(chemistry_)) {
    installation_.main_cable_ohm = 0.001;
    engine_.output_limit = units::amperes(30.0);
    mains_.output_limit = units::amperes(20.0);
    installation_.engine = &engine_;
    installation_.mains = &mains_;
  }
  System<double> system() const {
    return make_system(battery_of(chemistry_, 100.0), chemistry_, tables_, {1, 1, 0.0}, installation_);
  }
  static SystemState<double> at(const System<double>& system, double charge) {
    SystemState<double> s = full_and_rested(system, 20.0);
    s.bank.charge = charge;
    s.bus_V = bank::terminal<double>(system.bank, s.bank).source_V;
    return s;
  }

  cell::Chemistry chemistry_;
  cell::Tables tables_;
  Installation installation_;
  supply::EngineCharging engine_;
  supply::MainsCharger mains_;
  supply::Generator generator_;
};

void expect_closed(const Ledger<double>& l) {
  const double through_Wh = l.in_Wh() + std::abs(l.drawn_from_store_Wh) + l.charged_Wh + l.discharged_Wh;
  EXPECT_NEAR(l.in_Wh(), l.out_Wh(), 1e-9 * through_Wh);
  EXPECT_LE(l.residual_Wh, 1e-9 * through_Wh);
}

TEST_P(Sources, GiveTheirPowerToABankThatTakesIt) {
  const System<double> s = system();
  SystemState<double> state = at(s, 0.5);
  Minute minute;
  minute.wind_W = 80.0F;
  minute.water_W = 50.0F;
  const StepReport<double> report = step<double>(s, minute, state);
  EXPECT_NEAR(report.wind_W, 80.0, 1e-6);
  EXPECT_NEAR(report.water_W, 50.0, 1e-6);
  EXPECT_LT(report.bank_A, 0.0);
}

// A converter gives the least of its current and the power at its input.
TEST_P(Sources, AConverterKeepsToThePowerThatTheAlternatorLeaves) {
  const System<double> s = system();
  SystemState<double> state = at(s, 0.5);
  Minute minute;
  minute.engine = true;
  minute.engine_most_W = 200.0F;
  EXPECT_NEAR(step<double>(s, minute, state).engine_W, 200.0, 1e-6);
  minute.engine_most_W = 5000.0F;
  const StepReport<double> full = step<double>(s, minute, state);
  EXPECT_NEAR(full.engine_W, 30.0 * full.bus_V, 1e-6 * full.engine_W);
  minute.engine_most_A = 12.0F;
  const StepReport<double> warm = step<double>(s, minute, state);
  EXPECT_NEAR(warm.engine_W, 12.0 * warm.bus_V, 1e-6 * warm.engine_W);
}

TEST_P(Sources, AGeneratorSetStartsLowStopsHighAndIsAskedForBySchedule) {
  generator_.start_below = 0.5;
  generator_.stop_above = 0.8;
  installation_.generator = &generator_;
  const System<double> s = system();
  SystemState<double> state = at(s, 0.6);
  Minute minute;
  minute.generator = GeneratorMinute::kMay;
  EXPECT_EQ(step<double>(s, minute, state).generator_W, 0.0);
  state = at(s, 0.49);
  int run_min = 0;
  Ledger<double> ledger;
  for (int i = 0; i < 600; ++i) {
    const StepReport<double> report = step<double>(s, minute, state);
    ledger.add(report, state, 1.0 / 60.0);
    if (report.generator_on < 0.5) break;
    // At most its charger's 20 A.
    EXPECT_LE(report.generator_W, 20.0 * report.bus_V + 1e-6);
    ++run_min;
  }
  EXPECT_GE(state.bank.charge, 0.8 - 1e-3);
  // From 0.49 to 0.8 at 20 A: 31 Ah, 93 minutes and what the side reactions take.
  EXPECT_NEAR(run_min, 95.0, 6.0);
  EXPECT_NEAR(ledger.generator_h, run_min / 60.0, 1e-6);
  expect_closed(ledger);
  minute.generator = GeneratorMinute::kScheduled;
  EXPECT_EQ(step<double>(s, minute, state).generator_on, 0.0);  // not before 0.75
  state = at(s, 0.7);
  EXPECT_EQ(step<double>(s, minute, state).generator_on, 1.0);
  minute.generator = GeneratorMinute::kOff;
  EXPECT_EQ(step<double>(s, minute, state).generator_on, 0.0);
}

// Whatever comes and goes, the ledger closes to 1e-9.
TEST_P(Sources, CloseTheLedgerTogether) {
  generator_.rated_W = 250.0;
  generator_.start_below = 0.4;
  installation_.generator = &generator_;
  for (const bool relay : {false, true}) {
    engine_.coupling = relay ? supply::EngineCoupling::kRelay : supply::EngineCoupling::kDcDc;
    const System<double> s = system();
    SystemState<double> state = at(s, 0.45);
    Ledger<double> ledger;
    for (int i = 0; i < 4 * 1440; ++i) {
      Minute m;
      const int day_min = i % 1440;
      m.direct_W = day_min > 1000 ? 160.0 : 30.0;
      m.essential_direct_W = m.direct_W;
      m.wind_W = i % 700 < 120 ? 90.0F : 0.0F;
      m.water_W = i % 900 < 200 ? 60.0F : 0.0F;
      m.engine = day_min >= 500 && day_min < 560;
      m.engine_V = static_cast<float>(13.0 + 0.3 * (i % 5));
      m.engine_most_A = static_cast<float>(10.0 + i % 30);
      m.engine_most_W = static_cast<float>(100 + 10 * (i % 40));
      m.mains = day_min < 30;
      if (!m.mains && day_min >= 480) m.generator = GeneratorMinute::kMay;
      const StepReport<double> report = step<double>(s, m, state);
      ledger.add(report, state, 1.0 / 60.0);
      if (m.mains) {
        EXPECT_EQ(report.generator_W, 0.0) << i;
      }
    }
    expect_closed(ledger);
    for (const double Wh :
         {ledger.wind_Wh, ledger.water_Wh, ledger.engine_Wh, ledger.mains_Wh, ledger.generator_Wh}) {
      EXPECT_GT(Wh, 0.0);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Both, Sources, ::testing::Bool());

// Idling, a machine of 60 A turns 2000 1/min: 60 A (1 - exp(-1020 / 790)) = 43.5 A in air of 25 degC, and the
// vehicle takes 25 A of it; docs/method/engine_side.md.
TEST(EngineMinutes, LeaveWhatTheVehicleDoesNotTake) {
  supply::EngineCharging engine;
  engine.output_limit = units::amperes(30.0);
  engine.alternator.emplace();
  engine.alternator->machine.rated_A = 60.0;
  engine.alternator->idle_share = 1.0;
  engine.alternator->air_rise_K = 0.0;
  const double left_A = 60.0 * (1.0 - std::exp(-1020.0 / 790.0)) - 25.0;
  const supply::EngineMinute minute = supply::engine_minute(engine, {0, 25.0, 25.0}, 14.4);
  const double held_V = 14.4 - 0.010 * 5.0;
  EXPECT_NEAR(minute.alternator_V, held_V, 1e-12);
  EXPECT_NEAR(minute.most_W, 0.88 * (held_V - 0.015 * left_A) * left_A, 1e-9);
}

// A lead of 79 mohm behind 13.6 V: 20 A at 14.2 V and 90 % take 27.6 A; a fuse of 20 A opens (1.38 times),
// one of 25 A may, one of 30 A holds (ISO 8820-3, from memory).
TEST(EngineMinutes, OpenTheFuseOfATowingPlug) {
  supply::EngineCharging engine;
  engine.efficiency = 0.9;
  engine.loop_resistance = units::ohms(0.0);
  engine.plug.emplace();
  engine.plug->loop_ohm = 0.079;
  for (const auto& [fuse_A, runs] : {std::pair{20.0, false}, std::pair{25.0, true}, std::pair{30.0, true}}) {
    engine.plug->fuse_A = fuse_A;
    EXPECT_EQ(supply::converter_runs(engine, 13.6, 20.0 * 14.2), runs) << fuse_A;
  }
}

}  // namespace
}  // namespace voltwright::season
