#include <gtest/gtest.h>

#include <numeric>

#include "files/weather/gap_filling.h"
#include "files/weather/read_weather.h"
#include "files/weather/solar_noon.h"
#include "tests/unit/files/synthetic_epw.h"

namespace voltwright::files {
namespace {

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

ReadWeather read(const std::string& text) {
  auto result = read_weather(text, "made.epw");
  EXPECT_TRUE(result.ok()) << base::to_text(result.ok() ? base::Problem{} : result.problems().front());
  return result.ok() ? std::move(result).value() : ReadWeather{};
}

// Expected values below follow from the definitions of the generator; the text has three decimals.
constexpr double kPrinted = 0.001;

TEST(Epw, HourEndsAtItsNumberAndMovesToUtc) {
  const SyntheticEpw made;
  const ReadWeather read_back = read(made.text());
  const auto& w = read_back.weather;
  EXPECT_TRUE(read_back.warnings.empty());
  ASSERT_EQ(w.ghi_W_m2.size(), 8760U);
  EXPECT_EQ(w.start_utc_s, 1672531200);  // 2023-01-01 00:00 UTC
  // Zone +1: the hour 11..12 local, row 12, is 10..11 UTC.
  EXPECT_NEAR(w.ghi_W_m2[10], made.ghi(11), kPrinted);
  EXPECT_NEAR(w.dni_W_m2[10], 0.8 * made.ghi(11), kPrinted);
  EXPECT_NEAR(w.dhi_W_m2[10], 0.2 * made.ghi(11), kPrinted);
  EXPECT_EQ(w.site.longitude_deg, 15.0);
  EXPECT_EQ(w.site.elevation_m, 100.0);
}

TEST(Epw, TemperatureIsTheMeanOfTheEndsOfTheHour) {
  const auto w = read(SyntheticEpw().text()).weather;
  // Local hour 6..7: T(6) = 10, T(7) = 10 - 5 cos(105 deg); UTC hour 5.
  const double expected = 0.5 * (10.0 + 10.0 - 5.0 * std::cos(7.0 * std::numbers::pi / 12.0));
  EXPECT_NEAR(w.temperature_C[5], expected, kPrinted);
  EXPECT_NEAR(sum(w.temperature_C) / 8760.0, 10.0, kPrinted);
}

TEST(Epw, ZoneOfHalfHoursKeepsTheEnergy) {
  SyntheticEpw made;
  made.zone_h = 5.75;
  made.longitude_deg = 86.25;
  const auto w = read(made.text()).weather;
  double day = 0.0;
  for (int h = 0; h < 24; ++h) day += made.ghi(h);
  EXPECT_NEAR(sum(w.ghi_W_m2), 365.0 * day, 365.0 * 24.0 * kPrinted);
  // The hours of UTC begin at a quarter past: hour 6 is 6:15 to 7:15, 12 to 13 local.
  EXPECT_EQ(w.start_utc_s, 1672531200 + 900);
  EXPECT_NEAR(w.ghi_W_m2[6], made.ghi(12), kPrinted);
}

TEST(Epw, WestOfGreenwich) {
  SyntheticEpw made;
  made.zone_h = -9.5;
  made.longitude_deg = -142.5;
  const auto w = read(made.text()).weather;
  // Hour 21 is 21:30 to 22:30 UTC, 12 to 13 local.
  EXPECT_EQ(w.start_utc_s, 1672531200 + 1800);
  EXPECT_NEAR(w.ghi_W_m2[21], made.ghi(12), kPrinted);
}

TEST(Epw, AcceptsTheVariantsOfTheFormat) {
  SyntheticEpw made;
  made.daylight_line = "HOLIDAYS/DAYLIGHT SAVING,Yes,3/12,11/5,0";
  made.leap_day = true;
  const auto expected = read(SyntheticEpw().text()).weather;
  const auto leap = read("\xEF\xBB\xBF" + made.text("\r\n") + "\r\n\n").weather;
  EXPECT_EQ(leap.ghi_W_m2, expected.ghi_W_m2);
  made.leap_day = false;
  made.records_per_hour = 4;
  EXPECT_NEAR(sum(read(made.text()).weather.ghi_W_m2), sum(expected.ghi_W_m2), 1e-6);
}

TEST(Epw, NegativeZeroAndMinuteZeroPass) {
  auto lines = SyntheticEpw().lines();
  lines[8] = with_field(with_field(lines[8], 13, "-0.00"), 4, "0");
  const auto w = read(joined(lines)).weather;
  EXPECT_FALSE(std::signbit(w.ghi_W_m2[8759]));  // local hour 0..1 of 1 January wraps to the end
}

TEST(Epw, FillsAndCountsMissingValuesInOneWarning) {
  auto lines = SyntheticEpw().lines();
  const double before = SyntheticEpw().ghi(9);
  const double after = SyntheticEpw().ghi(12);
  lines[8 + 10] = with_field(lines[8 + 10], 13, "9999");
  lines[8 + 11] = with_field(lines[8 + 11], 13, "");
  for (std::size_t i = 24; i < 32; ++i) lines[8 + i] = with_field(lines[8 + i], 6, "99.9");
  const auto read_back = read(joined(lines));
  ASSERT_EQ(read_back.warnings.size(), 1U);
  EXPECT_EQ(read_back.warnings[0].severity, base::Severity::kWarning);
  EXPECT_NE(read_back.warnings[0].what.find("10 missing values"), std::string::npos);
  EXPECT_NE(read_back.warnings[0].given.find("lines 19, 20"), std::string::npos)
      << read_back.warnings[0].given;
  EXPECT_NEAR(read_back.weather.ghi_W_m2[9], before + (after - before) / 3.0, kPrinted);
  // The long gap in the temperature takes the same hours of the neighbour days, which are all alike.
  EXPECT_NEAR(read_back.weather.temperature_C[29], read_back.weather.temperature_C[53], kPrinted);
}

TEST(Epw, ShiftedClockIsAWarningThatSaysHowFar) {
  SyntheticEpw made;
  made.clock_shift_h = -0.6;
  const auto read_back = read(made.text());
  ASSERT_EQ(read_back.warnings.size(), 1U);
  EXPECT_NE(read_back.warnings[0].what.find("early"), std::string::npos) << read_back.warnings[0].what;
  made.clock_shift_h = 0.15;
  EXPECT_TRUE(read(made.text()).warnings.empty());
}

TEST(SolarNoon, MeasuresTheShift) {
  SyntheticEpw made;
  made.clock_shift_h = 0.25;
  std::vector<double> ghi;
  for (int i = 0; i < 8760; ++i) ghi.push_back(made.ghi(i % 24));
  // Sampling a half cosine at hourly midpoints moves its centroid by up to 0.02 h.
  EXPECT_NEAR(solar_noon_offset_h(ghi, -made.zone_h, made.longitude_deg, 0, 8760), 0.25, 0.02);
  EXPECT_EQ(solar_noon_offset_h(std::vector<double>(8760, 0.0), 0.0, 0.0, 0, 8760), 0.0);
}

TEST(GapFilling, ShortGapsAreLinesAndLongOnesOtherDays) {
  std::vector<std::optional<double>> hours;
  for (int i = 0; i < 240; ++i) hours.emplace_back(i % 24 + 100.0 * (i / 24));
  hours[50] = hours[51] = hours[52] = std::nullopt;
  for (std::size_t i = 100; i < 104; ++i) hours[i] = std::nullopt;
  const auto filled = fill_gaps(hours);
  ASSERT_TRUE(filled);
  EXPECT_DOUBLE_EQ((*filled)[51], 203.0);
  EXPECT_DOUBLE_EQ((*filled)[100], 404.0);  // mean of 304 and 504
  EXPECT_DOUBLE_EQ((*filled)[0], 0.0);
  EXPECT_FALSE(fill_gaps(std::vector<std::optional<double>>(24)));
  std::vector<std::optional<double>> lonely(48);
  lonely[7] = 3.0;
  EXPECT_EQ(*fill_gaps(lonely), std::vector<double>(48, 3.0));
}

}  // namespace
}  // namespace voltwright::files
