// What the engine side gives a house bank when alternator, plug and generator set are described as they are:
// practitioners' cases, no standard. `tell` checks that the energy of every season closes.
#include <algorithm>
#include <cmath>

#include "engine/advise/fuel.h"
#include "engine/supply/engine_use.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr const char* kBank = "lfp-12v-200ah";
constexpr std::size_t kNine = 9 * 60;
constexpr std::size_t kDrive_min = 120;

// A trailer on the charging pin of its tow car: 7.6 m each way of 3.31 mm2 are 79 mohm, and 13.6 V leave
// (13.6 - 13.2) V / 0.08 ohm = 5 A, whatever the fuse.
TEST(TowingPlug, LetsFiveAmperesThrough) {
  const Practice plan = half_empty_and_driven(R"(coupling = "relay"
output_limit = "80 A"
alternator_voltage = "13.6 V"
loop_resistance = "0.1 mohm"
towing_plug = { cable = { one_way = "7.6 m", area = "3.31 mm2" }, fuse = "30 A", pin = "20 A" })");
  const Told told = plan.tell(kBank);
  EXPECT_NEAR(charging_A(told, kNine + 5), 5.0, 0.5);
  // (13.6 - 12) V / 79 mohm = 20.2 A at most: above the pin, below 1.1 x 30 A.
  const std::string text = plan.caution("Towing plug overloaded", plan.bank(kBank), told);
  EXPECT_NE(text.find("20.2"), std::string::npos) << text;
  EXPECT_EQ(text.find("fuse of"), std::string::npos) << text;
}

// A converter of 20 A behind that lead is asked for 316 W at 14.2 V: I (13.6 - 0.079 I) = 316 gives 27.6 A. A
// fuse of 20 A opens (1.38 times its rating), one of 25 A (1.10) is doubtful; ISO 8820-3, from memory.
TEST(TowingPlug, LosesItsFuseToAConverter) {
  const auto with_fuse = [](const std::string& fuse) {
    return half_empty_and_driven(R"(output_limit = "20 A"
efficiency = "90 %"
alternator_voltage = "13.6 V"
loop_resistance = "0.1 mohm"
towing_plug = { cable = { one_way = "7.6 m", area = "3.31 mm2" }, fuse = ")" +
                                 fuse + "\" }");
  };
  const Practice thin = with_fuse("20 A");
  const Told open = thin.tell(kBank);
  EXPECT_EQ(open.fared.ledger.engine_Wh, 0.0);
  EXPECT_NE(thin.caution("Towing plug overloaded", thin.bank(kBank), open).find("opens within minutes"),
            std::string::npos);
  const Told holding = with_fuse("30 A").tell(kBank);
  EXPECT_NEAR(charging_A(holding, kNine + 60), 20.0, 0.01);
}

// Idling, a machine of 60 A turns 2000 1/min: 60 A (1 - exp(-1020 / 790)) = 43.5 A cold, a few per cent less
// in warm air, and the vehicle takes 25 A of it. What is left feeds the converter, not its 30 A.
TEST(AlternatorAtIdle, LeavesAConverterWhatTheVehicleDoesNotTake) {
  const Told told = half_empty_and_driven(R"(output_limit = "30 A"
loop_resistance = "15 mohm"
alternator = { rated = "60 A", idle_share = "100 %", air_rise = "40 K" })")
                        .tell(kBank);
  const std::size_t at = kNine + kDrive_min - 1;
  const double air_C = static_cast<double>(told.series.outside_C.at(at)) +
                       40.0 * (1.0 - std::exp(-static_cast<double>(kDrive_min - 1) / 20.0));
  const double heat = std::clamp(1.0 - 0.0030 * (air_C - 25.0), 0.6, 1.0);
  const double left_A = 60.0 * (1.0 - std::exp(-1020.0 / 790.0)) * heat - 25.0;
  const double held_V = 14.4 - 0.010 * (air_C - 20.0);
  const double output_W = 0.88 * (held_V - 0.015 * left_A) * left_A;
  EXPECT_LT(output_W, 30.0 * 13.0);
  EXPECT_NEAR(static_cast<double>(told.trace.engine_W.at(at)), output_W, 0.01 * output_W);
  EXPECT_GT(left_A, 10.0);
}

// At speed the same machine has enough: the converter gives its own 20 A.
TEST(AlternatorAtSpeed, FeedsTheConverterInFull) {
  const Told told = half_empty_and_driven(R"(output_limit = "20 A"
alternator = { rated = "120 A", idle_share = "0 %" })")
                        .tell(kBank);
  EXPECT_NEAR(charging_A(told, kNine + 60), 20.0, 0.01);
}

// A relay that joins the batteries from 13.3 V on does so on overrun alone, a tenth of the drive, behind an
// alternator that the engine holds at 12.8 V or less otherwise (common practice, no source).
TEST(EngineControlledAlternator, ChargesThroughARelayOnOverrunAlone) {
  const Told told = half_empty_and_driven(R"(coupling = "relay"
output_limit = "80 A"
relay_closes = "13.3 V"
alternator = { rated = "150 A", controlled = true })")
                        .tell(kBank);
  int charging_min = 0;
  for (std::size_t i = kNine; i < kNine + kDrive_min; ++i) charging_min += charging_A(told, i) > 0.0 ? 1 : 0;
  EXPECT_EQ(charging_min, static_cast<int>(kDrive_min) / 10);
}

// The same alternator through a converter charges all the time; at 12.8 V it only draws more.
TEST(EngineControlledAlternator, ChargesThroughAConverterAllTheTime) {
  const Told told = half_empty_and_driven(R"(output_limit = "20 A"
loop_resistance = "5 mohm"
fuel = "diesel"
alternator = { rated = "150 A", controlled = true })")
                        .tell(kBank);
  EXPECT_NEAR(told.fared.ledger.charged_Ah, 40.0, 0.5);
}

// A converter in the engine bay loses 3 % of its output for each kelvin above 45 degC (facts of the trade).
TEST(ConverterInTheEngineBay, GivesLessInTheHeat) {
  const Practice plan(R"(format = 1
seasons = 1

[cables.main]
one_way = "1 m"
area = "50 mm2"

[[load]]
name = "Night load"
power = "200 W"
window = "00:00-12:00"

[engine]
output_limit = "25 A"
derating = { place = "engine bay", from = "45 degC", per_K = "-3 %/K" }

[[leg]]
lat = 37.4
lon = -6
elevation = "20 m"
zone = "Europe/Madrid"
from = 2027-07-10
days = 1
drive = "2 h/day"
drive_from = "14:00"
)");
  const Told told = plan.tell(kBank);
  const std::size_t at = 14 * 60 + 110;
  const double air_C =
      static_cast<double>(told.series.outside_C.at(at)) + 30.0 * (1.0 - std::exp(-110.0 / 20.0));
  ASSERT_GT(air_C, 46.0);
  const double wanted_A = 25.0 * std::max(0.0, 1.0 - 0.03 * (air_C - 45.0));
  EXPECT_NEAR(charging_A(told, at), wanted_A, 0.01);
}

// 1 kWh at the bus through a machine of 67 % and a converter of 88 % costs 0.220 / (0.67 x 0.88) = 0.373 L of
// diesel; consumption of effective power, Commission Implementing Decision (EU) 2020/728.
TEST(FuelOfTheEngine, IsPaidForEveryKilowattHour) {
  const Practice plan = half_empty_and_driven("output_limit = \"20 A\"\nfuel = \"diesel\"");
  const Told told = plan.tell(kBank);
  const std::vector<advise::FuelUse> fuel = advise::fuel_of(plan.plan(), told.fared.ledger, 1.0);
  ASSERT_EQ(fuel.size(), 1U);
  EXPECT_NEAR(fuel.front().L_per_kWh(), 0.220 / (0.67 * 0.88), 1e-12);
  EXPECT_NEAR(fuel.front().litres, told.fared.ledger.engine_Wh / 1000.0 * 0.220 / (0.67 * 0.88), 1e-9);
  EXPECT_NE(plan.caution("Carbon monoxide", plan.bank(kBank), told), "");
}

/// A cabin of 100 W day and night, with a set of 1 kW on a charger of 40 A.
Practice cabin(const std::string& generator, const std::string& leg = "") {
  return Practice(warm_cabin() + R"(
[[load]]
name = "House"
power = "100 W"
always = true

[mains]
output_limit = "40 A"
efficiency = "90 %"

[generator]
rated = "1 kW"
)" + generator + "\n" +
                  winter_stay(6, leg));
}

TEST(GeneratorSet, StartsOnALowBankStopsOnAFullOneAndKeepsQuietHours) {
  const Practice plan = cabin("start_below = \"50 %\"\nstop_above = \"85 %\"\nquiet = \"22:00-08:00\"");
  const Told told = plan.tell("lfp-12v-100ah");
  const auto& power_W = told.trace.generator_W;
  int run_min = 0;
  int starts = 0;
  for (std::size_t i = 1; i < power_W.size(); ++i) {
    const bool runs = power_W[i] > 0.0F;
    if (runs) {
      EXPECT_NE(told.series.minutes[i].generator, season::GeneratorMinute::kOff) << i;
    }
    run_min += runs ? 1 : 0;
    if (runs && !(power_W[i - 1] > 0.0F)) {
      ++starts;
      EXPECT_LT(told.trace.charge[i - 1], 0.5F) << i;
    }
    // It goes on until the bank is full enough, unless the quiet hours stop it.
    if (!runs && power_W[i - 1] > 0.0F && told.series.minutes[i].generator != season::GeneratorMinute::kOff) {
      EXPECT_GE(told.trace.charge[i - 1], 0.85F - 1e-4F) << i;
    }
  }
  EXPECT_GE(starts, 3);
  const season::Ledger<double>& l = told.fared.ledger;
  EXPECT_NEAR(l.generator_h, run_min / 60.0, 0.05);
  EXPECT_GT(l.generator_Wh, 0.0);
  EXPECT_EQ(l.mains_Wh, 0.0);
  // Fuel of a set of 1 kW as measured: 0.280 L/h standing and 0.481 L/kWh (a published 1 kW petrol set).
  const std::vector<advise::FuelUse> fuel = advise::fuel_of(plan.plan(), l, 1.0);
  ASSERT_EQ(fuel.size(), 1U);
  EXPECT_NEAR(fuel.front().litres, 0.280 * l.generator_h + 0.481 * l.generator_Wh / 0.9 / 1000.0, 1e-9);
  for (const char* title : {"Carbon monoxide", "Neutral and earth of the generator set"}) {
    EXPECT_NE(plan.caution(title, plan.bank("lfp-12v-100ah"), told), "") << title;
  }
}

TEST(GeneratorSet, RunsByScheduleAndNeverBesideShorePower) {
  const Practice plan = cabin("runs = \"10:00-13:00\"", "shore = \"12:00-14:00\"\n");
  const Told told = plan.tell("agm-12v-98ah", 2);
  EXPECT_GT(told.fared.ledger.generator_Wh, 0.0);
  EXPECT_GT(told.fared.ledger.mains_Wh, 0.0);
  for (std::size_t i = 0; i < told.trace.generator_W.size(); ++i) {
    if (told.series.minutes[i].mains) {
      EXPECT_EQ(told.trace.generator_W[i], 0.0F) << i;
    }
    if (told.trace.mains_W[i] > 0.0F) {
      EXPECT_TRUE(told.series.minutes[i].mains) << i;
    }
  }
  EXPECT_LE(told.fared.ledger.generator_h, 6 * 2.0 + 1e-9);
}

// A charger without power-factor correction (0.6) leaves a set of 300 W 300 x 0.6 x 0.9 = 162 W.
TEST(GeneratorSet, CarriesNoMoreThanItsVoltAmperes) {
  Practice plan = cabin("runs = \"10:00-13:00\"\ncharger_power_factor = 0.6");
  plan.plan().generator->rated_W = 300.0;
  const Told told = plan.tell("lfp-12v-100ah");
  const float most_W = *std::max_element(told.trace.generator_W.begin(), told.trace.generator_W.end());
  EXPECT_NEAR(static_cast<double>(most_W), 162.0, 0.01);
}

}  // namespace
}  // namespace voltwright::whole
