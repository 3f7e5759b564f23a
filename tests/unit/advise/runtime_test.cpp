// Runtimes of a bank without any loss, where every figure can be written down beforehand.
#include "engine/advise/runtime.h"

#include <gtest/gtest.h>

#include "engine/advise/change.h"

namespace voltwright::advise {
namespace {

constexpr double kCell_V = 3.2;

/// Always 3.2 V, no resistance, all of it at any rate and temperature.
cell::Chemistry ideal_chemistry() {
  cell::Chemistry chemistry;
  chemistry.id = "ideal";
  chemistry.plain_name = "ideal";
  chemistry.nominal_V = kCell_V;
  chemistry.ocv_V = {{0.0, kCell_V}, {1.0, kCell_V}};
  chemistry.self_discharge_per_month = 0.0;
  chemistry.limits.discharge_min_C = -20.0;
  chemistry.stages.absorption_V = 3.5;
  return chemistry;
}

/// 12.8 V, 100 Ah, 1280 Wh; 100 A for long, 200 A for 10 s.
bank::Battery ideal_battery() {
  bank::Battery battery;
  battery.id = "ideal";
  battery.chemistry = "ideal";
  battery.mass_kg = {12.0, 12.0, 12.0};
  battery.volume_L = {10.0, 10.0, 10.0};
  battery.price = {200.0, 200.0, 200.0};
  return battery;
}

class IdealBank : public ::testing::Test {
 protected:
  BankOnHand bank() const { return {&battery_, &chemistry_, {}}; }
  static SteadyLoad watts(double power_W) {
    SteadyLoad load;
    load.power_W = power_W;
    return load;
  }
  cell::Chemistry chemistry_ = ideal_chemistry();
  bank::Battery battery_ = ideal_battery();
  RuntimeConditions conditions_;
};

TEST_F(IdealBank, GivesItsEnergyOverThePower) {
  const auto run = run_down(bank(), watts(64.0), conditions_);
  EXPECT_NEAR(run.hours, 20.0, 20.0 / 1000.0);  // the end is found to a step
  EXPECT_NEAR(run.bank_Wh, 1280.0, 1.3);
  EXPECT_NEAR(run.mean_V, 12.8, 1e-9);
  EXPECT_NEAR(run.mean_A, 5.0, 1e-9);
  EXPECT_EQ(run.ending, Ending::kEmpty);
}

TEST_F(IdealBank, EndsExactlyAtTheDepthRule) {
  conditions_.depth = 0.8;
  const auto run = run_down(bank(), watts(64.0), conditions_);
  EXPECT_NEAR(run.hours, 16.0, 1e-6);
  EXPECT_NEAR(run.end_charge, 0.2, 1e-9);
  EXPECT_EQ(run.ending, Ending::kDepth);
  conditions_.start_charge = 0.5;
  EXPECT_NEAR(run_down(bank(), watts(64.0), conditions_).hours, 6.0, 1e-6);
}

TEST_F(IdealBank, StandsStillBelowItsDepthRule) {
  conditions_.depth = 0.5;
  conditions_.start_charge = 0.4;
  const auto run = run_down(bank(), watts(64.0), conditions_);
  EXPECT_DOUBLE_EQ(run.hours, 0.0);
  EXPECT_EQ(run.ending, Ending::kDepth);
}

TEST_F(IdealBank, AnInverterTakesItsShare) {
  SteadyLoad load = watts(45.0);
  load.efficiency = 0.9;
  load.idle_W = 14.0;
  EXPECT_DOUBLE_EQ(bank_power_W(load, 12.8), 64.0);
  conditions_.depth = 0.8;
  const auto run = run_down(bank(), load, conditions_);
  EXPECT_NEAR(run.hours, 16.0, 1e-6);
  EXPECT_NEAR(run.load_Wh, 16.0 * 45.0, 1e-3);
  EXPECT_NEAR(run.bank_Wh, 16.0 * 64.0, 1e-3);
}

// 150 A: (1.5^2 - 1) / (2^2 - 1) = 0.4167 of the heating of the peak, which opens after 10 s: 24 s.
TEST_F(IdealBank, OpensForTooMuchCurrent) {
  const auto run = run_down(bank(), watts(150.0 * 12.8), conditions_);
  EXPECT_EQ(run.ending, Ending::kOverCurrent);
  EXPECT_NEAR(run.hours * 3600.0, 24.0, 1e-6);
  battery_.has_protection = false;
  EXPECT_GT(run_down(bank(), watts(150.0 * 12.8), conditions_).hours, 0.6);
}

TEST_F(IdealBank, CutOffsEndItAndAreToldApart) {
  conditions_.cut_off_V = 13.0;
  EXPECT_EQ(run_down(bank(), watts(64.0), conditions_).ending, Ending::kLoadCutOff);
  conditions_.cut_off_V = 11.0;
  battery_.under_voltage_V = 13.0;
  EXPECT_EQ(run_down(bank(), watts(64.0), conditions_).ending, Ending::kUnderVoltage);
}

TEST_F(IdealBank, DoesNotStartOutsideItsTemperatures) {
  conditions_.temperature_C = -21.0;
  const auto run = run_down(bank(), watts(64.0), conditions_);
  EXPECT_DOUBLE_EQ(run.hours, 0.0);
  EXPECT_EQ(run.ending, Ending::kTooCold);
  conditions_.temperature_C = 61.0;
  EXPECT_EQ(run_down(bank(), watts(64.0), conditions_).ending, Ending::kTooHot);
  EXPECT_DOUBLE_EQ(run_down(bank(), watts(64.0), conditions_).hours, 0.0);
}

TEST_F(IdealBank, AYearIsTheLongest) {
  const auto run = run_down(bank(), watts(0.01), conditions_);
  EXPECT_EQ(run.ending, Ending::kStillRunning);
  EXPECT_NEAR(run.hours, kLongestRun_h, 0.02);
}

TEST_F(IdealBank, TheWorkingTellsOneCauseALine) {
  conditions_.depth = 0.8;
  conditions_.temperature_C = 5.0;
  SteadyLoad load = watts(57.6);
  load.efficiency = 0.9;
  BankOnHand worn = bank();
  worn.layout.lost_capacity = 0.25;
  const Runtime answer = how_long(worn, load, conditions_);
  ASSERT_EQ(answer.working.size(), 6U);
  EXPECT_NEAR(answer.working[0].hours, 1280.0 / 57.6, 1e-9);  // in the head
  EXPECT_NEAR(answer.working[1].hours, 20.0, 1e-9);           // inverter
  EXPECT_NEAR(answer.working[2].hours, 15.0, 1e-9);           // age
  EXPECT_NEAR(answer.working[3].hours, 12.0, 1e-9);           // depth rule
  EXPECT_NEAR(answer.working[4].hours, 12.0, 1e-6);           // nothing is lost at this rate
  EXPECT_NEAR(answer.working[5].hours, 12.0, 1e-6);           // nor in this cold
}

// Mass 12 kg and usable 0.8 x 1280 Wh = 1024 Wh; cycles 1000 x (0.8 / 0.5)^1 at half depth.
TEST_F(IdealBank, IsComparedByWhatItGives) {
  chemistry_.life = {{500.0, 1000.0, 2000.0}, 0.8, 1.0, {5.0, 10.0, 15.0}, 10.0};
  SwapQuestion question;
  question.incumbent = bank();
  question.load = watts(64.0);
  const Compared usual = compare(question, question.incumbent, {});
  EXPECT_NEAR(value_of(usual, Measure::kUsableEnergy), 1024.0, 1e-3);
  EXPECT_NEAR(value_of(usual, Measure::kLifeEnergy), 1024.0, 1e-3);  // kWh: 1000 cycles
  EXPECT_DOUBLE_EQ(value_of(usual, Measure::kMass), 12.0);
  EXPECT_DOUBLE_EQ(value_of(usual, Measure::kVolume), 10.0);
  EXPECT_DOUBLE_EQ(value_of(usual, Measure::kPrice), 200.0);
  EXPECT_DOUBLE_EQ(value_of(usual, Measure::kStartingCurrent), 200.0);
  const Compared half = compare(question, question.incumbent, 0.5);
  EXPECT_NEAR(half.cycles.typical, 1600.0, 1e-6);
  BankOnHand worn = bank();
  worn.layout.lost_capacity = 0.1;  // half of what it may lose
  EXPECT_NEAR(compare(question, worn, 0.5).cycles.typical, 800.0, 1e-6);
}

// An exchange of like for like, once with a load that the new bank does not carry.
TEST_F(IdealBank, AChangeToItselfAsksForNoChargerButSpeaksOfTheLoad) {
  SwapQuestion question;
  question.incumbent = bank();
  question.load = watts(64.0);
  const auto speaks_of = [&](Topic topic) {
    const Compared now = compare(question, question.incumbent, {});
    int count = 0;
    for (const Change& change : changes_between(question, now, now)) {
      if (change.topic == topic) ++count;
    }
    return count;
  };
  EXPECT_EQ(speaks_of(Topic::kCharger), 0);
  EXPECT_EQ(speaks_of(Topic::kAlternator), 0);
  EXPECT_EQ(speaks_of(Topic::kColdCharging), 0);
  EXPECT_EQ(speaks_of(Topic::kGas), 0);
  EXPECT_EQ(speaks_of(Topic::kCurrent), 0);
  question.load = watts(110.0 * 12.8);
  EXPECT_EQ(speaks_of(Topic::kCurrent), 1);
}

}  // namespace
}  // namespace voltwright::advise
