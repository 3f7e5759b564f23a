// Chargers set for another battery, equalising, and two chargers on one bank: practitioners' cases, no
// standard.
#include <algorithm>
#include <cmath>

#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr const char* kWrong = "Charger set for another battery";

/// Every night a load, every day mains through a charger set like this, in a room of this temperature.
Practice on_shore(const std::string& room, const std::string& charger, const std::string& shore, int days) {
  std::string text = warm_cabin();
  const std::string warm = "cabin_heated_to = \"25 degC\"";
  text.replace(text.find(warm), warm.size(), "cabin_heated_to = \"" + room + "\"");
  return Practice(text + R"(
[mains]
output_limit = "20 A"

[[load]]
name = "Night"
power = "90 W"
window = "00:00-06:00"

[chargers.mains]
)" + charger + "\n" +
                  winter_stay(days, "shore = \"" + shore + "\"\n"));
}

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

// A charger left on its flooded setting in the cold: 6 x 2.45 V = 14.7 V, and 22 mV more for each kelvin
// below 25 degC, 14.7 + 23 x 0.0222 = 15.2 V at 2 degC. Four iron-phosphate cells bear 4 x 3.65 = 14.6 V and
// are protected at 15.2 V; their own charger ends at 4 x 3.55 = 14.2 V.
constexpr const char* kFlooded = "profile = \"flooded\"\nequalise_every = \"30 days\"";

/// Charged beyond full, or else the protection had to open.
bool overcharged(const Told& told) {
  return *std::max_element(told.fared.daily_high.begin(), told.fared.daily_high.end()) > 1.0F ||
         told.fared.ledger.charge_blocked_h > 0.5;
}

TEST(FloodedProfile, OverchargesIronPhosphateInTheCold) {
  const Practice cold = on_shore("2 degC", kFlooded, "08:00-23:00", 3);
  const Told told = cold.tell("lfp-12v-100ah");
  EXPECT_GT(told.fared.highest_V, 14.6);
  EXPECT_TRUE(overcharged(told));
  const std::string text = cold.caution(kWrong, cold.bank("lfp-12v-100ah"), told);
  EXPECT_TRUE(holds(text, "as for flooded")) << text;
  EXPECT_TRUE(holds(text, "overcharge and heat")) << text;
  EXPECT_TRUE(holds(text, "0.555")) << text;  // volts that compensation adds at 0 degC, 25 x 0.0222
  EXPECT_TRUE(holds(text, "Floating at")) << text;

  // Left to the profile that the bank asks for, nothing of the kind.
  const Practice right = on_shore("2 degC", "", "08:00-23:00", 3);
  const Told calm = right.tell("lfp-12v-100ah");
  EXPECT_LE(calm.fared.highest_V, 14.21);
  EXPECT_FALSE(overcharged(calm));
  EXPECT_GT(calm.fared.daily_high.at(2), 0.98F);
  EXPECT_EQ(right.caution(kWrong, right.bank("lfp-12v-100ah"), calm), "");
}

// Set above the 15.2 V at which their protection opens, the cells are charged beyond full until it does: at
// 80 V for each unit of charge that is (15.2 / 4 - 3.65) / 80 = 0.2 % of the charge.
TEST(TooHighProfile, OpensTheProtection) {
  const Told told = on_shore("25 degC", "absorption = \"15.4 V\"\nfloat = \"15.3 V\"", "08:00-23:00", 3)
                        .tell("lfp-12v-100ah");
  EXPECT_GE(times(told, season::EventKind::kChargeBlocked), 1);
  EXPECT_GT(told.fared.highest_V, 15.0);  // mean of the minute in which it opens
  const double highest =
      static_cast<double>(*std::max_element(told.fared.daily_high.begin(), told.fared.daily_high.end()));
  EXPECT_GT(highest, 1.0005);
  EXPECT_LT(highest, 1.003);
}

TEST(FloodedProfile, DoesLessHarmInTheWarm) {
  // At 25 degC there is no compensation: 14.7 V, and less once the bank is warm.
  const Told warm = on_shore("25 degC", kFlooded, "08:00-23:00", 3).tell("lfp-12v-100ah");
  const Told cold = on_shore("2 degC", kFlooded, "08:00-23:00", 3).tell("lfp-12v-100ah");
  EXPECT_LT(warm.fared.highest_V, cold.fared.highest_V);
  EXPECT_EQ(warm.fared.ledger.charge_blocked_h, 0.0);
}

// A bank is charged as far as its fullest cell lets it. With that cell 0.2 % of charge above the mean and 80
// V for each unit of charge at the top of the curve, the protection sees 4 x 0.16 = 0.64 V more: 14.2 V
// pass, 14.7 V do not.
TEST(FloodedProfile, OpensTheProtectionOfAnUnevenBank) {
  const Practice wrong = on_shore("25 degC", kFlooded, "08:00-23:00", 3);
  advise::Candidate uneven = wrong.bank("lfp-12v-100ah");
  uneven.layout.ahead = 0.002;
  const Told told = wrong.tell(uneven);
  EXPECT_GE(times(told, season::EventKind::kChargeBlocked), 1);
  EXPECT_GT(told.fared.ledger.charge_blocked_h, 0.5);
  EXPECT_TRUE(holds(wrong.caution(kWrong, uneven, told), "blocked for charge"));
  const Told own = on_shore("25 degC", "", "08:00-23:00", 3).tell(uneven);
  EXPECT_EQ(times(own, season::EventKind::kChargeBlocked), 0);
  EXPECT_GT(own.fared.daily_high.at(2), 0.98F);
}

// The other way round: an iron-phosphate setting ends after half an hour at 14.2 V. Glass-mat asks for 6
// x 2.42 = 14.5 V until the current has fallen to a hundredth of its capacity.
TEST(IronPhosphateProfile, LeavesGlassMatUndercharged) {
  const Practice wrong = on_shore("25 degC", "profile = \"lfp\"", "08:00-14:00", 10);
  const Told under = wrong.tell("agm-12v-98ah");
  const Told full = on_shore("25 degC", "", "08:00-14:00", 10).tell("agm-12v-98ah");
  for (std::size_t day = 1; day < 10; ++day) {
    EXPECT_LT(under.fared.daily_high.at(day), 0.975F) << day;
    EXPECT_GT(full.fared.daily_high.at(day), 0.99F) << day;
  }
  EXPECT_LE(under.fared.highest_V, 14.21);
  EXPECT_LT(under.fared.lowest_charge, full.fared.lowest_charge - 0.02);
  const std::string text = wrong.caution(kWrong, wrong.bank("agm-12v-98ah"), under);
  EXPECT_TRUE(holds(text, "as for lfp")) << text;
  EXPECT_TRUE(holds(text, "14.5")) << text;
}

// In the cold it lacks the compensation besides: at 5 degC glass-mat asks for 14.5 + 20 x 0.0222 = 14.97 V.
TEST(IronPhosphateProfile, LeavesGlassMatEmptierStillInTheCold) {
  const Told cold = on_shore("5 degC", "profile = \"lfp\"", "08:00-14:00", 10).tell("agm-12v-98ah");
  const Told own = on_shore("5 degC", "", "08:00-14:00", 10).tell("agm-12v-98ah");
  EXPECT_GT(own.fared.highest_V, 14.6);
  EXPECT_LT(cold.fared.daily_high.at(9), own.fared.daily_high.at(9) - 0.02F);
}

// Flooded batteries are equalised about once a month, here at 6 x 2.5 V = 15.0 V for two hours; gel, whose
// gas has nowhere to go, never: common practice, no source. Voltages above 14.8 V come from nothing else
// here: absorption is 14.7 V at 25 degC, less in a bank that is warm.
struct Equalised {
  int times = 0;
  std::size_t first_day = 0;
  double minutes = 0.0;
};

Equalised equalised(const Told& told) {
  Equalised seen;
  bool before = false;
  for (std::size_t i = 0; i < told.trace.bus_V.size(); ++i) {
    const bool now = told.trace.bus_V[i] > 14.8F;
    if (now && !before && seen.times++ == 0) seen.first_day = i / 1440;
    if (now) seen.minutes += 1.0;
    before = now;
  }
  return seen;
}

TEST(Equalising, HappensMonthlyOnFloodedAndNeverOnGel) {
  const Told monthly =
      on_shore("25 degC", "equalise_every = \"30 days\"", "08:00-23:00", 65).tell("flooded-12v-100ah");
  const Equalised seen = equalised(monthly);
  EXPECT_EQ(seen.times, 2);
  EXPECT_GE(seen.first_day, 30U);
  EXPECT_LE(seen.first_day, 31U);
  EXPECT_NEAR(seen.minutes, 2.0 * 120.0, 20.0);
  const Told never = on_shore("25 degC", "", "08:00-23:00", 65).tell("flooded-12v-100ah");
  EXPECT_EQ(equalised(never).times, 0);
  // It gasses: four hours of it are more than what absorption loses in that time.
  EXPECT_GT(monthly.fared.ledger.side_Ah, never.fared.ledger.side_Ah + 1.0);

  const Told gel =
      on_shore("25 degC", "equalise_every = \"30 days\"", "08:00-23:00", 65).tell("gel-12v-100ah");
  EXPECT_EQ(equalised(gel).times, 0);
  EXPECT_LT(gel.fared.highest_V, 14.3);  // 6 x 2.37 V
}

// Sun and mains on one bus: 15 A set to 14.0 V and at most 20 A set to 14.6 V. Below 14.0 V both carry the
// loads and charge; above it the mains charger, which holds the lower voltage, falls silent, and the sun goes
// on alone.
TEST(TwoChargers, ShareUntilTheLowerVoltageFallsSilent) {
  const Told told = Practice(warm_cabin() + R"(
[mains]
output_limit = "15 A"

[[solar]]
in_parallel = 2
tilt = "40 deg"
azimuth = "south"
mounting = "open rack"
module = { peak = "200 W", open_circuit = "24.3 V", short_circuit = "10.4 A", at_peak_voltage = "20.2 V", at_peak_current = "9.9 A" }
controller = { kind = "mppt", output_limit = "20 A", input_limit = "60 V" }

[chargers.mains]
absorption = "14.0 V"
float = "13.5 V"

[chargers.solar]
absorption = "14.6 V"
float = "13.5 V"

[[load]]
name = "Night"
power = "200 W"
window = "00:00-06:00"

[[load]]
name = "Always"
power = "100 W"
always = true

[[leg]]
lat = 33.4
lon = -112
elevation = "340 m"
zone = "America/Phoenix"
from = 2027-06-10
days = 2
shore = "06:00-20:00"
)")
                        .tell("agm-12v-200ah", 2);
  int both_min = 0;
  int sun_alone_min = 0;
  for (std::size_t i = 0; i < told.trace.bus_V.size(); ++i) {
    const auto bus_V = static_cast<double>(told.trace.bus_V[i]);
    const auto mains_W = static_cast<double>(told.trace.mains_W[i]);
    const auto solar_W = static_cast<double>(told.trace.solar_W[i]);
    const auto bank_A = static_cast<double>(told.trace.bank_A[i]);
    EXPECT_LE(mains_W, 15.0 * bus_V + 0.01) << i;
    EXPECT_LE(solar_W, 20.0 * bus_V + 0.01) << i;
    // In a minute within which a charger falls silent the product of the means is not the mean of the
    // products.
    EXPECT_NEAR(mains_W + solar_W + bank_A * bus_V, static_cast<double>(told.trace.load_W[i]), 1.0) << i;
    if (mains_W > 10.0 && solar_W > 10.0 && bank_A < 0.0) ++both_min;
    if (bus_V < 14.05) continue;
    EXPECT_NEAR(mains_W, 0.0, 0.01) << i << " at " << bus_V;
    if (solar_W > 10.0) ++sun_alone_min;
  }
  EXPECT_GT(both_min, 120);
  EXPECT_GT(sun_alone_min, 30);
  EXPECT_GT(told.fared.highest_V, 14.5);
  EXPECT_LE(told.fared.highest_V, 14.6);
}

}  // namespace
}  // namespace voltwright::whole
