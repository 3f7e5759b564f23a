// Every format read from files made in code; expected values follow from the sky they were made from.
#include <gtest/gtest.h>

#include <numeric>

#include "files/weather/read_weather.h"
#include "tests/unit/files/synthetic_epw.h"
#include "tests/unit/files/synthetic_weather.h"

namespace voltwright::files {
namespace {

constexpr double kPrinted = 0.001;

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

ReadWeather read(const std::string& text, const WeatherOptions& options = {}) {
  auto result = read_weather(text, "made", options);
  EXPECT_TRUE(result.ok()) << base::to_text(result.ok() ? base::Problem{} : result.problems().front());
  return result.ok() ? std::move(result).value() : ReadWeather{};
}

double made_sum() {
  double day = 0.0;
  for (int h = 0; h < 24; ++h) day += MadeSky{}.ghi(h + 0.5);
  return 365.0 * day;
}

TEST(Weather, Tmy3HourEndsAtItsStamp) {
  const auto w = read(joined(made_tmy3()));
  EXPECT_EQ(w.format, "TMY3");
  EXPECT_TRUE(w.warnings.empty());
  // 11:00 to 12:00 local is 10:00 to 11:00 UTC.
  EXPECT_NEAR(w.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), kPrinted);
  EXPECT_NEAR(sum(w.weather.ghi_W_m2), made_sum(), 8760 * kPrinted);
  EXPECT_NEAR(sum(w.weather.temperature_C) / 8760.0, 10.0, kPrinted);
}

TEST(Weather, Tmy3MidnightMayBeTheNextDay) {
  auto lines = made_tmy3();
  for (std::size_t i = 25; i + 1 < lines.size(); i += 24) {
    lines[i] = lines[i + 1].substr(0, 10) + ",00:00" + lines[i].substr(16);
  }
  lines.back() = lines[2].substr(0, 10) + ",00:00" + lines.back().substr(16);
  const auto expected = read(joined(made_tmy3())).weather;
  EXPECT_EQ(read(joined(lines)).weather.ghi_W_m2, expected.ghi_W_m2);
}

TEST(Weather, Tmy2FixedColumns) {
  const auto w = read(joined(made_tmy2()));
  EXPECT_EQ(w.format, "TMY2");
  EXPECT_EQ(w.place, "NOWHERE");
  EXPECT_NEAR(w.weather.site.longitude_deg, 15.0, 1e-9);
  EXPECT_NEAR(w.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), 0.5);  // whole numbers
  EXPECT_NEAR(sum(w.weather.temperature_C) / 8760.0, 10.0, 0.05);
}

TEST(Weather, PvgisTypicalYearStandsForTheHourAroundItsInstant) {
  const auto w = read(joined(made_pvgis_tmy()));
  EXPECT_EQ(w.format, "PVGIS TMY");
  // The instant 10:15 UTC stands for 9:45 to 10:45.
  EXPECT_EQ(w.weather.start_utc_s, 1672531200 + 2700);
  EXPECT_NEAR(w.weather.ghi_W_m2[9], MadeSky{}.ghi(11.25), kPrinted);
  ASSERT_TRUE(w.noon_offset_h.has_value());
  EXPECT_NEAR(*w.noon_offset_h, 0.0, 0.02);
  EXPECT_NEAR(sum(w.weather.temperature_C) / 8760.0, 10.0, kPrinted);
}

TEST(Weather, PvgisJsonIsThePvgisCsv) {
  const auto csv = read(joined(made_pvgis_tmy())).weather;
  const auto json = read(made_pvgis_tmy_json()).weather;
  EXPECT_EQ(csv.ghi_W_m2, json.ghi_W_m2);
  EXPECT_EQ(csv.temperature_C, json.temperature_C);
  EXPECT_EQ(csv.start_utc_s, json.start_utc_s);
}

TEST(Weather, PvgisWithoutHeaderTakesTheGivenPlace) {
  auto lines = made_pvgis_tmy(0.0);
  lines.erase(lines.begin(), lines.begin() + 7);
  const auto refused = read_weather(joined(lines), "made");
  ASSERT_FALSE(refused.ok());
  EXPECT_NE(refused.problems().front().what.find("where its weather is from"), std::string::npos);
  WeatherOptions options;
  options.place = sky::Site{10.0, 15.0, 100.0};
  const auto w = read(joined(lines), options);
  EXPECT_EQ(w.repairs.size(), 2U);  // place and offset
  EXPECT_EQ(w.weather.site.longitude_deg, 15.0);
}

TEST(Weather, PvgisHourlyOnTheHorizontal) {
  const auto w = read(joined(made_pvgis_hourly()));
  EXPECT_EQ(w.format, "PVGIS hourly");
  EXPECT_EQ(w.hours, 8760U);
  // The instant 10:10 UTC stands for 9:40 to 10:40.
  EXPECT_EQ(w.weather.start_utc_s, 1672531200 + 2400);
  EXPECT_NEAR(w.weather.ghi_W_m2[9], MadeSky{}.ghi(11.0 + 1.0 / 6.0), 2.0 * kPrinted);
  const auto tracked = read_weather(joined(made_pvgis_hourly("2-axis tracking")), "made");
  ASSERT_FALSE(tracked.ok());
  EXPECT_NE(tracked.problems().front().remedy.find("slope 0"), std::string::npos);
}

TEST(Weather, PowerHourStartsAtItsStamp) {
  const auto utc = read(joined(made_power_hourly("UTC")));
  EXPECT_EQ(utc.format, "POWER hourly");
  EXPECT_NEAR(utc.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), kPrinted);
  EXPECT_TRUE(utc.weather.dhi_W_m2.empty());
  const auto lst = read(joined(made_power_hourly("LST")));
  EXPECT_NEAR(lst.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), kPrinted);
  EXPECT_NEAR(lst.weather.temperature_C[10], MadeSky::temperature_C(11.5), kPrinted);
}

TEST(Weather, PowerThatSaysTheWrongClockIsRepaired) {
  auto lines = made_power_hourly("UTC");
  lines[2] = "Dates (month/day/year): 01/01/2023 through 12/31/2023 in LST";
  const auto w = read(joined(lines));
  ASSERT_EQ(w.warnings.size(), 1U);
  EXPECT_NE(w.warnings[0].what.find("It was read as UTC"), std::string::npos) << w.warnings[0].what;
  EXPECT_NEAR(w.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), kPrinted);
}

TEST(Weather, PowerDayKeepsItsSum) {
  auto lines = power_head("LST", "kW-hr/m^2/day");
  lines.emplace_back("YEAR,DOY,ALLSKY_SFC_SW_DWN,T2M,T2M_MAX,T2M_MIN,WS10M");
  for (int day = 1; day <= 365; ++day) lines.push_back(fmt::format("2023,{},4.8,10,16,6,3", day));
  const auto w = read(joined(lines));
  EXPECT_EQ(w.format, "POWER daily");
  EXPECT_NEAR(sum(w.weather.ghi_W_m2), 365.0 * 4800.0, 0.5);
  EXPECT_NEAR(sum(w.weather.temperature_C) / 8760.0, 10.0, 0.01);
}

TEST(Weather, PowerClimatologyBecomesMonthlyMeans) {
  auto lines = power_head("LST", "kW-hr/m^2/day");
  lines.emplace_back("PARAMETER,JAN,FEB,MAR,APR,MAY,JUN,JUL,AUG,SEP,OCT,NOV,DEC,ANN");
  lines.emplace_back("ALLSKY_SFC_SW_DWN,4,4,4,4,4,4,4,4,4,4,4,4,4");
  lines.emplace_back("T2M,20,21,22,23,24,25,26,25,24,23,22,21,23");
  const auto w = read(joined(lines));
  ASSERT_TRUE(w.climate.has_value());
  EXPECT_EQ(w.climate->temperature_C[6], 26.0);
  EXPECT_NEAR(w.climate->clearness[0], 4.0 / monthly_daylight(10.0).horizontal_kWh_m2_day[0], 1e-12);
}

TEST(Weather, CsvWithSemicolonsAndDecimalCommas) {
  const auto plain = read(joined(made_csv()));
  const auto commas = read(joined(made_csv(";", true)));
  EXPECT_EQ(plain.format, "CSV");
  EXPECT_EQ(plain.weather.ghi_W_m2, commas.weather.ghi_W_m2);
  EXPECT_NEAR(plain.weather.ghi_W_m2[10], MadeSky{}.ghi(11.5), kPrinted);
}

TEST(Weather, CsvInOtherUnitsIsTheSame) {
  auto lines = made_csv();
  const auto expected = read(joined(lines)).weather;
  lines[5] = "time,ghi_kWh_m2,temperature (F),wind (km/h)";
  for (std::size_t i = 6; i < lines.size(); ++i) {
    const std::size_t comma = lines[i].find(',');
    const double g = std::stod(lines[i].substr(comma + 1));
    const double t = std::stod(lines[i].substr(lines[i].find(',', comma + 1) + 1));
    lines[i] = lines[i].substr(0, comma) + fmt::format(",{:.6f},{:.6f},10.8", g / 1000.0, 32.0 + 1.8 * t);
  }
  const auto other = read(joined(lines)).weather;
  EXPECT_NEAR(sum(other.ghi_W_m2), sum(expected.ghi_W_m2), 0.1);
  EXPECT_NEAR(other.temperature_C[100], expected.temperature_C[100], 1e-5);
  EXPECT_NEAR(other.wind_m_s[100], 3.0, 1e-9);
}

TEST(Weather, PartOfAYearCoversItsDatesOnly) {
  auto lines = made_csv();
  lines.resize(6 + 24 * 90);  // to the end of March
  const auto w = read(joined(lines));
  EXPECT_EQ(w.hours, 24U * 90U);
  constexpr std::int64_t kFebruary2027 = 1801440000;  // 2027-02-01 00:00 UTC
  constexpr std::int64_t kDay_s = 86400;
  EXPECT_TRUE(w.covers(kFebruary2027, kFebruary2027 + 20 * kDay_s));
  EXPECT_FALSE(w.covers(kFebruary2027, kFebruary2027 + 70 * kDay_s));
}

TEST(Weather, TheLastWholeYearOfManyIsUsed) {
  auto lines = made_csv();
  const std::size_t rows = lines.size();
  for (std::size_t i = 6; i < rows; ++i) {
    std::string next = lines[i];
    next.replace(0, 4, "2025");
    lines.push_back(next);
  }
  const auto w = read(joined(lines));
  EXPECT_NE(w.repairs.front().find("the year 2025 was used"), std::string::npos) << w.repairs.front();
  EXPECT_EQ(w.hours, 8760U);
}

TEST(Weather, SameYearThroughEpwAndCsv) {
  // The hours of the EPW end at their number; the CSV says the same of its stamps.
  const auto epw = read(SyntheticEpw().text()).weather;
  std::vector<std::string> lines = {"latitude,10",
                                    "longitude,15",
                                    "elevation,100",
                                    "zone,+1",
                                    "stamp,end",
                                    "temperature,at stamp",
                                    "month,day,hour,ghi,dni,dhi,temperature,wind"};
  every_hour([&](int month, int day, int hour) {
    const double g = SyntheticEpw().ghi(hour);
    lines.push_back(fmt::format("{},{},{},{:.3f},{:.3f},{:.3f},{:.3f},3.0", month, day, hour + 1, g, 0.8 * g,
                                0.2 * g, MadeSky::temperature_C(hour + 1.0)));
  });
  const auto csv = read(joined(lines)).weather;
  EXPECT_EQ(epw.ghi_W_m2, csv.ghi_W_m2);
  EXPECT_EQ(epw.dhi_W_m2, csv.dhi_W_m2);
  EXPECT_EQ(epw.temperature_C, csv.temperature_C);
  EXPECT_EQ(epw.start_utc_s, csv.start_utc_s);
}

}  // namespace
}  // namespace voltwright::files
