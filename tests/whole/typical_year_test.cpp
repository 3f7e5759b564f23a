// A typical year laid onto a plan's dates keeps its yearly light. The file is a typical year of the European
// Commission's PVGIS (c) European Union, where it is at hand.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "engine/sky/replayed_weather.h"
#include "files/weather/read_weather.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

TEST(TypicalYear, MinutesKeepTheYearsLight) {
  const std::filesystem::path path =
      std::filesystem::path(VW_SOURCE_DIR) / "../shared/data/weather/tmy_45.000_8.000_2005_2023.epw";
  std::ifstream in(path, std::ios::binary);
  if (!in) GTEST_SKIP() << "the weather file is not here";
  std::ostringstream text;
  text << in.rdbuf();
  const auto read = files::read_weather(text.str(), "pvgis.epw");
  ASSERT_TRUE(read.ok());
  const Practice plan(warm_cabin() + R"(
[[load]]
name = "Lamp"
power = "5 W"
hours = "4 h/day"

[[leg]]
lat = 45
lon = 8
zone = "Etc/UTC"
from = 2027-01-01
to = 2027-12-31
)");
  const journey::Leg& leg = plan.plan().legs.at(0);
  const auto minutes = static_cast<std::size_t>((leg.end_utc_s - leg.start_utc_s) / 60);
  ASSERT_EQ(minutes, 525600U);
  const sky::WeatherMinutes weather =
      sky::replay_weather(read.value().weather, sky::sun_minutes(leg.place.site, leg.start_utc_s, minutes));
  double global_kWh = 0.0;
  double temperature_sum_C = 0.0;
  for (std::size_t i = 0; i < minutes; ++i) {
    global_kWh += static_cast<double>(weather.ghi_W_m2[i]) / 60.0 / 1000.0;
    temperature_sum_C += static_cast<double>(weather.temperature_C[i]);
  }
  // 1435.9 kWh/m2 and 13.564 degC are the sums of the source's own hourly table of the same year.
  EXPECT_NEAR(global_kWh, 1435.9, 0.005 * 1435.9);
  EXPECT_NEAR(temperature_sum_C / static_cast<double>(minutes), 13.564, 0.01);
}

}  // namespace
}  // namespace voltwright::whole
