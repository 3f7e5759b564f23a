// Keys of plans that set chargers, far loads, heaters on surplus, controlled alternators and aged banks: what
// they read.
#include <gtest/gtest.h>

#include <string>

#include "tests/unit/files/plan_charging_fixture.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

using units::as_amperes;
using units::as_hours;
using units::as_ohms;
using units::as_volts;

advise::Plan read_good(std::string_view text) {
  const base::Result<ReadPlan> read = read_with_stages(text);
  if (!read.ok()) {
    for (const base::Problem& p : read.problems()) ADD_FAILURE() << base::to_text(p);
    return {};
  }
  return read.value().plan;
}

TEST(PlanChargers, ReadVoltagesSetByHand) {
  const advise::Plan plan = read_good(charging_plan());
  ASSERT_TRUE(plan.solar_charging.profile);
  const supply::ChargeProfile& profile = *plan.solar_charging.profile;
  EXPECT_EQ(profile.of, "");
  EXPECT_DOUBLE_EQ(as_volts(profile.absorption), 14.3);
  EXPECT_DOUBLE_EQ(as_volts(profile.float_voltage), 13.6);
  EXPECT_DOUBLE_EQ(profile.compensation_V_per_K, -0.024);
  EXPECT_DOUBLE_EQ(as_hours(profile.absorption_at_most), 1.5);
  EXPECT_DOUBLE_EQ(as_ohms(plan.solar_charging.lead), 0.003);
  EXPECT_FALSE(plan.solar_charging.wakes);
  EXPECT_DOUBLE_EQ(as_hours(plan.solar_charging.equalise_every), 0.0);
}

TEST(PlanChargers, ReadProfilesOfOtherChemistries) {
  const advise::Plan plan = read_good(charging_plan());
  ASSERT_TRUE(plan.engine && plan.engine->regulation.profile);
  const supply::ChargeProfile& lead = *plan.engine->regulation.profile;
  EXPECT_EQ(lead.of, "agm");
  EXPECT_DOUBLE_EQ(as_volts(lead.absorption), 6 * 2.42);
  EXPECT_DOUBLE_EQ(as_volts(lead.float_voltage), 6 * 2.25);
  EXPECT_DOUBLE_EQ(lead.compensation_V_per_K, 6 * -0.0037);
  EXPECT_DOUBLE_EQ(as_hours(lead.absorption_at_most), 4.0);
  EXPECT_TRUE(plan.engine->regulation.wakes);
  EXPECT_DOUBLE_EQ(as_hours(plan.engine->regulation.equalise_every), 720.0);
  ASSERT_TRUE(plan.mains && plan.mains->regulation.profile);
  const supply::ChargeProfile& lithium = *plan.mains->regulation.profile;
  EXPECT_DOUBLE_EQ(as_volts(lithium.absorption), 4 * 3.55);
  EXPECT_DOUBLE_EQ(as_volts(lithium.float_voltage), 0.0);
  EXPECT_FALSE(plan.mains->regulation.wakes);
}

TEST(PlanChargers, ProfilesGrowWithTheSystemVoltage) {
  std::string text = charging_plan();
  const std::string own = "absorption = \"14.3 V\"\nfloat = \"13.6 V\"\n";
  text.replace(text.find(own), own.size(), "profile = \"lfp\"\n");
  text.replace(text.find("cut_off = \"10.5 V\"\nrestart = \"12.6 V\"\n"), 37, "");
  const advise::Plan plan = read_good("system_voltage = \"24 V\"\n" + text);
  ASSERT_TRUE(plan.engine && plan.engine->regulation.profile);
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->regulation.profile->absorption), 12 * 2.42);
}

// A value by hand beside a profile keeps the rest of the profile, which is then nobody's own.
TEST(PlanChargers, AValueByHandChangesAProfile) {
  std::string text = charging_plan();
  text.replace(text.find("profile = \"agm\""), 15, "profile = \"agm\"\nabsorption_at_most = \"30 min\"");
  const advise::Plan plan = read_good(text);
  ASSERT_TRUE(plan.engine && plan.engine->regulation.profile);
  EXPECT_EQ(plan.engine->regulation.profile->of, "");
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->regulation.profile->absorption), 6 * 2.42);
  EXPECT_DOUBLE_EQ(as_hours(plan.engine->regulation.profile->absorption_at_most), 0.5);
}

TEST(PlanChargers, WithoutASectionHaveTheDefaults) {
  const advise::Plan plan = read_good(full_plan());
  ASSERT_TRUE(plan.engine && plan.mains);
  EXPECT_FALSE(plan.solar_charging.profile.has_value());
  EXPECT_FALSE(plan.engine->regulation.profile.has_value());
  EXPECT_DOUBLE_EQ(as_ohms(plan.mains->regulation.lead), 0.001);
  EXPECT_TRUE(plan.mains->regulation.wakes);
  EXPECT_FALSE(plan.engine->regulation.wakes);
  EXPECT_FALSE(plan.solar_charging.wakes);
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->input_lock_out), 0.0);
  EXPECT_DOUBLE_EQ(plan.engine->low_share, 0.0);
  EXPECT_FALSE(plan.surroundings.heater_on_surplus);
  for (const demand::Load& load : plan.loads) EXPECT_FALSE(load.far.has_value()) << load.name;
}

TEST(PlanChargers, ReadControlledAlternatorAndLockOut) {
  const advise::Plan plan = read_good(charging_plan());
  ASSERT_TRUE(plan.engine);
  EXPECT_DOUBLE_EQ(as_amperes(plan.engine->output_limit), 25.0);
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->alternator_voltage), 14.4);
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->alternator_low_voltage), 12.6);
  EXPECT_NEAR(plan.engine->low_share, 0.6, 1e-12);
  EXPECT_DOUBLE_EQ(as_volts(plan.engine->input_lock_out), 11.5);
  EXPECT_DOUBLE_EQ(as_ohms(plan.engine->loop_resistance), 0.040);
}

TEST(PlanBank, ReadsHeaterSourceAndLagsOfTheBay) {
  const advise::Plan plan = read_good(charging_plan());
  EXPECT_TRUE(plan.surroundings.heater_on_surplus);
  EXPECT_DOUBLE_EQ(units::as_seconds(plan.surroundings.engine_bay_warms), 900.0);
  EXPECT_DOUBLE_EQ(units::as_seconds(plan.surroundings.engine_bay_cools), 7200.0);
}

TEST(PlanIncumbent, ReadsHowTheBankHasAged) {
  const advise::Plan plan = read_good(charging_plan());
  ASSERT_TRUE(plan.incumbent);
  EXPECT_NEAR(plan.incumbent->weakest_below, 0.04, 1e-12);
  EXPECT_NEAR(plan.incumbent->ahead, 0.015, 1e-12);
  EXPECT_DOUBLE_EQ(plan.incumbent->resistance_factor, 2.5);
  const advise::Plan plain = read_good(full_plan());
  ASSERT_TRUE(plain.incumbent);
  EXPECT_DOUBLE_EQ(plain.incumbent->weakest_below, 0.0);
  EXPECT_DOUBLE_EQ(plain.incumbent->ahead, 0.0);
  EXPECT_DOUBLE_EQ(plain.incumbent->resistance_factor, 1.0);
}

TEST(PlanFarLoads, HaveCableContactsAndCutOff) {
  const advise::Plan plan = read_good(charging_plan());
  ASSERT_EQ(plan.loads.size(), 2U);
  EXPECT_FALSE(plan.loads[0].far.has_value());
  ASSERT_TRUE(plan.loads[1].far.has_value());
  const demand::FarFeed& far = *plan.loads[1].far;
  // 2 x 5 m x 0.017241 ohm mm2/m / 2.5 mm2 = 69 mohm of copper, and the contacts.
  EXPECT_NEAR(as_ohms(far.loop), 0.068964 + 0.020, 1e-9);
  EXPECT_DOUBLE_EQ(as_volts(far.cut_off), 10.5);
  EXPECT_DOUBLE_EQ(as_volts(far.restart), 12.6);
}

TEST(PlanFarLoads, MayHaveOnlyACutOffAndRestartAVoltAboveIt) {
  const advise::Plan plan = read_good(
      short_plan() + "[[load]]\nname = \"Radio\"\npower = \"20 W\"\nalways = true\ncut_off = \"11 V\"\n");
  ASSERT_EQ(plan.loads.size(), 2U);
  ASSERT_TRUE(plan.loads[1].far.has_value());
  EXPECT_DOUBLE_EQ(as_ohms(plan.loads[1].far->loop), 0.0);
  EXPECT_DOUBLE_EQ(as_volts(plan.loads[1].far->restart), 12.0);
}

}  // namespace
}  // namespace voltwright::files
