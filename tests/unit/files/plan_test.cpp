#include "files/plan.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

using units::as_amperes;
using units::as_hours;
using units::as_volts;
using units::as_watts;

advise::Plan read_good(std::string_view text) {
  const base::Result<ReadPlan> read = read_small(text);
  if (!read.ok()) {
    for (const base::Problem& p : read.problems()) ADD_FAILURE() << base::to_text(p);
    return {};
  }
  return read.value().plan;
}

TEST(Plan, ReadsTheWeatherModel) {
  EXPECT_EQ(read_good(full_plan()).daily_model, sky::DailyModel::kMatrices);
  const advise::Plan plan = read_good("weather_model = \"exponential\"\n" + full_plan());
  EXPECT_EQ(plan.daily_model, sky::DailyModel::kExponential);
  EXPECT_EQ(plan.diffuse_model, sky::DiffuseModel::kErbs);
  EXPECT_EQ(read_good("diffuse_model = \"engerer2\"\n" + full_plan()).diffuse_model,
            sky::DiffuseModel::kEngerer);
}

TEST(Plan, ReadsTheTopLevelAndLimits) {
  const advise::Plan plan = read_good(full_plan());
  EXPECT_EQ(plan.name, "Winter on the coast");
  EXPECT_EQ(plan.seed, 7U);
  EXPECT_EQ(plan.seasons, 200);
  EXPECT_DOUBLE_EQ(as_volts(plan.system_voltage), 12.0);
  EXPECT_EQ(plan.currency, "EUR");
  EXPECT_EQ(plan.depth_rule, advise::DepthRule::kPractice);
  EXPECT_EQ(plan.preference, advise::Preference::kCostPerYear);
  ASSERT_TRUE(plan.limits.mass && plan.limits.volume && plan.limits.price && plan.limits.life);
  EXPECT_DOUBLE_EQ(units::as_kilograms(*plan.limits.mass), 95.0);
  EXPECT_DOUBLE_EQ(units::as_litres(*plan.limits.volume), 60.0);
  EXPECT_DOUBLE_EQ(units::as_money(*plan.limits.price), 3000.0);
  EXPECT_DOUBLE_EQ(units::as_years(*plan.limits.life), 10.0);
  EXPECT_DOUBLE_EQ(units::as_fraction(plan.limits.chance_of_shortfall), 0.05);
}

TEST(Plan, ReadsMoney) {
  EXPECT_FALSE(read_good(short_plan()).money);
  const advise::Plan plan = read_good(full_plan());
  ASSERT_TRUE(plan.money);
  EXPECT_NEAR(plan.money->horizon_years, 12.0, 1e-12);
  EXPECT_DOUBLE_EQ(plan.money->per_dollar.value_or(0.0), 0.92);
  ASSERT_TRUE(plan.money->mains_per_kWh);
  EXPECT_DOUBLE_EQ(plan.money->mains_per_kWh->max, 0.45);
  EXPECT_DOUBLE_EQ(plan.money->km_per_year, 8000.0);
  ASSERT_EQ(plan.money->prices.size(), 1U);
  EXPECT_DOUBLE_EQ(plan.money->prices[0].price.typical, 289.0);
  ASSERT_EQ(plan.money->scrap.size(), 1U);
}

TEST(Plan, MoneyInAnotherCurrencyIsAProblem) {
  const base::Result<ReadPlan> read = read_small(short_plan() + "[money]\nfuel = \"1.80 EUR/L\"\n");
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems().front().where.line, 19);
}

TEST(Plan, ReadsBankCablesAndInverter) {
  const advise::Plan plan = read_good(full_plan());
  EXPECT_EQ(plan.surroundings.location, bank::Location::kHeatedBox);
  EXPECT_DOUBLE_EQ(as_watts(plan.surroundings.heater_power), 60.0);
  EXPECT_DOUBLE_EQ(plan.surroundings.heater_below.as_celsius(), 5.0);
  EXPECT_DOUBLE_EQ(units::as_watts_per_kelvin(plan.surroundings.box_loss), 0.8);
  EXPECT_DOUBLE_EQ(units::as_metres(plan.main_cable.one_way), 1.5);
  EXPECT_NEAR(units::as_square_millimetres(plan.main_cable.area), 50.0, 1e-9);
  // 1/0 AWG: 53.5 mm2 (ASTM B258, three digits).
  EXPECT_NEAR(units::as_square_millimetres(plan.inverter_cable.area), 53.5, 0.05);
  ASSERT_TRUE(plan.inverter);
  EXPECT_DOUBLE_EQ(as_watts(plan.inverter->rated), 2000.0);
  EXPECT_DOUBLE_EQ(as_watts(plan.inverter->surge), 4000.0);
  EXPECT_DOUBLE_EQ(as_watts(plan.inverter->idle), 18.0);
  EXPECT_DOUBLE_EQ(plan.inverter->linear_loss, 0.03);
  EXPECT_DOUBLE_EQ(as_volts(plan.inverter->restart), 12.5);
  EXPECT_TRUE(plan.inverter->off_when_unused);
}

TEST(Plan, ReadsEveryPatternOfLoads) {
  const advise::Plan plan = read_good(full_plan());
  ASSERT_EQ(plan.loads.size(), 6U);
  const auto& lights = plan.loads[0];
  EXPECT_EQ(lights.pattern, demand::Pattern::kHours);
  EXPECT_DOUBLE_EQ(as_watts(lights.power), 5.0);
  EXPECT_DOUBLE_EQ(lights.count, 6.0);
  EXPECT_DOUBLE_EQ(as_hours(lights.hours_per_day), 4.0);
  EXPECT_EQ(lights.window.from_s, 18 * 3600);
  EXPECT_EQ(plan.loads[1].pattern, demand::Pattern::kAlwaysOn);
  EXPECT_EQ(plan.loads[1].need, demand::Need::kComfort);
  const auto& pump = plan.loads[2];
  EXPECT_EQ(pump.pattern, demand::Pattern::kEvents);
  EXPECT_DOUBLE_EQ(pump.events_per_day, 12.0);
  EXPECT_DOUBLE_EQ(units::as_seconds(pump.event_length), 60.0);
  EXPECT_DOUBLE_EQ(pump.surge_factor, 2.0);
  EXPECT_EQ(pump.window.to_s, 22 * 3600);
  const auto& fridge = plan.loads[3];
  EXPECT_EQ(fridge.pattern, demand::Pattern::kTemperature);
  EXPECT_EQ(fridge.presence, demand::Presence::kAlways);
  EXPECT_DOUBLE_EQ(fridge.cooling.cop_at_25C, 1.6);
  EXPECT_EQ(plan.loads[4].feed, demand::Feed::kInverter);
  EXPECT_EQ(plan.loads[5].pattern, demand::Pattern::kWindow);
  EXPECT_EQ(plan.loads[5].window.from_s, 22 * 3600);
}

TEST(Plan, TakesAppliancesFromTheCatalogueAndOverridesThem) {
  const std::string text =
      short_plan() +
      "[[load]]\nappliance = \"water-pump\"\n"
      "[[load]]\nappliance = \"water-pump\"\nname = \"Bilge\"\npower = \"90 W\"\nevents = \"4 "
      "/day\"\n[[load]]\nappliance = \"fridge-50l\"\nalways = true\n";
  const advise::Plan plan = read_good(text);
  ASSERT_EQ(plan.loads.size(), 4U);
  EXPECT_EQ(plan.loads[1].name, "Water pump");
  EXPECT_DOUBLE_EQ(as_watts(plan.loads[1].power), 60.0);
  EXPECT_DOUBLE_EQ(plan.loads[1].events_per_day, 12.0);
  EXPECT_EQ(plan.loads[2].name, "Bilge");
  EXPECT_DOUBLE_EQ(as_watts(plan.loads[2].power), 90.0);
  EXPECT_DOUBLE_EQ(plan.loads[2].events_per_day, 4.0);
  EXPECT_DOUBLE_EQ(units::as_seconds(plan.loads[2].event_length), 60.0);
  EXPECT_EQ(plan.loads[3].pattern, demand::Pattern::kAlwaysOn);
}

TEST(Plan, ReadsSources) {
  const advise::Plan plan = read_good(full_plan());
  ASSERT_EQ(plan.arrays.size(), 1U);
  const auto& roof = plan.arrays[0];
  EXPECT_EQ(roof.in_parallel, 2);
  EXPECT_EQ(roof.mounting, sky::Mounting::kVentilatedRoof);
  EXPECT_DOUBLE_EQ(roof.tilt_deg, 0.0);
  EXPECT_DOUBLE_EQ(as_watts(roof.module.peak), 175.0);
  EXPECT_NEAR(roof.module.power_per_K, -0.0035, 1e-15);
  EXPECT_DOUBLE_EQ(as_amperes(roof.output_limit), 30.0);
  EXPECT_DOUBLE_EQ(as_volts(roof.input_limit), 100.0);
  ASSERT_TRUE(plan.engine && plan.mains);
  EXPECT_EQ(plan.engine->coupling, supply::EngineCoupling::kDcDc);
  EXPECT_DOUBLE_EQ(plan.engine->efficiency, 0.88);
  EXPECT_DOUBLE_EQ(as_amperes(plan.mains->output_limit), 25.0);
}

TEST(Plan, ReadsLegsInCivilTime) {
  const advise::Plan plan = read_good(full_plan());
  ASSERT_EQ(plan.legs.size(), 2U);
  // Oslo keeps summer time until 25 October 2026 (IANA time-zone database, rule EU).
  EXPECT_EQ(plan.legs[0].start_utc_s, 1792447200);  // 2026-10-19 22:00 UTC
  EXPECT_EQ(plan.legs[0].end_utc_s, 1793487600);    // 2026-10-31 23:00 UTC
  EXPECT_EQ(plan.legs[0].clock.offset_s(plan.legs[0].start_utc_s), 7200);
  EXPECT_EQ(plan.legs[0].clock.offset_s(plan.legs[0].end_utc_s), 3600);
  EXPECT_EQ(plan.legs[1].start_utc_s, plan.legs[0].end_utc_s);
  EXPECT_EQ(plan.legs[1].end_utc_s - plan.legs[1].start_utc_s, 45 * 86400);
  EXPECT_DOUBLE_EQ(as_hours(plan.legs[1].drive_per_day), 1.5);
  EXPECT_EQ(plan.legs[1].drive_from_s, 9 * 3600);
  EXPECT_EQ(plan.legs[1].weather_file, "north.epw");
  ASSERT_TRUE(plan.legs[0].shore_power);
  EXPECT_EQ(plan.legs[0].shore_power->from_s, 22 * 3600);
  EXPECT_FALSE(plan.legs[1].shore_power);
  EXPECT_DOUBLE_EQ(plan.legs[0].place.site.elevation_m, 20.0);
}

TEST(Plan, LegsOfDifferentZonesMeetWithoutGap) {
  const std::string text = short_plan() +
                           "[[leg]]\nlat = 60.17\nlon = 24.94\nzone = \"Europe/Helsinki\"\ndays = 10\n"
                           "[[leg]]\nlat = 51.5\nlon = 0\nzone = \"Europe/London\"\ndays = 10\n";
  const advise::Plan plan = read_good(text);
  ASSERT_EQ(plan.legs.size(), 3U);
  EXPECT_EQ(plan.legs[0].end_utc_s, plan.legs[1].start_utc_s);
  EXPECT_EQ(plan.legs[1].end_utc_s, plan.legs[2].start_utc_s);
  EXPECT_EQ(plan.legs[1].end_utc_s - plan.legs[1].start_utc_s, 10 * 86400 + 2 * 3600);
}

TEST(Plan, ReadsIncumbentAndCandidates) {
  const advise::Plan plan = read_good(full_plan());
  ASSERT_TRUE(plan.incumbent);
  EXPECT_EQ(plan.incumbent->battery, "agm-12v-98ah");
  EXPECT_EQ(plan.incumbent->in_series, 1);
  EXPECT_EQ(plan.incumbent->in_parallel, 2);
  EXPECT_DOUBLE_EQ(plan.incumbent->age_fraction, 0.15);
  EXPECT_EQ(plan.candidates.chemistries, (std::vector<std::string>{"lfp", "agm"}));
  EXPECT_TRUE(plan.candidates.batteries.empty());
  EXPECT_EQ(plan.candidates.max_parallel, 6);
}

TEST(Plan, DefaultsStayWhereKeysAreAbsent) {
  const advise::Plan plan = read_good(short_plan());
  const advise::Plan blank;
  EXPECT_EQ(plan.name, "plan.toml");
  EXPECT_EQ(plan.seasons, blank.seasons);
  EXPECT_EQ(plan.currency, blank.currency);
  EXPECT_EQ(plan.surroundings.location, blank.surroundings.location);
  EXPECT_EQ(plan.candidates.max_parallel, blank.candidates.max_parallel);
  EXPECT_FALSE(plan.inverter || plan.engine || plan.mains || plan.incumbent);
}

TEST(Plan, MarkIsAHashOfTheText) {
  // FNV-1a, 64 bits, after the published definition: worked with an independent script.
  const base::Result<ReadPlan> read = read_small(short_plan());
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read.value().mark, "2d0a0951");
  EXPECT_NE(read_small(short_plan() + "\n").value().mark, read.value().mark);
}

TEST(Plan, WarnsOfWhatIsUnused) {
  const base::Result<ReadPlan> read = read_small(short_plan());
  ASSERT_TRUE(read.ok());
  ASSERT_EQ(read.value().warnings.size(), 1U);
  EXPECT_EQ(read.value().warnings[0].what, "Nothing charges the bank.");
  EXPECT_TRUE(read_small(full_plan()).value().warnings.empty());
}

TEST(Plan, LineEndsAndByteOrderMarkMakeNoDifference) {
  const std::string text = short_plan();
  std::string windows = "\xEF\xBB\xBF";
  std::string carriage;
  for (const char c : text) {
    if (c == '\n') windows += '\r';
    windows += c;
    carriage += c == '\n' ? '\r' : c;
  }
  EXPECT_EQ(read_good(windows).legs.size(), 1U);
  EXPECT_EQ(read_good(carriage).legs.size(), 1U);
  const base::Result<ReadPlan> broken = read_small(carriage + "sesons = 4\r");
  ASSERT_FALSE(broken.ok());
  EXPECT_EQ(broken.problems().front().where.line, 18);
}

TEST(Plan, ExampleOfTheFormatPageIsTheFullPlan) {
  const std::ifstream page(VW_SOURCE_DIR "/docs/formats/plan.md");
  std::ostringstream text;
  text << page.rdbuf();
  EXPECT_NE(text.str().find("```toml\n" + full_plan() + "```\n"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::files
