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
// back 80 Ah x 13 V = 1040 Wh.
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
place = "Kiruna"
from = 2027-01-05
days = 4
occupied = false

[[leg]]
place = "Kiruna"
days = 6
drive = "4 h/day"
drive_from = "09:00"
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

}  // namespace
}  // namespace voltwright::whole
