// Wind, water, and small or large solar arrays on house banks: practitioners' cases, no standard. `tell`
// checks that the energy of every season closes.
#include <cmath>
#include <numbers>

#include "engine/advise/wind_check.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

std::string boat(const std::string& sources, const std::string& leg) {
  return warm_cabin() + R"(
[[load]]
name = "Instruments and fridge"
power = "40 W"
always = true

)" + sources +
         leg;
}

constexpr const char* kOcean = R"(
[[leg]]
place = "At sea"
lat = 30
lon = -40
zone = "UTC"
from = 2027-03-01
days = 20
drive = "10 h/day"
drive_from = "08:00"
)";

constexpr const char* kHill = R"(
[[leg]]
place = "Hut"
lat = 47
lon = 9
elevation = "500 m"
zone = "UTC"
from = 2027-01-01
days = 365
)";

TEST(WindTurbine, ChargesABoatAtSeaFromItsCells) {
  const Practice plan(boat("[wind]\ndiameter = \"1.2 m\"\nrated = \"350 W\"\n", kOcean));
  EXPECT_TRUE(advise::wind_problems(plan.plan(), plan.skies()).empty());
  const Told told = plan.tell("agm-12v-98ah", 2);
  EXPECT_GT(told.fared.ledger.wind_Wh, 0.0);
  for (const float w : told.trace.wind_W) ASSERT_LE(w, 350.0F * 0.9F + 0.01F);
  EXPECT_NE(plan.caution("Turbines without a load", plan.bank("agm-12v-98ah", 2), told), "");
}

TEST(WindTurbine, WantsAMeanOnLand) {
  const std::string turbine = "[wind]\ndiameter = \"1.2 m\"\nrated = \"350 W\"\n";
  const Practice unknown(boat(turbine, kHill));
  const base::Problems problems = advise::wind_problems(unknown.plan(), unknown.skies());
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems.front().what.find("Hut"), std::string::npos);
  EXPECT_EQ(problems.front().field, "wind.mean");
  const Practice given(boat(turbine + "mean = \"5 m/s\"\n", kHill));
  EXPECT_TRUE(advise::wind_problems(given.plan(), given.skies()).empty());
}

// Rayleigh winds of mean v carry 6/pi v^3: 0.5 x 1.16 kg/m3 x 1.131 m2 x 0.3 x 6/pi x 125 = 47 W on average
// through a rotor of 1.2 m at 5 m/s with no limit near. Hours of one year scatter by 7 % (hour to hour 0.9).
TEST(WindTurbine, TakesTheMeanCubeOfARayleighWind) {
  const Practice plan(boat(R"([wind]
diameter = "1.2 m"
rated = "20 kW"
cut_in = "0.5 m/s"
cut_out = "60 m/s"
efficiency = "100 %"
mean = "5 m/s"
)",
                           kHill));
  constexpr int kSeasons = 6;
  double sum_W = 0.0;
  double wanted_W = 0.0;
  for (std::uint64_t season = 0; season < kSeasons; ++season) {
    const season::Series series = plan.draw(season);
    double year_W = 0.0;
    double density = 0.0;
    for (std::size_t i = 0; i < series.minutes.size(); ++i) {
      year_W += static_cast<double>(series.minutes[i].wind_W);
      const double kelvin = 273.15 + static_cast<double>(series.outside_C[i]);
      density += 101325.0 * std::pow(1.0 - 2.25577e-5 * 500.0, 5.25588) / (287.05 * kelvin);
    }
    const auto n = static_cast<double>(series.minutes.size());
    sum_W += year_W / n / kSeasons;
    const double area_m2 = std::numbers::pi * 0.36;
    wanted_W += 0.5 * density / n * area_m2 * 0.3 * 6.0 / std::numbers::pi * 125.0 / kSeasons;
  }
  EXPECT_NEAR(sum_W, wanted_W, 0.09 * wanted_W);  // three times 7 % over the root of six
}

// 100 W at 6 kn go with the cube of the speed: (5/6)^3 leaves 58 W at 5 kn (common practice, no source).
TEST(TowedGenerator, TurnsWhileTheBoatIsUnderWay) {
  const Told told =
      Practice(boat("[water]\npower = \"100 W\"\nat_speed = \"6 kn\"\nboat_speed = \"5 kn\"\n", kOcean))
          .tell("agm-12v-98ah", 2);
  int turning_min = 0;
  for (const season::Minute& m : told.series.minutes) {
    if (m.water_W > 0.0F) {
      ++turning_min;
      ASSERT_NEAR(static_cast<double>(m.water_W), 57.87, 0.01);
    }
  }
  EXPECT_EQ(turning_min, 20 * 10 * 60);
  EXPECT_GT(told.fared.ledger.water_Wh, 0.0);
  EXPECT_LE(told.fared.ledger.water_Wh, 57.88 * 200.0);
}

// Every source at once, on lithium and lead-acid; the ledger closes to 1e-9 (checked by `tell`).
TEST(EverySource, ClosesItsLedger) {
  const Practice plan(boat(R"([wind]
diameter = "1.2 m"
rated = "350 W"

[water]
power = "100 W"
at_speed = "6 kn"
boat_speed = "6 kn"

[engine]
output_limit = "30 A"
fuel = "diesel"
alternator = { rated = "80 A" }
derating = { place = "engine bay" }

[mains]
output_limit = "30 A"

[generator]
rated = "1 kW"
start_below = "60 %"
quiet = "22:00-08:00"

[[load]]
name = "Watermaker"
power = "400 W"
window = "18:00-21:00"

)",
                           std::string(kOcean) + "shore = \"03:00-04:00\"\n"));
  for (const char* battery : {"lfp-12v-100ah", "agm-12v-98ah", "flooded-12v-100ah"}) {
    for (std::uint64_t season = 0; season < 3; ++season) {
      const season::Ledger<double> l = plan.tell(battery, 1, season).fared.ledger;
      EXPECT_GT(l.wind_Wh, 0.0) << battery;
      EXPECT_GT(l.water_Wh, 0.0) << battery;
      EXPECT_GT(l.engine_Wh, 0.0) << battery;
      EXPECT_GT(l.mains_Wh, 0.0) << battery;
      EXPECT_GT(l.generator_Wh, 0.0) << battery;
    }
  }
}

}  // namespace
}  // namespace voltwright::whole
