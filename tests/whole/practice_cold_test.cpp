// Banks in the cold: practitioners' cases, no standard.
#include <algorithm>

#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

// Four heating pads of 20 W under a bank round the clock: 80 W x 24 h = 1.92 kWh = 150 Ah a day at 12.8 V.
TEST(HeatingPads, RoundTheClockCostAHundredAndFiftyAmpereHoursADay) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Heating pads"
power = "20 W"
count = 4
always = true
)" + winter_stay(1));
  const Told told = plan.tell("lfp-12v-200ah");
  EXPECT_NEAR(told.fared.ledger.direct_Wh, 1920.0, 1.0);
  EXPECT_NEAR(drawn_Ah(told.trace, 0, 1440), 150.0, 0.04 * 150.0);  // at the true 13.1 V 147 Ah
}

std::string boxed(const std::string& box_loss) {
  return R"(format = 1
seasons = 1

[bank]
place = "heated box"
heater_power = "80 W"
heater_below = "5 degC"
box_loss = ")" +
         box_loss + R"("

[cables.main]
one_way = "1 m"
area = "50 mm2"

[mains]
output_limit = "20 A"

[[load]]
name = "Logger"
power = "2 W"
always = true

[[leg]]
place = "Kiruna"
from = 2027-01-05
days = 10
shore = "all day"
)";
}

/// What keeps a bank at 5 degC in its box in the air outside, without the warming up: sum of loss x (5 -
/// outside) [Wh], the loss being that of bank to box and of box to outside in a row.
double steady_heat_Wh(const season::Series& series, double box_loss_W_K) {
  const double bank_loss_W_K =
      bank::free_standing_loss_W_K(catalogue().battery("lfp-12v-100ah")->volume_L.typical);
  const double loss_W_K = 1.0 / (1.0 / box_loss_W_K + 1.0 / bank_loss_W_K);
  double sum_Wh = 0.0;
  for (const float outside_C : series.outside_C) {
    const double want_W = loss_W_K * (5.0 - static_cast<double>(outside_C));
    sum_Wh += std::clamp(want_W, 0.0, 80.0) / 60.0;
  }
  return sum_Wh;
}

// The way out is insulation first, then a few watts are enough. A heater that holds a bank at 5 degC gives
// P = UA x (5 - outside): a quarter of the box's loss is little more than a third of the heat, as the air in
// the box insulates too.
TEST(HeatedBox, InsulationCutsTheHeatInProportion) {
  const Practice poor(boxed("2 W/K"));
  const Practice good(boxed("0.5 W/K"));
  const Told cold = poor.tell("lfp-12v-100ah");
  const Told warm = good.tell("lfp-12v-100ah");
  ASSERT_GT(warm.fared.ledger.heater_Wh, 0.0);
  // The first warming up of 12 kg takes 12 kg x 1130 J/kgK x 20 K = 75 Wh and the box a little; the bank's
  // own losses save some.
  EXPECT_NEAR(cold.fared.ledger.heater_Wh, steady_heat_Wh(cold.series, 2.0), 150.0);
  EXPECT_NEAR(warm.fared.ledger.heater_Wh, steady_heat_Wh(warm.series, 0.5), 150.0);
  EXPECT_LT(warm.fared.ledger.heater_Wh, 0.42 * cold.fared.ledger.heater_Wh);
  EXPECT_GT(steady_heat_Wh(cold.series, 2.0), 3000.0);  // or the bands above would say little
}

// Away for some days in the frost: charging is barred below freezing while a refrigerator keeps running, then
// the protection or the depth rule takes the loads off, and the drive home cannot put anything back.
// 15 W x 24 h = 360 Wh a day empties 100 Ah to 80 % (1050 Wh) on the third day; 4 h a day at 20 A would bring
// back 80 Ah x 13 V = 1040 Wh. High in the mountains the frost of -13 degC hardly changes from day to day.
constexpr const char* kAway = R"(format = 1
seasons = 1

[bank]
place = "outside"

[cables.main]
one_way = "1 m"
area = "50 mm2"

[engine]
coupling = "dc-dc"
output_limit = "20 A"

[[load]]
name = "Refrigerator and lights left on"
power = "15 W"
always = true
when = "always"

[[leg]]
lat = 32
lon = 80
elevation = "4500 m"
zone = "Etc/UTC"
from = 2027-01-05
days = 4
occupied = false

[leg.climate]
temperature_C = { dec = -13, jan = -13, feb = -13 }
daily_range_K = { dec = 3, jan = 3, feb = 3 }

[[leg]]
lat = 32
lon = 80
elevation = "4500 m"
zone = "Etc/UTC"
days = 6
drive = "4 h/day"
drive_from = "09:00"

[leg.climate]
temperature_C = { dec = -13, jan = -13, feb = -13 }
daily_range_K = { dec = 3, jan = 3, feb = 3 }
)";

TEST(AwayInTheFrost, IronPhosphateLocksItselfOut) {
  const Told told = Practice(kAway).tell("lfp-12v-100ah");
  ASSERT_LT(told.fared.hottest_C, 0.0);  // frost throughout, or the case is another
  EXPECT_NEAR(told.fared.ledger.charge_blocked_h, told.fared.minutes / 60.0, 1e-6);
  EXPECT_EQ(told.fared.ledger.charged_Ah, 0.0);
  EXPECT_TRUE(told.fared.ran_short());
  // From the third day on all hours except the driving ones, when the charger alone carries the loads.
  EXPECT_GT(told.fared.locked_out_h, 24.0);
  EXPECT_LT(told.fared.charge_at_end, 0.5);
}

TEST(AwayInTheFrost, TitanateTakesTheChargeAndIsFine) {
  const Told told = Practice(kAway).tell("lto-12v-100ah", 2);
  EXPECT_EQ(told.fared.ledger.charge_blocked_h, 0.0);
  EXPECT_EQ(told.fared.locked_out_h, 0.0);
  EXPECT_FALSE(told.fared.ran_short());
  EXPECT_GT(told.fared.ledger.charged_Ah, 50.0);
}

// The same with the loads left to the protection alone, and home in the south: charging is barred
// below freezing, 15 W run on, and the protection opens at what a cold cell still gives (70 % of its charge
// at -13 degC). There is no mains: no charger of the plan is known to start on it. One that does (`wakes`)
// fills the bank once it is warm: 20 A x 4 h a day against 15 W.
std::string away_and_home(const std::string& chargers) {
  std::string text = kAway;
  text.replace(text.find("seasons = 1\n"), 12, "seasons = 1\ndepth_rule = \"protection\"\n");
  const std::string home = "lat = 32\nlon = 80\nelevation = \"4500 m\"\nzone = \"Etc/UTC\"\ndays = 6\n";
  text.replace(text.find(home), home.size(),
               "lat = 37.4\nlon = -6\nelevation = \"20 m\"\nzone = \"Europe/Madrid\"\ndays = 3\n");
  text.resize(text.rfind("\n[leg.climate]"));
  return text.replace(text.find("days = 4"), 8, "days = 5") + chargers;
}

constexpr std::size_t kAwayMinutes = 5 * 1440;

TEST(AwayInTheFrost, LoadsRunOnUntilProtectionOpens) {
  const Practice plan(away_and_home("\n[chargers.engine]\nwakes = true\n"));
  const Told told = plan.tell("lfp-12v-100ah");
  const season::Ledger<double>& ledger = told.fared.ledger;
  // 15 W until the protection opens and then nothing, while charge is barred all the time.
  EXPECT_GT(ledger.charge_blocked_h, 5.0 * 24.0 - 2.0);
  EXPECT_NEAR(ledger.drawn_blocked_Wh, 0.7 * 100.0 * 13.1, 100.0);
  EXPECT_GT(told.fared.locked_out_h, 24.0);
  EXPECT_GE(times(told, season::EventKind::kLoadsOff), 1);
  const auto charge_at = [&](std::size_t i) { return static_cast<double>(told.trace.charge.at(i)); };
  EXPECT_LT(charge_at(kAwayMinutes - 1), 0.4);
  EXPECT_GT(told.fared.charge_at_end, 0.8);  // recovers on the drives in the warm

  // Without such a charger the answer warns of it.
  const Practice asleep(away_and_home(""));
  const Told warned = asleep.tell("lfp-12v-100ah");
  EXPECT_NE(asleep.caution("Charging blocked, loads on", asleep.bank("lfp-12v-100ah"), warned) +
                asleep.caution("Locked out", asleep.bank("lfp-12v-100ah"), warned),
            "");
}

// Drawn to the end where it is warm, an iron-phosphate bank shows no voltage: 12 W left on empty 100 Ah
// x 13.1 V in 109 h. The drive home cannot start charging, as a DC-DC converter sees no battery; a mains
// charger wakes it, and so does an engine charger made for that.
Told drawn_to_the_end(const std::string& chargers, const std::string& shore, std::string* caution) {
  const std::string leg = "\n[[leg]]\nlat = 60\nlon = 10\nelevation = \"200 m\"\nzone = \"Etc/UTC\"\ndays = ";
  const Practice plan(warm_cabin("depth_rule = \"protection\"\n") + R"(
[engine]
output_limit = "20 A"

[[load]]
name = "Standby left on"
power = "12 W"
always = true
)" + chargers + leg + "5\nfrom = 2027-01-10\n" +
                      leg + "1\ndrive = \"4 h/day\"\ndrive_from = \"09:00\"\n" + shore);
  Told told = plan.tell("lfp-12v-100ah");
  *caution = plan.caution("Locked out", plan.bank("lfp-12v-100ah"), told);
  return told;
}

TEST(DrawnToTheEnd, TheDriveHomeCannotStartCharging) {
  std::string caution;
  const Told told = drawn_to_the_end("", "", &caution);
  EXPECT_NEAR(hours_until_loads_off(told), 109.0, 3.0);
  EXPECT_EQ(told.fared.ledger.charged_Ah, 0.0);
  EXPECT_EQ(told.fared.ledger.engine_Wh, 0.0);
  EXPECT_NEAR(told.fared.ledger.unwoken_h, 4.0, 0.05);  // the whole drive
  EXPECT_EQ(times(told, season::EventKind::kLockedOut), 1);
  EXPECT_NE(caution.find("showed no voltage"), std::string::npos) << caution;
}

TEST(DrawnToTheEnd, AMainsChargerWakesTheBank) {
  std::string caution;
  const Told told =
      drawn_to_the_end("\n[mains]\noutput_limit = \"20 A\"\n", "shore = \"14:00-23:00\"\n", &caution);
  EXPECT_EQ(told.fared.ledger.engine_Wh, 0.0);
  EXPECT_GT(told.fared.charge_at_end, 0.9);  // 19 A x 9 h is more than it holds
  EXPECT_NE(caution, "");                    // the drive before was still in vain
}

TEST(DrawnToTheEnd, AnEngineChargerThatWakesDoesToo) {
  std::string caution;
  const Told told = drawn_to_the_end("\n[chargers.engine]\nwakes = true\n", "", &caution);
  EXPECT_EQ(told.fared.ledger.unwoken_h, 0.0);
  EXPECT_NEAR(told.fared.ledger.charged_Ah, (20.0 - 12.0 / 13.2) * 4.0, 2.0);
  EXPECT_EQ(caution, "");
}

// The four pads of 20 W under a bank in an unheated shed in the mountains. Run from the bank they are a net
// loss on dull days; run on what the sun gives beyond the loads, they warm the bank when there is something
// to charge with and never draw on it.
std::string mountain_shed(const std::string& heater_power, const std::string& heater_from) {
  return R"(format = 1
seasons = 1

[bank]
place = "heated box"
heater_below = "5 degC"
box_loss = "2 W/K"
heater_power = ")" +
         heater_power + "\"\nheater_from = \"" + heater_from + R"("

[cables.main]
one_way = "1 m"
area = "50 mm2"

[[load]]
name = "Radio"
power = "10 W"
always = true

[[solar]]
in_parallel = 2
tilt = "60 deg"
azimuth = "south"
mounting = "open rack"
module = { peak = "200 W", open_circuit = "24.3 V", short_circuit = "10.4 A", at_peak_voltage = "20.2 V", at_peak_current = "9.9 A" }
controller = { kind = "mppt", output_limit = "40 A", input_limit = "60 V" }

[[leg]]
lat = 46.8
lon = 9.8
elevation = "1500 m"
zone = "Europe/Zurich"
from = 2027-01-05
days = 14
)";
}

/// Watt-hours that the heater drew while a bank that was not brimful gave current. On a brimful one a charger
/// rests until the voltage has fallen to where sources take over again, and what runs then takes the first
/// per cent or two.
double heated_from_bank_Wh(const Told& told) {
  double sum_Wh = 0.0;
  for (std::size_t i = 0; i < told.trace.load_W.size(); ++i) {
    const double heater_W = static_cast<double>(told.trace.load_W[i]) - 10.0;
    if (told.trace.bank_A[i] > 0.01F && told.trace.charge[i] < 0.98F)
      sum_Wh += std::max(heater_W, 0.0) / 60.0;
  }
  return sum_Wh;
}

TEST(MountainShed, AHeaterOnSurplusNeverLowersTheCharge) {
  const Told from_bank = Practice(mountain_shed("80 W", "bank")).tell("lfp-12v-200ah");
  const Told on_surplus = Practice(mountain_shed("80 W", "surplus")).tell("lfp-12v-200ah");
  const Told unheated = Practice(mountain_shed("0.01 W", "surplus")).tell("lfp-12v-200ah");
  ASSERT_LT(unheated.fared.coldest_C, -5.0);
  EXPECT_GT(heated_from_bank_Wh(from_bank), 2000.0);
  EXPECT_NEAR(heated_from_bank_Wh(on_surplus), 0.0, 1.0);
  EXPECT_GT(on_surplus.fared.ledger.heater_Wh, 1000.0);
  // At no minute is the bank emptier than without any heater, whose cold bank takes no charge at all. (A warm
  // bank discharges itself a little faster: 5 Ah a month.)
  for (std::size_t i = 0; i < on_surplus.trace.charge.size(); i += 10) {
    ASSERT_GE(on_surplus.trace.charge[i], unheated.trace.charge[i] - 0.002F) << i;
  }
  EXPECT_LT(unheated.fared.charge_at_end, 0.5);
  EXPECT_LT(from_bank.fared.lowest_charge, on_surplus.fared.lowest_charge - 0.2);
}

}  // namespace
}  // namespace voltwright::whole
