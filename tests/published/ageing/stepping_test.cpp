// Equivalent-time stepping against worked examples computed apart from the program, and against the wrong
// ways.
#include <cmath>

#include "engine/ageing/naumann_storage.h"
#include "engine/ageing/stress.h"
#include "tests/published/ageing/catalogue_laws.h"

namespace voltwright::published {
namespace {

ageing::Exposure rest(double temperature_C, double soc, double days) {
  ageing::Exposure exposure;
  exposure.hours = days * 24.0;
  exposure.dwell = {{temperature_C, soc, exposure.hours}};
  return exposure;
}

double after(const char* id, const std::vector<ageing::Exposure>& exposures) {
  ageing::Aged aged;
  for (const ageing::Exposure& exposure : exposures) law(id).age(aged, exposure, 1.0);
  return aged.calendar_loss;
}

// Naumann storage, 182.5 days at 25 degC and 50 %, then 182.5 at 40 degC and 100 %: 0.073144 in either order.
// Sums of closed forms (0.096744), a shift of time (0.057683) and a mean rate (0.068408) are wrong.
TEST(Stepping, HalfAYearColdAndHalfAYearHot) {
  const auto cool = rest(25, 0.5, 182.5);
  const auto hot = rest(40, 1.0, 182.5);
  EXPECT_NEAR(after("lfp-naumann", {cool}), 0.030063, 5e-7);
  EXPECT_NEAR(after("lfp-naumann", {cool, hot}), 0.073144, 5e-7);
  EXPECT_NEAR(after("lfp-naumann", {hot, cool}), after("lfp-naumann", {cool, hot}), 1e-15);
  EXPECT_NEAR(after("lfp-naumann", {cool}) + after("lfp-naumann", {hot}), 0.096744, 1e-6);
}

// Schmalstieg storage, time to the power 0.75: 180 days at 25 degC, then 185 at 35 degC, rest voltage 3.697
// V.
TEST(Stepping, PowerOfThreeQuarters) {
  EXPECT_NEAR(after("nmc-schmalstieg", {rest(25, 0.5, 180)}), 0.014016, 5e-7);
  EXPECT_NEAR(after("nmc-schmalstieg", {rest(25, 0.5, 180), rest(35, 0.5, 185)}), 0.0383627, 5e-8);
}

// An explicit step of the differential form of the same example (dQ/dt = z k^(1/z) Q^(1-1/z)) from Q = 1e-12
// with steps of five days gives 0.7148, nineteen times too much: why it is not done.
TEST(Stepping, ExplicitStepsGoWrong) {
  const double exact = after("nmc-schmalstieg", {rest(25, 0.5, 180), rest(35, 0.5, 185)});
  const double per_power_25 = 0.02382 / std::pow(365.0, 0.75);
  const double per_power_35 = 0.05089 / std::pow(365.0, 0.75);
  double loss = 1e-12;
  for (int day = 0; day < 365; day += 5) {
    const double k = day < 180 ? per_power_25 : per_power_35;
    loss += 5.0 * 0.75 * std::pow(k, 1.0 / 0.75) * std::pow(loss, 1.0 - 1.0 / 0.75);
  }
  EXPECT_NEAR(loss, 0.7148, 1e-3);
  EXPECT_NEAR(loss / exact, 19.0, 0.5);
}

// A root of time taken as a rate (the first day's loss times the days) gives a published study 67 % where 4.1
// % were measured; by the published law, three years at 25 degC and half charge are 7.4 %, and this mistake
// makes 244 %.
TEST(Stepping, ARootIsNoRate) {
  const double days = 3 * kYear_days;
  EXPECT_NEAR(rest_loss("lfp-naumann", 25, 0.5, days), 0.074, 5e-4);
  EXPECT_NEAR(rest_loss("lfp-naumann", 25, 0.5, 1.0) * days, 2.44, 5e-3);
}

// For one mechanism loss = k(D) N^z Miner's sum is (loss / allowance)^(1/z): 1000 cycles of 80 % and 5000 of
// 20 % (800 and 1000 full cycles), C/2, lose 5.3152 % of 20 %, a Miner sum of 0.07063.
TEST(Stepping, MinersSum) {
  ageing::Aged aged;
  double miner = 0.0;
  for (const auto& [depth, cycles] : {std::pair{0.8, 1000.0}, std::pair{0.2, 5000.0}}) {
    ageing::Exposure cycle;
    cycle.swings = {{depth, 0.5, 1.0, 0.5, 0.5, 25.0}};
    law("lfp-naumann").age(aged, cycle, cycles);
    miner += cycles / ageing::repetitions_until(law("lfp-naumann"), cycle, 0.8, 1e9);
  }
  EXPECT_NEAR(100.0 * aged.cycle_loss, 5.3152, 5e-5);
  EXPECT_NEAR(miner, 0.07063, 5e-6);
  EXPECT_NEAR(miner, std::pow(aged.cycle_loss / 0.2, 2.0), 1e-10);
}

}  // namespace
}  // namespace voltwright::published
