// How long a bank runs what it feeds: practitioners' cases, no standard. Their sums are kept in ampere-hours
// at a nominal voltage; here loads are constant powers at the true voltage, so each band says what it allows
// for.
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr std::size_t kDay = 1440;

// A hard-wired device that nobody thinks of draws 1.5 A round the clock.
// 1.5 A x 24 h = 36 Ah a day; half of a 100 Ah lead-acid battery is 50 Ah, 50 / 1.5 = 33 h.
// Power: 1.5 A at 12.4 V, the mean between full and half full = 18.6 W.
TEST(StandingLoad, EmptiesALeadAcidBatteryToHalfInADayAndAHalf) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Forgotten inverter"
power = "18.6 W"
always = true
)" + winter_stay(3));
  const Told told = plan.tell("flooded-12v-100ah");
  EXPECT_NEAR(drawn_Ah(told.trace, 0, kDay), 36.0, 0.04 * 36.0);  // the voltage moves by 4 % over the day
  EXPECT_NEAR(hours_until_loads_off(told), 33.3, 0.06 * 33.3);    // self-discharge and voltage
}

// One lead-acid battery, six days without sun or mains. Their battery of 110 Ah: 55 Ah / 6 days = 9.2 Ah a
// day = 0.38 A. The same for 100 Ah: 50 Ah / 144 h = 0.347 A. The catalogue's battery loses 1.5 Ah in that
// time by itself (5 % a month and the gassing of a full battery), which leaves 48.5 Ah = 0.337 A x 12.35 V
// = 4.16 W. A laptop of 45 W for 3 h adds 135 Wh / 12.35 V = 11 Ah a day.
std::string six_dull_days(const std::string& standing_power) {
  return warm_cabin() + "\n[[load]]\nname = \"Everything\"\nalways = true\npower = \"" + standing_power +
         "\"\n";
}
constexpr const char* kLaptop = R"(
[[load]]
name = "Laptop"
power = "45 W"
hours = "3 h/day"
from = "19:00"
)";

TEST(SixDaysWithoutSun, AThirdOfAnAmpereJustHolds) {
  const Told told = Practice(six_dull_days("4.15 W") + winter_stay(6)).tell("flooded-12v-100ah");
  EXPECT_FALSE(told.fared.ran_short());
  EXPECT_NEAR(told.fared.lowest_charge, 0.5, 0.01);  // just holds, with nothing to spare
}

TEST(SixDaysWithoutSun, ALaptopBesidesDoesNot) {
  const Told told = Practice(six_dull_days("4.15 W") + kLaptop + winter_stay(6)).tell("flooded-12v-100ah");
  EXPECT_TRUE(told.fared.ran_short());
  // 50 Ah / (8.2 + 11 Ah a day) = 2.6 days: the third evening's work is the last, or not quite finished.
  const double days = hours_until_loads_off(told) / 24.0;
  EXPECT_GT(days, 1.9);
  EXPECT_LT(days, 3.0);
}

// A day's list under sail comes to 325 Ah, at anchor to 211 Ah (3.9 to 4.2 and 2.5 to 2.7 kWh). An
// iron-phosphate bank used to 80 % must have 325 / 0.8 = 406 Ah and 211 / 0.8 = 264 Ah.
// Powers at 12.8 V: 325 x 12.8 / 24 = 173.3 W and 211 x 12.8 / 24 = 112.5 W.
std::string boat_day(const std::string& power) {
  return warm_cabin() + "\n[[load]]\nname = \"All of the list\"\nalways = true\npower = \"" + power + "\"\n" +
         winter_stay(3);
}

TEST(BoatList, UnderSailFourHundredAmpereHoursLastADay) {
  const Told told = Practice(boat_day("173.3 W")).tell("lfp-12v-100ah", 4);
  // True voltage 13.1 V: 2 % fewer ampere-hours than at 12.8 V.
  EXPECT_NEAR(drawn_Ah(told.trace, 0, kDay - 60), 325.0 * 23.0 / 24.0, 0.04 * 325.0);
  EXPECT_NEAR(hours_until_loads_off(told), 24.0 * 400.0 / 406.0, 0.05 * 24.0);
}

TEST(BoatList, AtAnchorThreeHundredHoldADayAndTwoHundredDoNot) {
  const Practice plan(boat_day("112.5 W"));
  EXPECT_NEAR(hours_until_loads_off(plan.tell("lfp-12v-100ah", 3)), 24.0 * 300.0 / 264.0, 0.05 * 27.3);
  EXPECT_LT(hours_until_loads_off(plan.tell("lfp-12v-100ah", 2)), 20.0);
}

// A cabin uses 9 kWh a day behind an inverter; two days without sun on half of a lead-acid bank with 15 %
// lost: 9 x 2 / 0.5 x 1.15 = 41.4 kWh, at 48 V 862 Ah. Inverter losses here: idle 25 W, (3 % u + 6 % u^2) x
// 3000 W at 375 W out, u = 0.125: 39 W or 10 %.
TEST(OffGridHouse, TwoDaysNeedFortyKilowattHoursOfLeadAcid) {
  const Practice plan(warm_cabin("system_voltage = \"48 V\"\n") + R"(
[inverter]
rated = "3 kW"
idle = "25 W"

[[load]]
name = "House"
power = "375 W"
feed = "inverter"
always = true
)" + winter_stay(4));
  // 900 Ah x 48 V = 43.2 kWh, half of it over 375 x 1.10 W = 52 h; at such a slow rate and 49 V about 2 %
  // more.
  const double nine_h = hours_until_loads_off(plan.tell("flooded-12v-100ah", 9));
  EXPECT_GT(nine_h, 48.0);
  EXPECT_NEAR(nine_h, 52.4, 0.07 * 52.4);
  EXPECT_LT(hours_until_loads_off(plan.tell("flooded-12v-100ah", 8)), 48.0);
}

// Refrigerator 40 Ah, lamps 10 Ah, heater fan 12 Ah and pump 1 Ah a day at 12 V make 63 Ah or 756 Wh. One
// 100 Ah lead-acid battery to half is 50 / 63 = 0.8 day, 100 Ah of iron-phosphate to 90 % are 1.4 days; to
// the 80 % planned with here, 0.8 x 100 Ah x 13.1 V / 756 Wh = 1.39 days, as its voltage is 9 % above 12 V.
TEST(CampingDayBudget, IsTheSumOfTheListAndLastsAsLong) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Refrigerator"
power = "20 W"
always = true

[[load]]
name = "Lamps"
power = "20 W"
hours = "6 h/day"
from = "17:00"

[[load]]
name = "Heater fan"
power = "18 W"
window = "22:00-06:00"

[[load]]
name = "Pump"
power = "60 W"
events = "12 /day"
each = "1 min"
)" + winter_stay(3));
  const Told iron = plan.tell("lfp-12v-100ah");
  double load_Wh = 0.0;
  for (std::size_t i = 0; i < kDay; ++i) load_Wh += static_cast<double>(iron.trace.load_W[i]) / 60.0;
  EXPECT_NEAR(load_Wh, 756.0, 4.0);  // pump runs that straddle midnight
  // Most of a day's use falls in the evening and night, so the end is good to a tenth of a day.
  EXPECT_NEAR(hours_until_loads_off(iron) / 24.0, 1.39, 0.1);
  EXPECT_NEAR(hours_until_loads_off(plan.tell("flooded-12v-100ah")) / 24.0, 0.8, 0.1);
}

// A roof air conditioner draws 13 A at 120 V = 1560 W; at 90 % 1733 W come from 300 Ah of iron-phosphate:
// 300 x 12.8 / 1733 = 2.2 h, to nine tenths of it 2.0 h. Owners say 2.1 h. Loss set to 10 %: u = 0.52,
// 46 + (0.05 u + 0.06 u^2) x 3000 W = 173 W.
TEST(AirConditioner, RunsTwoHoursOnThreeHundredAmpereHours) {
  const Practice plan(warm_cabin("depth_rule = \"protection\"\n") + R"(
[inverter]
rated = "3 kW"
surge = "6 kW"
idle = "46 W"
linear_loss = "5 %"
quadratic_loss = "6 %"

[[load]]
name = "Air conditioner"
power = "1560 W"
feed = "inverter"
always = true
)" + winter_stay(1));
  const double hours = hours_until_loads_off(plan.tell("lfp-12v-300ah"));
  EXPECT_GT(hours, 2.0);
  EXPECT_LT(hours, 2.35);  // 13.0 V under load in place of 12.8 V, and all of it used
}

// Satellite internet: 75 W for 24 h through a 90 % inverter: 75 x 24 / 0.9 / 12.8 = 156 Ah a day; 100 Ah of
// iron-phosphate to the last drop 15 h. Loss at u = 0.25 of 300 W: 5 + 2.25 + 1.1 = 8.35 W, 90 %.
TEST(SatelliteInternet, TakesAHundredAndFiftyAmpereHoursADay) {
  const Practice plan(warm_cabin("depth_rule = \"protection\"\n") + R"(
[inverter]
rated = "300 W"
idle = "5 W"

[[load]]
name = "Dish"
power = "75 W"
feed = "inverter"
always = true
)" + winter_stay(1));
  // At the true 13.1 V the day is 153 Ah.
  EXPECT_NEAR(drawn_Ah(plan.tell("lfp-12v-100ah", 2).trace, 0, kDay), 156.0, 0.04 * 156.0);
  EXPECT_NEAR(hours_until_loads_off(plan.tell("lfp-12v-100ah")), 15.4, 0.06 * 15.4);
}

// A 60 W compressor at 25 to 40 % duty takes 1.3 to 2 A: half of 100 Ah lead-acid lasts 25 to 40 h, not the
// 20 h that "one ampere an hour" is made into, nor the 10 h of a compressor that never stops.
// Duty: heat leak x 21 K / 1.5 = 15 W and 24 W for 1.071 and 1.714 W/K in a cabin at 25 degC.
double fridge_hours(const std::string& heat_leak) {
  const Practice plan(
      warm_cabin() +
      "\n[[load]]\nname = \"Refrigerator\"\npower = \"60 W\"\ncooling = { inside = \"4 degC\", "
      "heat_leak = \"" +
      heat_leak + "\", cop = 1.5 }\n" + winter_stay(3));
  return hours_until_loads_off(plan.tell("flooded-12v-100ah"));
}

TEST(CompressorFridge, RunsOneToOneAndTwoThirdsDaysToHalf) {
  // 50 Ah x 12.35 V = 617 Wh; / 15 W = 41 h, / 24 W = 25.7 h. A run of 12 min or more moves the end by as
  // much.
  EXPECT_NEAR(fridge_hours("1.071 W/K"), 41.0, 2.5);
  EXPECT_NEAR(fridge_hours("1.714 W/K"), 25.7, 1.5);
}

}  // namespace
}  // namespace voltwright::whole
