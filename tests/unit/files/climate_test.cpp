#include "files/climate.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

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
  // So high up no station lies within 400 m of height: the same few of the rank, whose weights hardly change,
  // so 6.5 K/km between the two within a tenth.
  const auto low = at(51.48, -0.45, 4000.0);
  const auto high = at(51.48, -0.45, 4100.0);
  for (std::size_t m = 0; m < 12; ++m) EXPECT_NEAR(low.temperature_C[m] - high.temperature_C[m], 0.65, 0.07);
}

/// Sum of the weights of a use, and how many sources it has.
std::pair<double, int> weights(const std::vector<ClimateSource>& sources, const std::string& use) {
  std::pair<double, int> sum{0.0, 0};
  for (const ClimateSource& source : sources) {
    if (source.use != use) continue;
    sum.first += source.weight;
    ++sum.second;
  }
  return sum;
}

TEST(Climate, AveragesSeveralStationsFarFromAny) {
  // Central Sahara: no station within 150 km.
  std::vector<ClimateSource> sources;
  const sky::Site site{22.0, 14.0, 500.0};
  const auto climate = table().at(site, &sources);
  ASSERT_TRUE(climate.ok());
  for (const char* use : {"temperature", "daily range", "sunshine"}) {
    EXPECT_GE(weights(sources, use).second, 2) << use;
    EXPECT_NEAR(weights(sources, use).first, 1.0, 1e-12) << use;
  }
  double nearest_km = 1e9;
  for (const ClimateSource& source : sources) {
    if (source.use == "temperature") nearest_km = std::min(nearest_km, source.distance_km);
  }
  EXPECT_GT(nearest_km, 150.0);
}

TEST(Climate, SourcesMakeTheMeanTemperature) {
  // The weights and heights that are told give the figure back: a far point changes by 6.5 K/km with its
  // height.
  std::vector<ClimateSource> sources;
  const auto climate = table().at({52.52, 13.41, 43.0}, &sources);
  ASSERT_TRUE(climate.ok());
  EXPECT_NEAR(weights(sources, "temperature").first, 1.0, 1e-12);
  EXPECT_EQ(weights(sources, "sea").second, 0);
  for (const ClimateSource& source : sources) {
    EXPECT_GT(source.weight, 0.0);
    EXPECT_FALSE(source.name.empty());
    if (source.use == "temperature") {
      EXPECT_LE(std::abs(source.height_m), 400.0);
      EXPECT_LE(source.distance_km, 150.0);
    }
  }
}

TEST(Climate, EnclosedSeasTakeTheirCoasts) {
  struct Point {
    const char* sea;
    sky::Site site;
    double january_C, july_C;
  };
  // Roughly the air over the water in January and July: common knowledge of these seas, no source; 4 K either
  // way.
  for (const Point& p : {Point{"Baltic Sea", {57.0, 19.9, 0.0}, 1.0, 18.0},
                         Point{"Mediterranean Sea", {39.0, 5.5, 0.0}, 12.5, 25.0},
                         Point{"Mediterranean Sea", {34.0, 27.0, 0.0}, 14.5, 26.0},
                         Point{"Black Sea", {43.2, 34.0, 0.0}, 6.0, 24.0},
                         Point{"Lake Superior", {47.7, -88.0, 0.0}, -9.0, 17.0}}) {
    std::vector<ClimateSource> sources;
    const auto climate = table().at(p.site, &sources);
    ASSERT_TRUE(climate.ok()) << p.sea;
    const auto& c = climate.value();
    EXPECT_NE(c.origin.find(std::string("On the water (") + p.sea), std::string::npos) << c.origin;
    EXPECT_NEAR(c.temperature_C[0], p.january_C, 4.0) << p.sea << ": " << c.origin;
    EXPECT_NEAR(c.temperature_C[6], p.july_C, 4.0) << p.sea << ": " << c.origin;
    EXPECT_EQ(c.daily_range_K[6], 3.0);
    EXPECT_NEAR(weights(sources, "temperature").first, 1.0, 1e-12);
  }
}

TEST(Climate, ALakeIsTakenAtItsSurface) {
  // Chart heights let a boat stand at 0 m: the air is that at 183 m.
  const auto sea_level = at(47.7, -88.0, 0.0);
  const auto surface = at(47.7, -88.0, 183.0);
  EXPECT_EQ(sea_level.temperature_C, surface.temperature_C);
}

TEST(Climate, ATownAtTheShoreIsOnLand) {
  EXPECT_EQ(at(41.39, 2.16, 12.0).origin.find("On the water"), std::string::npos);
  EXPECT_EQ(at(57.64, 18.29, 28.0).origin.find("On the water"), std::string::npos);
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
  const auto fields = split_at("a,\"b, c\",,d", ',');
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
