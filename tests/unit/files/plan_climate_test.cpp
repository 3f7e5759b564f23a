// Monthly figures of the user in place of those of the climate tables.
#include <gtest/gtest.h>

#include "files/climate_override.h"
#include "files/daylight.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

constexpr double kOslo_deg = 59.91;

const ClimateTable& table() {
  static const ClimateTable climates = std::move(ClimateTable::built_in()).value();
  return climates;
}

sky::ClimateOverride read(const std::string& text) {
  const auto given = read_climate_override(text, "own.toml", kOslo_deg);
  EXPECT_TRUE(given.ok()) << (given.ok() ? "" : base::to_text(given.problems().front()));
  return given.ok() ? given.value() : sky::ClimateOverride{};
}

std::string first_problem(const std::string& text) {
  const auto given = read_climate_override(text, "own.toml", kOslo_deg);
  EXPECT_FALSE(given.ok()) << text;
  return given.ok() ? std::string() : base::to_text(given.problems().front());
}

TEST(PlanClimate, ReplacesTheMonthsThatAreGiven) {
  const sky::Site oslo{kOslo_deg, 10.75, 20.0};
  const auto given = read(
      "temperature_C = { jan = -20, dec = -10.5 }\n"
      "wind_m_s = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]\n");
  const auto plain = climate_of(table(), oslo, {});
  const auto own = climate_of(table(), oslo, given);
  ASSERT_TRUE(plain.ok() && own.ok());
  EXPECT_EQ(own.value().temperature_C[0], -20.0);
  EXPECT_EQ(own.value().temperature_C[1], plain.value().temperature_C[1]);
  EXPECT_EQ(own.value().temperature_C[11], -10.5);
  EXPECT_EQ(own.value().wind_m_s[6], 7.0);
  EXPECT_EQ(own.value().clearness, plain.value().clearness);
  EXPECT_EQ(own.value().origin, plain.value().origin +
                                    " Override by the user, in place of the above: mean temperature of Jan, "
                                    "Dec; wind of all months.");
}

TEST(PlanClimate, TurnsLightIntoClearness) {
  const auto given = read("ground_kWh_m2_day = { jan = 0.5, may = 5.2, jun = 5.8 }");
  const auto above_air = monthly_daylight(kOslo_deg).horizontal_kWh_m2_day;
  EXPECT_DOUBLE_EQ(given.clearness[5].value_or(0.0), 5.8 / above_air[5]);
  EXPECT_FALSE(given.clearness[6]);
  EXPECT_EQ(override_words(given), "clearness of Jan, May to Jun");
}

TEST(PlanClimate, LeavesPolarNightToTheTables) {
  const auto given = read_climate_override(
      "ground_kWh_m2_day = [0, 0.4, 1.6, 3.6, 4.8, 5, 4.5, 3, 1.7, 0.6, 0, 0]", "own.toml", 69.65);
  ASSERT_TRUE(given.ok());
  EXPECT_EQ(override_words(given.value()), "clearness of Feb to Oct");
}

TEST(PlanClimate, SomeMonthsAreNotEnoughWhereNoStationIsNear) {
  const sky::Site nowhere{-66.0, -120.0, 0.0};
  EXPECT_FALSE(climate_of(table(), nowhere, read("temperature_C = { jan = -2 }")).ok());
}

TEST(PlanClimate, AssumesTheRestWhereNoStationIsNear) {
  const sky::Site nowhere{-66.0, -120.0, 0.0};
  const auto own = climate_of(table(), nowhere,
                              read("clearness = [0.5,0.5,0.5,0.5,0.4,0.4,0.4,0.5,0.5,0.5,0.5,0.5]\n"
                                   "temperature_C = [-1,-2,-5,-8,-11,-14,-16,-16,-14,-10,-6,-2]"));
  ASSERT_TRUE(own.ok());
  EXPECT_EQ(own.value().temperature_C[6], -16.0);
  EXPECT_GT(own.value().linke_turbidity[0], 0.0);
  EXPECT_NE(own.value().origin.find("assumptions"), std::string::npos);
}

TEST(PlanClimate, RefusesWhatCannotBe) {
  EXPECT_NE(first_problem("clearness = [0.5, 0.5]").find("2 values"), std::string::npos);
  EXPECT_NE(first_problem("clearness = { jan = 0.95 }").find("0.1 to 0.8"), std::string::npos);
  EXPECT_NE(first_problem("temperature_C = { january = 3 }").find("Did you mean"), std::string::npos);
  EXPECT_NE(first_problem("ground_kWh_m2_day = { dec = 5 }").find("does not fit dec"), std::string::npos);
  EXPECT_NE(first_problem("clearness = { jan = 0.3 }\nground_kWh_m2_day = { jan = 0.3 }").find("Keep one"),
            std::string::npos);
  EXPECT_NE(first_problem("wind = { jan = 3 }").find("wind_m_s"), std::string::npos);
  EXPECT_NE(first_problem("wind_m_s = \"3 m/s\"").find("each month"), std::string::npos);
  EXPECT_NE(first_problem("wind_m_s = [1,2,3,4,5,6,7,8,9,10,11,-1]").find("dec"), std::string::npos);
}

TEST(PlanClimate, BelongsToItsLeg) {
  std::string text = full_plan();
  const std::string before = "\n[[leg]]\nlat = 69.65";
  text.insert(text.find(before), "\n[leg.climate]\ntemperature_C = { oct = 3.5 }\n");
  const auto plan = read_small(text);
  ASSERT_TRUE(plan.ok()) << base::to_text(plan.problems().front());
  ASSERT_EQ(plan.value().plan.legs.size(), 2U);
  EXPECT_EQ(plan.value().plan.legs[0].climate.temperature_C[9], 3.5);
  EXPECT_EQ(override_words(plan.value().plan.legs[1].climate), "");
}

TEST(PlanClimate, WarnsBesideAWeatherFile) {
  std::string text = full_plan();
  const std::string weather = "weather = \"north.epw\"\n";
  text.insert(text.find(weather) + weather.size(), "climate = { temperature_C = { oct = 3.5 } }\n");
  const auto plan = read_small(text);
  ASSERT_TRUE(plan.ok()) << base::to_text(plan.problems().front());
  ASSERT_FALSE(plan.value().warnings.empty());
  EXPECT_EQ(plan.value().warnings.back().field, "leg[2].climate");
}

}  // namespace
}  // namespace voltwright::files
