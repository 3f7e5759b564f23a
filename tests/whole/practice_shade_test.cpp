// Shade by land, masts, trees and roofs, from the text of a plan to what an array yields. Geometry is ours;
// that shade lowers the yield is plain physics.
#include <cstddef>
#include <string>

#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

/// A week in September near the 60th parallel with an array that faces south, and more keys of it.
season::Series week(const std::string& array_keys) {
  std::string stay = winter_stay(7);
  stay.replace(stay.find("2027-01-10"), 10, "2027-09-10");
  return Practice(warm_cabin() + R"(
[[load]]
name = "Light"
power = "5 W"
always = true

[[solar]]
tilt = "40 deg"
azimuth = "south"
module = { peak = "200 W", open_circuit = "24.3 V", short_circuit = "10.4 A", at_peak_voltage = "20.2 V", at_peak_current = "9.9 A" }
controller = { kind = "mppt", output_limit = "20 A", input_limit = "60 V" }
)" + array_keys + stay)
      .draw(0);
}

double yield_Wh(const season::Series& series) {
  double sum = 0.0;
  for (const season::Minute& m : series.minutes) sum += m.solar_W / 60.0;
  return sum;
}

const season::Series& open_week() {
  static const season::Series series = week("");
  return series;
}

TEST(ShadeInAPlan, ALevelHorizonChangesNothing) {
  const season::Series level = week("horizon = [{ azimuth = \"10 deg\", elevation = \"0 deg\" }]\n");
  ASSERT_EQ(level.minutes.size(), open_week().minutes.size());
  for (std::size_t i = 0; i < level.minutes.size(); ++i) {
    ASSERT_EQ(level.minutes[i].solar_W, open_week().minutes[i].solar_W) << i;
  }
}

TEST(ShadeInAPlan, EachObstacleTakesSome) {
  const double open_Wh = yield_Wh(open_week());
  ASSERT_GT(open_Wh, 1000.0);
  for (const char* keys : {
           "horizon = [{ azimuth = \"south\", elevation = \"15 deg\" }]\n",
           "shade = [{ kind = \"mast\", azimuth = \"SSW\", distance = \"2 m\", height = \"8 m\", width = "
           "\"20 cm\" }]\n",
           "shade = [{ kind = \"trees\", from = \"SE\", to = \"SW\", distance = \"15 m\", height = \"9 m\", "
           "passes = \"30 %\" }]\n",
           "shade = [{ kind = \"roof\", azimuth = \"south\", slope = \"20 deg\" }]\n",
       }) {
    const double shaded_Wh = yield_Wh(week(keys));
    EXPECT_LT(shaded_Wh, 0.999 * open_Wh) << keys;
    EXPECT_GT(shaded_Wh, 0.2 * open_Wh) << keys;
  }
}

TEST(ShadeInAPlan, DenserTreesTakeMore) {
  const auto trees = [](const std::string& passes) {
    return yield_Wh(
        week("shade = [{ kind = \"trees\", from = \"E\", to = \"W\", distance = \"15 m\", height = \"9 m\", "
             "passes = \"" +
             passes + "\" }]\n"));
  };
  const double none_Wh = trees("0 %");
  const double half_Wh = trees("50 %");
  EXPECT_LT(none_Wh, half_Wh);
  EXPECT_LT(half_Wh, yield_Wh(open_week()));
  EXPECT_EQ(trees("100 %"), yield_Wh(open_week()));
}

// A sky that is equally bright everywhere gives a plane that faces the sun less than one bright around it.
TEST(ShadeInAPlan, TheModelOfTheSkyCanBeChosen) {
  const double isotropic_Wh = yield_Wh(week("sky_model = \"isotropic\"\n"));
  const double hay_davies_Wh = yield_Wh(week("sky_model = \"hay-davies\"\n"));
  EXPECT_LT(isotropic_Wh, hay_davies_Wh);
  EXPECT_NEAR(hay_davies_Wh / yield_Wh(open_week()), 1.0, 0.05);
  EXPECT_EQ(yield_Wh(week("sky_model = \"perez\"\n")), yield_Wh(open_week()));
}

}  // namespace
}  // namespace voltwright::whole
