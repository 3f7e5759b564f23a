// What alternators and small solar modules really give: practitioners' cases, no standard.
#include <algorithm>
#include <vector>

#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

// A relay joins an alternator at 14.2 V to 200 Ah of iron-phosphate at half charge: I = (14.2 - 13.2) V / R.
// A path of 15 mohm in all gives 66 A (0.33 C), 5 mohm 200 A or what the alternator can.
// The 15 mohm hold the bank's own: (0.066 + 0.034 + 0.022) ohm Ah x 4 / 200 Ah + 2 mohm = 4.4 mohm, and the
// main cable's 0.7 mohm; 9.9 mohm are left for the loop outside. 150 W from midnight to nine take 103 Ah.
Told relay_charge(const std::string& loop_resistance, const std::string& alternator_limit) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Night load"
power = "150 W"
window = "00:00-09:00"

[engine]
coupling = "relay"
alternator_voltage = "14.2 V"
loop_resistance = ")" +
                      loop_resistance + "\"\noutput_limit = \"" + alternator_limit + "\"\n" +
                      winter_stay(1, "drive = \"2 h/day\"\ndrive_from = \"09:05\"\n"));
  return plan.tell("lfp-12v-200ah");
}

// Minutes of the day.
constexpr std::size_t kNine = 540;
constexpr std::size_t kWarmedUp = 560;  // a quarter of an hour into the drive: relaxations have settled
constexpr std::size_t kEvening = 1200;

TEST(RelayCharging, FifteenMilliohmsGiveAThirdOfTheCapacity) {
  const Told told = relay_charge("9.9 mohm", "120 A");
  ASSERT_NEAR(static_cast<double>(told.trace.charge.at(kNine)), 0.49, 0.03);
  // Owners measured 0.33 of the capacity, 66 A; at half charge, on the charging side of the hysteresis, the
  // bank rests at 13.2 to 13.25 V: (14.2 - 13.2) V / 15 mohm.
  EXPECT_NEAR(charging_A(told, kWarmedUp), 66.0, 6.0);
}

TEST(RelayCharging, FiveMilliohmsReachTheAlternatorsLimit) {
  // 0.3 + 5.1 mohm: (14.2 - 13.2) / 5.4 mohm = 185 A is more than this alternator can.
  const Told told = relay_charge("0.3 mohm", "120 A");
  EXPECT_NEAR(charging_A(told, kWarmedUp), 120.0, 0.01);
  EXPECT_LE(told.fared.highest_charge_A, 120.0 + 1e-6);
}

TEST(RelayCharging, MoreResistanceAlwaysMeansLess) {
  double before_A = 1e9;
  for (const char* loop : {"5 mohm", "10 mohm", "20 mohm", "40 mohm", "80 mohm"}) {
    const double now_A = charging_A(relay_charge(loop, "150 A"), kWarmedUp);
    EXPECT_LT(now_A, before_A) << loop;
    before_A = now_A;
  }
  // 80 mohm of thin wire and connectors: (14.2 - 13.2) / 0.085 = 12 A.
  EXPECT_NEAR(before_A, 12.0, 1.5);
}

std::string solar_stay(const std::string& place, const std::string& from, int days) {
  return "\n[[leg]]\n" + place + "\nfrom = " + from + "\ndays = " + std::to_string(days) + "\n";
}

// 200 W of modules with 200 Ah of lead-acid at half charge: 100 Ah x 13.5 V / (200 W x 0.8) = 8.4 kWh/m2 with
// peak tracking. Nowhere in the contiguous United States gives that in a day.
/// Charge on the first evening of a stay in the desert of the south-west, after a night that took half.
std::vector<double> first_evenings(const std::string& from) {
  const std::string place = "lat = 33.4\nlon = -112\nelevation = \"340 m\"\nzone = \"America/Phoenix\"\n";
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "First night"
power = "205 W"
window = "00:00-06:00"

[[solar]]
flat = true
mounting = "ventilated roof"
module = { peak = "200 W", open_circuit = "24.3 V", short_circuit = "10.4 A", at_peak_voltage = "20.2 V", at_peak_current = "9.9 A" }
controller = { kind = "mppt", efficiency = "96 %", output_limit = "20 A", input_limit = "60 V" }
)" + solar_stay(place, from, 1) +
                      "\n[[leg]]\n" + place + "days = 2\noccupied = false\n");
  std::vector<double> evenings;
  for (std::uint64_t season = 0; season < 8; ++season) {
    const Told told = plan.tell("agm-12v-200ah", 1, season);
    EXPECT_NEAR(static_cast<double>(told.fared.daily_low.at(0)), 0.5, 0.02);
    evenings.push_back(static_cast<double>(told.trace.charge.at(kEvening)));
  }
  std::sort(evenings.begin(), evenings.end());
  return evenings;
}

TEST(OneWattForAnAmpereHour, DoesNotRefillHalfABankInADay) {
  // A flat day of the equinox has about 6 kWh/m2: 0.5 + 0.5 x 6 / 8.4 = 0.86.
  const std::vector<double> equinox = first_evenings("2027-09-20");
  EXPECT_NEAR(equinox.at(4), 0.86, 0.06);
  EXPECT_LT(equinox.back(), 0.93);
  // The clearest days of June come to 8.2 and so near the sum, yet short of it; the middle one does not.
  const std::vector<double> june = first_evenings("2027-06-10");
  EXPECT_LT(june.at(4), 0.97);
  EXPECT_GT(june.at(4), equinox.at(4));
  EXPECT_LT(june.back(), 0.998);
}

// A maintenance module of 5 W at 18 V is 0.28 A; times 4 peak sun hours 1.1 Ah a day (not 2.4), with 1 to 2
// in winter 0.3 to 0.6 Ah.
constexpr const char* kSmallModule = R"(
[[load]]
name = "Clock"
power = "1 mW"
always = true

[[solar]]
flat = true
mounting = "open rack"
soiling = "0 %"
other_losses = "0 %"
module = { peak = "5 W", open_circuit = "22 V", short_circuit = "0.31 A", at_peak_voltage = "18 V", at_peak_current = "0.28 A" }
controller = { kind = "pwm", output_limit = "5 A", input_limit = "30 V" }
)";

struct SmallModule {
  double highest_A = 0.0;
  double Ah_per_day = 0.0;
};

SmallModule small_module(const std::string& from) {
  const Practice plan(
      warm_cabin() + kSmallModule +
      solar_stay("lat = 48\nlon = 2\nelevation = \"100 m\"\nzone = \"Europe/Paris\"", from, 28));
  SmallModule seen;
  constexpr int kSeasons = 4;
  for (std::uint64_t season = 0; season < kSeasons; ++season) {
    for (const season::Minute& minute : plan.draw(season).minutes) {
      seen.highest_A = std::max(seen.highest_A, minute.solar_A);
      seen.Ah_per_day += minute.solar_A / 60.0 / 28.0 / kSeasons;
    }
  }
  return seen;
}

TEST(FiveWattModule, GivesAThirdOfAnAmpereAndAnAmpereHourADay) {
  const SmallModule spring = small_module("2027-04-01");  // about 4 kWh/m2 a day there
  // Below its peak voltage a module gives up to its short-circuit current; cloud edges add a fifth for
  // minutes.
  EXPECT_NEAR(spring.highest_A, 0.31, 0.08);
  EXPECT_NEAR(spring.Ah_per_day, 1.1, 0.25);
  EXPECT_LT(spring.Ah_per_day, 2.4 * 0.6);
  const SmallModule winter = small_module("2026-12-01");  // about 1 kWh/m2 a day
  EXPECT_GT(winter.Ah_per_day, 0.15);
  EXPECT_LT(winter.Ah_per_day, 0.6);
}

// A stored motorhome in England in late October, 275 W on the roof, a dull morning at ten: less than 1 A x 13
// V = 13 W, 4.7 % of the label. Elsewhere they say overcast is a tenth of the label. Of 140 such mornings the
// dull sixth must look like that, while the bright sixth does far better.
TEST(DullOctoberMorning, GivesAFewPerCentOfTheLabel) {
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Clock"
power = "1 mW"
always = true

[[solar]]
flat = true
module = { peak = "275 W", open_circuit = "24.3 V", short_circuit = "14.4 A", at_peak_voltage = "20.1 V", at_peak_current = "13.7 A" }
controller = { kind = "mppt", output_limit = "30 A", input_limit = "60 V" }
)" + solar_stay("lat = 52\nlon = 0\nelevation = \"20 m\"\nzone = \"Europe/London\"", "2026-10-25", 7));
  std::vector<double> share;
  for (std::uint64_t season = 0; season < 20; ++season) {
    const season::Series series = plan.draw(season);
    for (std::size_t day = 0; day < 7; ++day) {
      double sum_W = 0.0;
      for (std::size_t m = 0; m < 10; ++m) sum_W += series.minutes.at(day * 1440 + 595 + m).solar_W;
      share.push_back(sum_W / 10.0 / 275.0);
    }
  }
  std::sort(share.begin(), share.end());
  const double dull = share.at(share.size() / 12);         // middle of the dullest sixth
  const double bright = share.at(share.size() * 11 / 12);  // and of the brightest
  EXPECT_GT(dull, 0.01);
  EXPECT_LT(dull, 0.08);
  EXPECT_GT(bright, 3.0 * dull);
  EXPECT_LT(bright, 0.5);  // the sun stands 20 deg high
}

}  // namespace
}  // namespace voltwright::whole
