// What must hold of the runtime of any battery of the catalogue under any steady load.
#include "engine/advise/runtime.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "engine/base/random.h"
#include "tests/laws/advise/catalogue_bank.h"

namespace voltwright::laws {
namespace {

/// The end of a run is found to a thousandth of a step, of which a run has 3000 or a minute's worth.
constexpr double kSame = 0.002;

std::vector<std::string> batteries() {
  std::vector<std::string> ids;
  for (const bank::Battery& b : catalogue().batteries) ids.push_back(b.id);
  return ids;
}

class EveryBattery : public ::testing::TestWithParam<std::string> {
 protected:
  advise::BankOnHand bank(int in_parallel = 1, double lost = 0.0) const {
    return bank_of(GetParam(), in_parallel, lost);
  }
  double nominal_W() const {
    const bank::Battery& b = *catalogue().battery(GetParam());
    return b.nominal_V * b.capacity_Ah;
  }
  /// A load that empties one in 2 to 30 hours.
  advise::SteadyLoad some_load(base::RandomStream& random) const {
    advise::SteadyLoad load;
    load.power_W = nominal_W() / (2.0 + 28.0 * random.uniform());
    return load;
  }
  static advise::RuntimeConditions some_conditions(base::RandomStream& random) {
    advise::RuntimeConditions c;
    c.temperature_C = -10.0 + 45.0 * random.uniform();
    c.depth = 0.3 + 0.7 * random.uniform();
    return c;
  }
};

TEST_P(EveryBattery, MoreCapacityNeverRunsShorter) {
  base::RandomStream random(11);
  for (int i = 0; i < 4; ++i) {
    const auto load = some_load(random);
    const auto conditions = some_conditions(random);
    const double worn_h = advise::run_down(bank(1, 0.2), load, conditions).hours;
    const double one_h = advise::run_down(bank(1), load, conditions).hours;
    const double two_h = advise::run_down(bank(2), load, conditions).hours;
    EXPECT_LE(worn_h, one_h * (1.0 + kSame));
    EXPECT_LE(one_h, two_h * (1.0 + kSame));
    // Half the current each and less loss: two last at least twice as long, self-discharge set aside.
    EXPECT_GE(two_h, 2.0 * one_h * 0.98);
  }
}

// Up to 25 degC: above it self-discharge and gassing also grow. Cold raises the voltage of some cells by a
// fraction of a percent at small currents.
TEST_P(EveryBattery, ColderNeverRunsLonger) {
  base::RandomStream random(12);
  for (int i = 0; i < 3; ++i) {
    const auto load = some_load(random);
    auto conditions = some_conditions(random);
    double warmer_h = 1e9;
    for (const double temperature_C : {25.0, 10.0, 0.0, -10.0, -25.0, -40.0}) {
      conditions.temperature_C = temperature_C;
      const double hours = advise::run_down(bank(), load, conditions).hours;
      EXPECT_LE(hours, warmer_h * 1.005) << temperature_C << " degC";
      warmer_h = hours;
    }
  }
}

TEST_P(EveryBattery, AHeavierLoadNeverGetsMoreEnergy) {
  base::RandomStream random(13);
  for (int i = 0; i < 3; ++i) {
    auto load = some_load(random);
    const auto conditions = some_conditions(random);
    const auto light = advise::run_down(bank(), load, conditions);
    load.power_W *= 1.5;
    const auto heavy = advise::run_down(bank(), load, conditions);
    EXPECT_LT(heavy.hours, light.hours / 1.5 * 1.03);  // 3 %: self-discharge, and its own warmth in the cold
  }
}

TEST_P(EveryBattery, DeeperNeverRunsShorterAndACutOffNeverLonger) {
  base::RandomStream random(14);
  const auto load = some_load(random);
  advise::RuntimeConditions conditions;
  double before_h = 0.0;
  for (const double depth : {0.2, 0.4, 0.6, 0.8, 1.0}) {
    conditions.depth = depth;
    const double hours = advise::run_down(bank(), load, conditions).hours;
    EXPECT_GE(hours, before_h * (1.0 - kSame)) << depth;
    before_h = hours;
  }
  conditions.cut_off_V = catalogue().battery(GetParam())->nominal_V * 0.97;
  EXPECT_LE(advise::run_down(bank(), load, conditions).hours, before_h * (1.0 + kSame));
}

TEST_P(EveryBattery, TheFiguresOfARunBelongTogether) {
  base::RandomStream random(15);
  const auto load = some_load(random);
  const auto conditions = some_conditions(random);
  const advise::Runtime answer = advise::how_long(bank(), load, conditions);
  const advise::Run& run = answer.run;
  ASSERT_GE(answer.working.size(), 3U);
  EXPECT_DOUBLE_EQ(answer.working.front().hours, answer.naive_h);
  EXPECT_DOUBLE_EQ(answer.working.back().hours, run.hours);
  if (run.hours <= 0.0) return;  // too cold for this one
  EXPECT_NEAR(run.mean_A * run.hours, run.drawn_Ah, 1e-9 * run.drawn_Ah);
  EXPECT_NEAR(run.mean_V * run.drawn_Ah, run.bank_Wh, 1e-9 * run.bank_Wh);
  // Out of the poles comes what the load takes: the laboratory solves the power of each step.
  EXPECT_NEAR(run.bank_Wh, load.power_W * run.hours, 1e-3 * run.bank_Wh);
  EXPECT_GE(run.end_charge, 1.0 - conditions.depth - 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryBattery, ::testing::ValuesIn(batteries()), [](const auto& one) {
  std::string name = one.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

}  // namespace
}  // namespace voltwright::laws
