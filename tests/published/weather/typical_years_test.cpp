// Annual sums of public typical years, where the files are at hand: two TMY3 files of the United States
// (public domain) and a typical year of the European Commission's PVGIS (c) European Union.
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <numeric>
#include <optional>
#include <sstream>

#include "files/weather/read_weather.h"

namespace voltwright::files {
namespace {

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

std::optional<std::string> text_of(const std::string& name) {
  const auto path = std::filesystem::path(VW_SOURCE_DIR) / "../shared/data/weather" / name;
  std::ifstream in(path, std::ios::binary);
  if (!in) return std::nullopt;
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

struct Sums {
  const char* file;
  double ghi_kWh, dni_kWh, dhi_kWh, temperature_C, noon_h;
};

// Sums added up from the files in a spreadsheet, printed to one and three decimals.
constexpr Sums kTmy3[] = {{"723170TYA.CSV", 1566.2, 1476.5, 682.2, 14.422, 0.007},
                          {"703165TY.csv", 829.2, 819.2, 460.9, 4.421, 0.051}};

void expect_sums(const ReadWeather& read, const Sums& sums) {
  EXPECT_NEAR(sum(read.weather.ghi_W_m2) / 1000.0, sums.ghi_kWh, 0.051);
  EXPECT_NEAR(sum(read.weather.dni_W_m2) / 1000.0, sums.dni_kWh, 0.051);
  EXPECT_NEAR(sum(read.weather.dhi_W_m2) / 1000.0, sums.dhi_kWh, 0.051);
  EXPECT_NEAR(sum(read.weather.temperature_C) / 8760.0, sums.temperature_C, 0.0006);
  ASSERT_TRUE(read.noon_offset_h.has_value());
  EXPECT_NEAR(*read.noon_offset_h, sums.noon_h, 0.005);
}

TEST(TypicalYears, Tmy3) {
  for (const Sums& sums : kTmy3) {
    SCOPED_TRACE(sums.file);
    const auto text = text_of(sums.file);
    if (!text) GTEST_SKIP() << "the weather file is not here";
    const auto read = read_weather(*text, sums.file);
    ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
    EXPECT_TRUE(read.value().warnings.empty());
    expect_sums(read.value(), sums);
  }
}

TEST(TypicalYears, PvgisCsvIsPvgisEpw) {
  const auto csv_text = text_of("pvgis_tmy_test.csv");
  const auto epw_text = text_of("tmy_45.000_8.000_2005_2023.epw");
  if (!csv_text || !epw_text) GTEST_SKIP() << "the weather files are not here";
  WeatherOptions options;  // this file has neither place nor offset
  options.place = sky::Site{45.0, 8.0, 250.0};
  options.radiation_offset_h = 0.1761;
  const auto csv = read_weather(*csv_text, "pvgis.csv", options);
  const auto epw = read_weather(*epw_text, "pvgis.epw");
  ASSERT_TRUE(csv.ok()) << base::to_text(csv.problems().front());
  ASSERT_TRUE(epw.ok()) << base::to_text(epw.problems().front());
  expect_sums(csv.value(), {"pvgis", 1435.9, 1591.6, 570.9, 13.564, 0.057});
  const auto& a = csv.value().weather;
  const auto& b = epw.value().weather;
  EXPECT_EQ(a.start_utc_s, b.start_utc_s);
  for (std::size_t i = 0; i < 8760; ++i) {
    ASSERT_NEAR(a.ghi_W_m2[i], b.ghi_W_m2[i], 0.006) << i;
    ASSERT_NEAR(a.dni_W_m2[i], b.dni_W_m2[i], 0.006) << i;
    ASSERT_NEAR(a.dhi_W_m2[i], b.dhi_W_m2[i], 0.006) << i;
    ASSERT_NEAR(a.temperature_C[i], b.temperature_C[i], 0.011) << i;
    ASSERT_NEAR(a.wind_m_s[i], b.wind_m_s[i], 0.06) << i;
  }
}

// A day of hourly global radiation at 44.76 N 7.64 E in UTC, W/m2, from a public test of a solar library.
TEST(TypicalYears, PowerDaySum) {
  std::string text =
      "-BEGIN HEADER-\nDates (month/day/year): 02/02/2025 through 02/02/2025 in UTC\n"
      "Location: latitude 44.76 longitude 7.64\nelevation from MERRA-2: Average = 705.88 meters\n"
      "ALLSKY_SFC_SW_DWN     CERES Downward Irradiance (W/m^2)\n-END "
      "HEADER-\nYEAR,MO,DY,HR,ALLSKY_SFC_SW_DWN,T2M\n";
  const std::array<double, 24> ghi = {0.0,   0.0,    0.0,   0.0,    0.0,    0.0,    0.0,   50.25,
                                      184.2, 281.55, 368.3, 406.48, 386.45, 316.05, 210.1, 109.05,
                                      12.9,  0.0,    0.0,   0.0,    0.0,    0.0,    0.0,   0.0};
  for (std::size_t h = 0; h < ghi.size(); ++h) {
    text += "2025,2,2," + std::to_string(h) + "," + std::to_string(ghi.at(h)) + ",3.0\n";
  }
  const auto read = read_weather(text, "power.csv");
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  EXPECT_EQ(read.value().hours, 24U);
  double day_Wh = 0.0;
  for (std::size_t k = 0; k < 24; ++k) day_Wh += read.value().weather.ghi_W_m2[read.value().first_hour + k];
  EXPECT_NEAR(day_Wh, 2325.33, 0.01);
}

}  // namespace
}  // namespace voltwright::files
