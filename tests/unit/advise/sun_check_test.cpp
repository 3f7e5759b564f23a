// Findings on solar arrays: strings in the cold, modules too low, snow.
#include "engine/advise/sun_check.h"

#include <gtest/gtest.h>

namespace voltwright::advise {
namespace {

constexpr std::int64_t kJanuary2026_s = 1767225600;
constexpr std::int64_t kJuly2026_s = kJanuary2026_s + 181 * 86400;

struct Case {
  Plan plan;
  std::vector<season::LegSky> skies;
};

Case stay(std::int64_t start_s, double tilt_deg) {
  Case made;
  supply::SolarArray array;
  array.name = "Roof";
  array.in_series = 2;
  array.tilt_deg = tilt_deg;
  array.module.open_circuit = units::volts(22.0);
  array.module.at_peak_voltage = units::volts(18.0);
  array.module.voltage_per_K = -0.003;
  array.input_limit = units::volts(50.0);
  made.plan.arrays.push_back(array);
  made.plan.system_voltage = units::volts(12.0);
  journey::Leg leg;
  leg.start_utc_s = start_s;
  leg.end_utc_s = start_s + 20 * 86400;
  made.plan.legs.push_back(leg);
  season::LegSky sky;
  sky.climate.temperature_C = {-5, -4, 0, 6, 11, 15, 17, 16, 11, 6, 0, -4};
  sky.climate.daily_range_K.fill(8.0);
  made.skies.push_back(sky);
  return made;
}

TEST(SunCheck, EstimatesTheColdestAir) {
  // -5 - 8 / 2 - 5 - 0.65 (17 + 5) = -28.3; in July 17 - 4 - 5 - 14.3 = -6.3 (the model's own sum).
  const Case winter = stay(kJanuary2026_s, 0.0);
  EXPECT_NEAR(coldest_air_C(winter.plan.legs, winter.skies), -28.3, 1e-9);
  const Case summer = stay(kJuly2026_s, 0.0);
  EXPECT_NEAR(coldest_air_C(summer.plan.legs, summer.skies), -6.3, 1e-9);
}

TEST(SunCheck, StringAboveTheInputLimitIsACaution) {
  Case c = stay(kJanuary2026_s, 0.0);
  // 2 x 22 V x (1 + 0.003 x 45 K) = 49.94 V at -20 degC, x 1.135 as data sheets have it; 50.07 V at -21.
  c.plan.arrays[0].record_cold = units::Temperature::celsius(-20.0);
  SunFinding cold = sun_findings(c.plan, c.skies).at(0);
  EXPECT_NEAR(cold.value, 49.94, 1e-9);
  EXPECT_TRUE(cold.holds);
  c.plan.arrays[0].record_cold = units::Temperature::celsius(-21.0);
  const std::vector<SunFinding> findings = sun_findings(c.plan, c.skies);
  cold = findings.at(0);
  EXPECT_NEAR(cold.value, 50.072, 1e-9);
  EXPECT_FALSE(cold.holds);
  EXPECT_NE(cold.working.find("= 50.1"), std::string::npos) << cold.working;
  EXPECT_NE(sun_cautions(findings).at(0).text.find("arc"), std::string::npos);
}

TEST(SunCheck, SnowNeedsFrostAndALowTilt) {
  const auto snow_holds = [](const Case& c) { return sun_findings(c.plan, c.skies).at(1).holds; };
  EXPECT_FALSE(snow_holds(stay(kJanuary2026_s, 10.0)));
  EXPECT_TRUE(snow_holds(stay(kJanuary2026_s, 60.0)));
  EXPECT_TRUE(snow_holds(stay(kJuly2026_s, 10.0)));
}

TEST(SunCheck, OneModuleOf36CellsIsTooLowFor24V) {
  Case c = stay(kJuly2026_s, 30.0);
  EXPECT_TRUE(sun_findings(c.plan, c.skies).at(2).holds);
  c.plan.arrays[0].in_series = 1;
  c.plan.system_voltage = units::volts(24.0);
  EXPECT_FALSE(sun_findings(c.plan, c.skies).at(2).holds);
}

TEST(SunCheck, NoLegKnowsNoCold) {
  EXPECT_EQ(coldest_air_C({}, {}), 25.0);
  EXPECT_EQ(coldest_month_C({}, {}), 25.0);
}

}  // namespace
}  // namespace voltwright::advise
