// Solar arrays against the bank they charge, and against their controller: practitioners' rules, no standard.
#include <algorithm>
#include <string>
#include <vector>

#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr const char* kDesert = "lat = 33.4\nlon = -112\nelevation = \"340 m\"\nzone = \"America/Phoenix\"\n";
constexpr const char* kNorth = "lat = 52\nlon = 0\nelevation = \"20 m\"\nzone = \"Europe/London\"\n";

std::string stay(const std::string& place, const std::string& from, int days) {
  return "\n[[leg]]\n" + place + "from = " + from + "\ndays = " + std::to_string(days) + "\n";
}

/// An array of so many watts that looks to the summer noon sun. `more` are further keys of its section.
std::string array_of(int watts, const std::string& output_limit, const std::string& more) {
  constexpr int kModules = 4;
  const double current_A = watts / 18.0 / kModules;
  return "\n[[solar]]\nin_parallel = 4\ntilt = \"10 deg\"\nazimuth = \"south\"\nmounting = \"open rack\"\n" +
         more + "module = { peak = \"" + std::to_string(1.0 * watts / kModules) +
         " W\", open_circuit = \"22 V\", short_circuit = \"" + std::to_string(1.07 * current_A) +
         " A\", at_peak_voltage = \"18 V\", at_peak_current = \"" + std::to_string(current_A) +
         " A\", power_per_K = \"0 %/K\" }\ncontroller = { kind = \"mppt\", efficiency = \"96 %\", "
         "output_limit = \"" +
         output_limit + "\", input_limit = \"60 V\" }\n";
}

constexpr const char* kRuleLosses =
    "soiling = \"0 %\"\nother_losses = \"19.8 %\"\n";  // 0.77 with the controller

/// Charging current over 500 Ah in the middle noon minute of a desert June.
double noon_share(int watts) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Clock"
power = "1 mW"
always = true
)" + array_of(watts, "400 A", kRuleLosses) +
                      stay(kDesert, "2027-06-05", 20));
  std::vector<double> noon_W;
  const season::Series series = plan.draw(0);
  for (std::size_t day = 0; day < 20; ++day) {
    for (std::size_t m = 12 * 60 + 20; m < 12 * 60 + 40; ++m) {
      noon_W.push_back(series.minutes.at(day * 1440 + m).solar_W);
    }
  }
  std::sort(noon_W.begin(), noon_W.end());
  return noon_W.at(noon_W.size() / 2) / 14.5 / 500.0;
}

// 500 Ah of lead-acid at 12 V ask for 5 to 13 % of their capacity as charging current; with 0.77 left of the
// label and 14.5 V that is 471 to 1224 W. The light of such a noon lies within an eighth of 1000 W/m2.
TEST(SunForALeadBank, FiveToThirteenPerCentOfItsCapacity) {
  EXPECT_NEAR(noon_share(471), 0.05, 0.12 * 0.05);
  EXPECT_NEAR(noon_share(1224), 0.13, 0.12 * 0.13);
}

// A bank of six times the daily use, three days to half charge, is used with 83 Ah, 1 kWh, a day. The rule's
// smaller array carries that in the desert's autumn; in a northern December the sun gives a tenth of it.
TEST(SunForALeadBank, StillHasToPassTheWinter) {
  const std::string plan_top = warm_cabin() + R"(
[[load]]
name = "Everything"
power = "41.7 W"
always = true
)" + array_of(471, "60 A", kRuleLosses);
  const Practice autumn(plan_top + stay(kDesert, "2027-09-15", 28));
  const Told carried = autumn.tell("flooded-12v-100ah", 5);
  EXPECT_EQ(carried.fared.ledger.unmet_Wh, 0.0);
  const Practice winter(plan_top + stay(kNorth, "2026-12-01", 28));
  const Told short_of = winter.tell("flooded-12v-100ah", 5);
  EXPECT_GT(short_of.fared.ledger.unmet_Wh, 0.25 * 28 * 1000.0);
  EXPECT_LT(short_of.fared.ledger.solar_Wh, 0.5 * 28 * 1000.0);
}

// Own numbers: 600 W behind a controller of 30 A, which is 400 to 430 W on this bus.
TEST(ClippedSun, IsWhatALargerControllerWouldHaveHadBeyond) {
  const auto plan_with = [](const std::string& limit) {
    return Practice(warm_cabin() + R"(
[[load]]
name = "Everything"
power = "150 W"
always = true
)" + array_of(600, limit, "") +
                    stay(kDesert, "2027-06-05", 6));
  };
  const Told small = plan_with("30 A").tell("lfp-12v-200ah");
  const Told large = plan_with("1000 A").tell("lfp-12v-200ah");
  const auto& lost = small.fared.ledger;
  const auto& had = large.fared.ledger;
  EXPECT_EQ(had.solar_clipped_Wh, 0.0);
  EXPECT_GT(lost.solar_clipped_Wh, 300.0);
  const double all_Wh = had.solar_Wh + had.solar_left_Wh;
  EXPECT_NEAR(lost.solar_Wh + lost.solar_left_Wh + lost.solar_clipped_Wh, all_Wh, 2e-5 * all_Wh);
  // Minute by minute, from the sun that the larger one could have had and the voltage of the small one's bus.
  double clipped_Wh = 0.0;
  for (std::size_t i = 0; i < small.trace.bus_V.size(); ++i) {
    const double over_W =
        large.series.minutes.at(i).solar_W - 30.0 * static_cast<double>(small.trace.bus_V[i]);
    clipped_Wh += std::max(0.0, over_W) / 60.0;
  }
  EXPECT_NEAR(lost.solar_clipped_Wh, clipped_Wh, 0.01 * clipped_Wh);
}

}  // namespace
}  // namespace voltwright::whole
