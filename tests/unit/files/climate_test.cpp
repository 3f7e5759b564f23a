#include "files/climate.h"

#include <gtest/gtest.h>

#include <cmath>

#include "files/climate_records.h"
#include "files/daylight.h"
#include "files/number_table.h"

namespace voltwright::files {
namespace {

const ClimateTable& table() {
  static const ClimateTable climate = [] {
    auto result = ClimateTable::built_in();
    EXPECT_TRUE(result.ok()) << (result.ok() ? "" : base::to_text(result.problems().front()));
    return result.ok() ? std::move(result).value() : ClimateTable{};
  }();
  return climate;
}

sky::MonthlyClimate at(double latitude_deg, double longitude_deg, double elevation_m) {
  auto result = table().at({latitude_deg, longitude_deg, elevation_m});
  EXPECT_TRUE(result.ok());
  return result.ok() ? std::move(result).value() : sky::MonthlyClimate{};
}

TEST(Climate, NamesItsStations) {
  const auto climate = at(63.18, 14.64, 335.0);
  EXPECT_EQ(climate.origin.substr(0, 9), "Climate: ");
  EXPECT_NE(climate.origin.find("WMO 0222"), std::string::npos) << climate.origin;
  EXPECT_NE(climate.origin.find("Deutscher Wetterdienst"), std::string::npos);
  EXPECT_NE(climate.origin.find("assumption"), std::string::npos);
}

TEST(Climate, IsColderHigherUp) {
  // So high up no station lies within 400 m of height and one alone is used: exactly 6.5 K/km between the
  // two.
  const auto low = at(51.48, -0.45, 4000.0);
  const auto high = at(51.48, -0.45, 4100.0);
  for (std::size_t m = 0; m < 12; ++m) EXPECT_NEAR(low.temperature_C[m] - high.temperature_C[m], 0.65, 1e-9);
}

TEST(Climate, HoldsItsBoundsEverywhere) {
  int known = 0;
  for (double latitude = -88.0; latitude <= 90.0; latitude += 8.0) {
    for (double longitude = -180.0; longitude <= 180.0; longitude += 15.0) {
      const auto result = table().at({latitude, longitude, 0.0});
      if (!result.ok()) continue;
      ++known;
      const auto& c = result.value();
      for (std::size_t m = 0; m < 12; ++m) {
        EXPECT_GE(c.clearness[m], 0.1);
        EXPECT_LE(c.clearness[m], 0.8);
        EXPECT_GT(c.daily_range_K[m], 0.0);
        EXPECT_LT(c.daily_range_K[m], 30.0);
        EXPECT_GT(c.temperature_C[m], -75.0);
        EXPECT_LT(c.temperature_C[m], 60.0);
        EXPECT_GT(c.linke_turbidity[m], 1.5);
        EXPECT_LT(c.linke_turbidity[m], 10.0);
        EXPECT_GT(c.wind_m_s[m], 0.0);
      }
    }
  }
  EXPECT_GT(known, 450);
}

TEST(Climate, AtSeaUsesTheAtlas) {
  const auto climate = at(30.0, -45.0, 0.0);
  EXPECT_NE(climate.origin.find("Esbensen"), std::string::npos) << climate.origin;
  EXPECT_EQ(climate.daily_range_K[0], 3.0);
  EXPECT_NE(climate.wind_m_s[0], 2.5);
}

TEST(Climate, RefusesWhatIsNotOnEarth) {
  EXPECT_FALSE(table().at({91.0, 0.0, 0.0}).ok());
  EXPECT_FALSE(table().at({0.0, 181.0, 0.0}).ok());
  EXPECT_FALSE(table().at({std::nan(""), 0.0, 0.0}).ok());
  EXPECT_FALSE(table().at({0.0, 0.0, 20000.0}).ok());
}

TEST(Climate, SaysWhenNothingIsNear) {
  // The middle of the Southern Ocean, south of the atlas and far from any station.
  const auto result = table().at({-66.0, -120.0, 0.0});
  ASSERT_FALSE(result.ok());
  EXPECT_NE(result.problems()[0].what.find("1500 km"), std::string::npos);
}

TEST(Climate, TurbidityIsThatOfTheNearestSite) {
  // Lindenberg in turbidity.csv (Remund et al. 2003 by way of the station list): its own row.
  const auto climate = at(52.21, 14.12, 125.0);
  EXPECT_NE(climate.origin.find("Turbidity: station LIN"), std::string::npos) << climate.origin;
}

TEST(Climate, MatricesSumToOne) {
  ASSERT_EQ(table().matrices().matrices.size(), 10U);
  for (const auto& matrix : table().matrices().matrices) {
    EXPECT_LT(matrix.k_min, matrix.k_max);
    for (const auto& row : matrix.row) {
      double sum = 0.0;
      for (const double p : row) sum += p;
      EXPECT_NEAR(sum, 1.0, 1e-12);
    }
  }
}

TEST(Climate, FillsDarkMonthsAroundTheYear) {
  std::array<std::optional<double>, 12> months;
  months[1] = 1.0;
  months[9] = 4.0;
  const Months filled = fill_months(months, 7.0);
  EXPECT_DOUBLE_EQ(filled[1], 1.0);
  EXPECT_DOUBLE_EQ(filled[5], 2.5);
  EXPECT_DOUBLE_EQ(filled[11], 2.5);  // halfway from October to February
  EXPECT_DOUBLE_EQ(fill_months({}, 7.0)[3], 7.0);
}

TEST(NumberTable, SplitsAndReads) {
  const auto fields = split_commas("a,\"b, c\",,d");
  ASSERT_EQ(fields.size(), 4U);
  EXPECT_EQ(fields[1], "b, c");
  EXPECT_EQ(fields[2], "");
  EXPECT_EQ(to_number(" -0.5 "), -0.5);
  EXPECT_EQ(to_number("+3"), 3.0);
  for (const char* wrong : {"", "x", "1x", "nan", "inf", "1e999", "--1", "+-1", "0x10"}) {
    EXPECT_FALSE(to_number(wrong)) << wrong;
  }
  const auto result = read_table("# note\na,b\n1,2\n3\n", "t.csv");
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.problems()[0].where.line, 4);
}

}  // namespace
}  // namespace voltwright::files
