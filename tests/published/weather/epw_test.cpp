// A typical year of the European Commission's PVGIS (c) European Union in EPW layout, where the file is at
// hand.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <numeric>
#include <sstream>

#include "files/weather/read_weather.h"

namespace voltwright::files {
namespace {

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

TEST(TypicalYear, PvgisSumsAndClock) {
  const std::filesystem::path path =
      std::filesystem::path(VW_SOURCE_DIR) / "../shared/data/weather/tmy_45.000_8.000_2005_2023.epw";
  std::ifstream in(path, std::ios::binary);
  if (!in) GTEST_SKIP() << "the weather file is not here";
  std::ostringstream text;
  text << in.rdbuf();
  const auto result = read_weather(text.str(), "pvgis.epw");
  ASSERT_TRUE(result.ok()) << base::to_text(result.problems().front());
  const auto& weather = result.value().weather;
  // Sums of the source's own CSV of the same year, kWh/m2 and degC, printed to one and three decimals.
  EXPECT_NEAR(sum(weather.ghi_W_m2) / 1000.0, 1435.9, 0.05);
  EXPECT_NEAR(sum(weather.dni_W_m2) / 1000.0, 1591.6, 0.05);
  EXPECT_NEAR(sum(weather.dhi_W_m2) / 1000.0, 570.9, 0.05);
  EXPECT_NEAR(sum(weather.temperature_C) / 8760.0, 13.564, 0.0005);
  // Its rows are in UTC under a header that says zone 1: the sun comes 0.619 h early. Read as UTC with the
  // offset of its second comment it comes 0.057 h late (worked out from the CSV of the same year).
  ASSERT_EQ(result.value().warnings.size(), 1U);
  EXPECT_NE(result.value().warnings[0].what.find("-0.619 h"), std::string::npos)
      << result.value().warnings[0].what;
  ASSERT_TRUE(result.value().noon_offset_h.has_value());
  EXPECT_NEAR(*result.value().noon_offset_h, 0.057, 0.005);
}

}  // namespace
}  // namespace voltwright::files
