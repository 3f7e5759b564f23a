// What a bank holds, and what partial charge and heat make of it: practitioners' cases, no standard.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "engine/ageing/life.h"
#include "engine/bank/group.h"
#include "engine/bank/laboratory.h"
#include "engine/cell/tables.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

// Eight iron-phosphate cells of 280 Ah; the supplier's sheet says 288.5 to 292.0, 290.6 on average. The
// owner's own test, 25 A down to 2.5 V in a cooler room, gave these.
constexpr std::array<double, 8> kMeasured_Ah = {278.5, 284.0, 282.0, 275.7, 278.7, 281.8, 282.5, 283.5};
constexpr double kSheet_Ah = 290.6;
constexpr double kRated_Ah = 280.0;

/// What one such cell gives at 25 A in a room: until it has no more to give at its temperature, or to 2.5 V.
double given_Ah(double room_C) {
  const bank::Battery& pack = *catalogue().battery("lfp-12v-300ah");
  const cell::Chemistry& chemistry = *catalogue().chemistry("lfp");
  const cell::Tables tables = cell::make_tables(chemistry);
  bank::Battery cell = pack;
  cell.cells_in_series = 1;
  cell.capacity_Ah = kRated_Ah;
  cell.extra_resistance_ohm = 0.0;
  cell.mass_kg.typical = pack.mass_kg.typical / 4.0;
  const double loss_W_K = bank::free_standing_loss_W_K(pack.volume_L.typical / 4.0);
  const auto p = bank::assemble(cell, chemistry, tables, {}, 0.0, loss_W_K, 10.0);
  bank::State<double> state;
  state.temperature_C = room_C;
  constexpr double kCurrent_A = 25.0;
  const auto current = [](const bank::Terminal<double>& t, double) {
    return t.available > t.usable_floor ? kCurrent_A : std::numeric_limits<double>::quiet_NaN();
  };
  return bank::run_current(p, state, current, 2.5, 10.0, room_C, 20.0 * 3600.0).drawn_Ah();
}

TEST(CapacityTest, AFewKelvinExplainWhatIsMissing) {
  const double mean_Ah = std::accumulate(kMeasured_Ah.begin(), kMeasured_Ah.end(), 0.0) / 8.0;
  EXPECT_NEAR(mean_Ah, 280.84, 0.005);
  EXPECT_NEAR(mean_Ah / kSheet_Ah, 0.966, 5e-4);
  EXPECT_NEAR(mean_Ah / 280.0, 1.003, 5e-4);
  EXPECT_EQ(std::count_if(kMeasured_Ah.begin(), kMeasured_Ah.end(), [](double Ah) { return Ah < 280.0; }), 3);
  // The record gives 1.037 of the rating at C/20 and 25 degC, as its measured cell of 2 Ah did. The
  // supplier's 290.6 Ah of cells of 280 Ah say 1.038.
  const double at_supplier_Ah = given_Ah(25.0);
  EXPECT_NEAR(at_supplier_Ah, kSheet_Ah, 0.015 * kSheet_Ah);
  // The record falls from 1 at 25 degC to 0.82 at 0 degC, 0.72 % for each kelvin of the cell. Towards the end
  // the cell warms itself by some kelvin, which gives a part back: 25 A x 290 K x 0.49 mV/K = 3.5 W of heat
  // of reaction and (25 A)^2 x 9 mohm = 6 W of polarisation, over 1.9 W/K. So 10 K cost not 7 % but 3 to 6 %,
  // and 5 K the less.
  const double by_five = 1.0 - given_Ah(20.0) / at_supplier_Ah;
  const double by_ten = 1.0 - given_Ah(15.0) / at_supplier_Ah;
  EXPECT_GT(by_ten, 0.03);
  EXPECT_LT(by_ten, 0.06);
  EXPECT_GT(by_five, 0.0);
  EXPECT_LT(by_five, 0.5 * by_ten);
  EXPECT_GT(mean_Ah, given_Ah(16.0));
  EXPECT_LT(mean_Ah, given_Ah(20.0));
}

// A household afloat: 12 traction batteries of 6 V, six strings of two, 1350 Ah. 400 to 600 Ah a day, mostly
// four refrigeration units, charged in the morning and in the evening between half and four fifths, in an
// engine room at 35 degC at anchor and 43 degC under way. 250 W / 12.3 V x 24 h = 488 Ah a day; twice 1.6 h
// at 150 A are 480 Ah.
Told household_afloat(double engine_room_C) {
  Practice plan(warm_cabin() + R"(
[mains]
output_limit = "150 A"

[engine]
output_limit = "150 A"

[[load]]
name = "Refrigeration and the rest"
power = "250 W"
always = true
)" + winter_stay(14, R"(shore = "06:00-07:36"
drive = "1.6 h/day"
drive_from = "18:00"
)"));
  plan.plan().surroundings.cabin_heated_to = units::celsius(engine_room_C);
  return plan.tell("flooded-6v-225ah", 6);
}

TEST(HouseholdAfloat, IsNeverFullAgain) {
  const Told told = household_afloat(35.0);
  const double load_Ah = told.fared.ledger.direct_Wh / 12.3 / 14.0;
  EXPECT_GT(load_Ah, 400.0);
  EXPECT_LT(load_Ah, 600.0);
  // Full when it sails, and never again: charging ends with the hour, not with the tail current.
  EXPECT_GT(told.fared.daily_high.at(0), 0.99F);
  for (std::size_t day = 1; day < 14; ++day) EXPECT_LT(told.fared.daily_high.at(day), 0.95F) << day;
  for (std::size_t day = 7; day < 14; ++day) {
    EXPECT_LT(told.fared.daily_high.at(day), 0.80F) << day;
    EXPECT_GT(told.fared.daily_low.at(day), 0.49F) << day;
  }
}

// Lead-acid in 43 degC ages about four times as fast as at 25 degC: twice for each 8 to 10 K, 2^(18/10) = 3.5
// to 2^(18/8) = 4.8; this record 10 K.
TEST(HouseholdAfloat, WearsFourTimesAsFastInTheHeat) {
  const cell::LifeFigures& life = catalogue().chemistry("flooded")->life;
  const double warm = ageing::calendar_share(life, household_afloat(43.0).fared.exposure.dwell);
  const double cool = ageing::calendar_share(life, household_afloat(25.0).fared.exposure.dwell);
  EXPECT_GT(warm / cool, 3.3);
  EXPECT_LT(warm / cool, 4.8);
}

// 500 Ah of lead-acid lived in full-time lost a third in two years, as the charger gave up absorption early;
// it should have held on until the current falls to 1 to 2 % of capacity. Here 90 W through six hours take 44
// Ah of 100 Ah every night, and shore power is there for five and a half hours.
Told short_mornings(const std::string& absorption) {
  return Practice(warm_cabin() + R"(
[mains]
output_limit = "20 A"

[[load]]
name = "Night"
power = "90 W"
window = "00:00-06:00"

[chargers.mains]
profile = "flooded"
)" + absorption + winter_stay(10, "shore = \"08:00-13:30\"\n"))
      .tell("flooded-12v-100ah");
}

TEST(EarlyEndOfAbsorption, LeavesTheBankBelowNineteenTwentiethsDayAfterDay) {
  const Told early = short_mornings("absorption_at_most = \"30 min\"\n");
  const Told held = short_mornings("");
  for (std::size_t day = 1; day < 10; ++day) {
    EXPECT_LT(early.fared.daily_high.at(day), 0.95F) << day;
    EXPECT_GT(early.fared.daily_high.at(day), 0.80F) << day;
    EXPECT_GT(held.fared.daily_high.at(day), 0.97F) << day;
  }
  // The nights are alike, so the early one also goes deeper.
  EXPECT_LT(early.fared.lowest_charge, held.fared.lowest_charge - 0.02);
}

// A small camper with two iron-phosphate batteries of 105 Ah and an inverter of 500 W. 500 W / 0.88 / 12 V =
// 47 A, a branch fuse of 60 to 70 A; 210 Ah x 12.8 V x 0.9 = 2.4 kWh. Two batteries of 5 mohm each drive 13.3
// V / 2.5 mohm = 5 kA into a short circuit, which the main fuse must break: prospective current is a figure
// of the bank, choosing the fuse is for local codes and a licensed person.
bank::Battery battery_of_105Ah() {
  bank::Battery battery = *catalogue().battery("lfp-12v-100ah");
  battery.capacity_Ah = 105.0;
  return battery;
}

TEST(SmallCamper, DrawsFortySevenAmperesAndHoldsTwoAndAHalfKilowattHours) {
  const bank::Battery battery = battery_of_105Ah();
  const advise::Candidate two = bank_of(battery, *catalogue().chemistry("lfp"), 1, 2);
  // Losses for 88 % at full output: 10 W + (0.05 + 0.0664) x 500 W = 68 W.
  const Told told = Practice(warm_cabin("depth_rule = \"protection\"\n") + R"(
[inverter]
rated = "500 W"
idle = "10 W"
linear_loss = "5 %"
quadratic_loss = "6.64 %"

[[load]]
name = "All it can"
power = "500 W"
feed = "inverter"
always = true
)" + winter_stay(1))
                        .tell(two);
  // At the true 13.1 V it is 43 A where the sum at 12 V says 47.
  EXPECT_NEAR(static_cast<double>(told.trace.bank_A.at(60)), 47.3 * 12.0 / 13.1, 1.0);
  // Nine tenths of the charge by when this much has gone out: 2.42 kWh at the nominal 12.8 V, 2 % more in
  // truth.
  double gone_Wh = 0.0;
  for (std::size_t i = 0; told.trace.charge.at(i) > 0.1F; ++i) {
    gone_Wh += static_cast<double>(told.trace.bank_A[i] * told.trace.bus_V[i]) / 60.0;
  }
  EXPECT_NEAR(gone_Wh, 2419.0, 0.03 * 2419.0);
}

TEST(SmallCamper, DrivesFiveThousandAmperesIntoAShortCircuit) {
  const cell::Chemistry& chemistry = *catalogue().chemistry("lfp");
  const cell::Tables tables = cell::make_tables(chemistry);
  bank::Layout two;
  two.in_parallel = 2;
  const auto assembled = [&](const bank::Battery& battery) {
    return bank::assemble(battery, chemistry, tables, two, 0.0, 4.0, 1.0);
  };
  const auto rested_A = [](const bank::Parameters<double>& p) {
    bank::State<double> state;
    state.charge = 0.98;
    state.temperature_C = 25.0;
    const auto t = bank::terminal<double>(p, state);
    return t.instant_V / t.instant_ohm;
  };
  // The record: 0.066 ohm Ah x 4 / 105 Ah + 2 mohm = 4.5 mohm each, 13.3 V / 2.26 mohm after a rest.
  bank::Battery battery = battery_of_105Ah();
  const auto record = assembled(battery);
  EXPECT_NEAR(rested_A(record), 5880.0, 60.0);
  // Straight from the charger four cells stand at 14.6 V: the fuse is chosen for that, 14.6 V / 2.26 mohm.
  EXPECT_NEAR(bank::prospective_short_circuit_A(record, 25.0, 0.0), 6460.0, 80.0);
  // And with the 5 mohm that were stated for each.
  battery.extra_resistance_ohm += 0.005 - (0.066 * 4.0 / 105.0 + 0.002);
  EXPECT_NEAR(rested_A(assembled(battery)), 13.3 / 0.0025, 30.0);
}

}  // namespace
}  // namespace voltwright::whole
