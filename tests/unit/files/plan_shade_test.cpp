// Horizon, shade and sky model of an array as a plan names them.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "engine/sky/angle.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

/// The full plan with more keys of its array.
base::Result<ReadPlan> with_keys(const std::string& keys) {
  std::string text = full_plan();
  const std::string name = "name = \"Roof\"\n";
  text.replace(text.find(name), name.size(), name + keys + "\n");
  return read_small(text);
}

float beam(const supply::SolarArray& array, double azimuth_deg, double elevation_deg) {
  sky::Skyline skyline = array.land;
  skyline.add(array.near);
  return skyline.beam(static_cast<float>(sky::radians(azimuth_deg)),
                      static_cast<float>(std::sin(sky::radians(elevation_deg))));
}

TEST(PlanShade, AbsentMeansAnOpenSky) {
  const auto read = with_keys("");
  ASSERT_TRUE(read.ok());
  EXPECT_TRUE(read.value().plan.arrays.at(0).land.open());
  EXPECT_EQ(read.value().plan.arrays.at(0).sky_model, sky::SkyModel::kPerez);
}

TEST(PlanShade, ReadsEveryKind) {
  const auto read = with_keys(
      "horizon = [{ azimuth = \"north\", elevation = \"10 deg\" }, { azimuth = \"south\", elevation = \"10 "
      "deg\" }]\n"
      "shade = [{ kind = \"mast\", azimuth = \"90 deg\", distance = \"2 m\", height = \"2 m\", width = \"10 "
      "cm\" },\n"
      "  { kind = \"trees\", from = \"150 deg\", to = \"210 deg\", distance = \"10 m\", height = \"10 m\", "
      "passes = \"40 %\" },\n"
      "  { kind = \"roof\", azimuth = \"270 deg\", slope = \"30 deg\" }]\n"
      "sky_model = \"hay-davies\"");
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  const supply::SolarArray& array = read.value().plan.arrays.at(0);
  EXPECT_EQ(array.sky_model, sky::SkyModel::kHayDavies);
  EXPECT_EQ(beam(array, 20.0, 9.0), 0.0F);
  EXPECT_EQ(beam(array, 20.0, 11.0), 1.0F);
  EXPECT_EQ(beam(array, 90.5, 44.0), 0.0F);  // the mast: 45 deg high, 2.9 deg wide
  EXPECT_EQ(beam(array, 90.5, 46.0), 1.0F);
  EXPECT_EQ(beam(array, 95.0, 44.0), 1.0F);
  EXPECT_FLOAT_EQ(beam(array, 180.0, 40.0), 0.4F);
  EXPECT_EQ(beam(array, 270.5, 29.0), 0.0F);
  EXPECT_EQ(beam(array, 270.5, 31.0), 1.0F);
}

TEST(PlanShade, TurnsWithTheVehicle) {
  EXPECT_FALSE(read_small(full_plan()).value().plan.arrays.at(0).turns);
  std::string text = full_plan();
  const std::string name = "name = \"Roof\"\n";
  text.replace(text.find(name), name.size(), name + "azimuth_from = \"front\"\n");
  const std::string leg = "[[leg]]\n";
  text.replace(text.find(leg), leg.size(), leg + "facing = \"SW\"\n");
  const auto read = read_small(text);
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  EXPECT_TRUE(read.value().plan.arrays.at(0).turns);
  ASSERT_TRUE(read.value().plan.legs.at(0).facing_deg.has_value());
  EXPECT_EQ(*read.value().plan.legs.at(0).facing_deg, 225.0);
  EXPECT_FALSE(with_keys("azimuth_from = \"bow\"").ok());
}

struct Row {
  const char* keys;
  const char* words;
};

class BrokenShade : public testing::TestWithParam<Row> {};

TEST_P(BrokenShade, IsNamed) {
  const auto read = with_keys(GetParam().keys);
  ASSERT_FALSE(read.ok());
  std::string all;
  for (const base::Problem& p : read.problems()) all += base::to_text(p) + "\n";
  EXPECT_NE(all.find(GetParam().words), std::string::npos) << all;
}

INSTANTIATE_TEST_SUITE_P(
    Plan, BrokenShade,
    testing::Values(
        Row{"horizon = \"10 deg\"", "Write [[solar.horizon]] in double brackets."},
        Row{"horizon = [{ azimuth = \"south\" }]", "`elevation` is missing"},
        Row{"horizon = [{ elevation = \"5 deg\" }]", "`azimuth` is missing"},
        Row{"horizon = [{ azimuth = \"south\", elevation = \"95 deg\" }]", "0 to 90 deg"},
        Row{"horizon = [{ azimuth = \"S\", elevation = \"5 deg\" }, { azimuth = \"180 deg\", elevation = \"6 "
            "deg\" }]",
            "two heights in this direction"},
        Row{"shade = [{ azimuth = \"south\" }]", "`kind` is missing"},
        Row{"shade = [{ kind = \"tree\" }]", "Did you mean \"trees\"?"},
        Row{"shade = [{ kind = \"mast\", azimuth = \"S\", distance = \"2 m\", height = \"3 m\" }]",
            "`width` is missing"},
        Row{"shade = [{ kind = \"roof\", azimuth = \"S\", slope = \"90 deg\" }]", "0 to 89 deg"},
        Row{"shade = [{ kind = \"roof\", azimuth = \"S\", slope = \"20 deg\", passes = \"5 %\" }]",
            "There is no key"},
        Row{"shade = [{ kind = \"trees\", from = \"E\", to = \"S\", distance = \"9 m\", height = \"3 m\", "
            "passes = \"130 %\" }]",
            "0 % to 100 %"},
        Row{"sky_model = \"peres\"", "Did you mean \"perez\"?"}));

}  // namespace
}  // namespace voltwright::files
