// Random edits of a file of every format: never a crash or a hang, never a value out of range.
#include <gtest/gtest.h>

#include "engine/base/random.h"
#include "files/weather/read_weather.h"
#include "tests/hostile/damaged_text.h"
#include "tests/unit/files/synthetic_epw.h"
#include "tests/unit/files/synthetic_weather.h"

namespace voltwright::files {
namespace {

std::vector<std::string> texts() {
  auto daily = power_head("LST", "kW-hr/m^2/day");
  daily.emplace_back("YEAR,DOY,ALLSKY_SFC_SW_DWN,T2M,T2M_MAX,T2M_MIN,WS10M");
  for (int day = 1; day <= 365; ++day) daily.push_back(fmt::format("2023,{},4.8,10,16,6,3", day));
  auto climatology = power_head("LST", "kW-hr/m^2/day");
  climatology.insert(climatology.end(), {"PARAMETER,JAN,FEB,MAR,APR,MAY,JUN,JUL,AUG,SEP,OCT,NOV,DEC,ANN",
                                         "ALLSKY_SFC_SW_DWN,4,4,4,4,4,4,4,4,4,4,4,4,4",
                                         "T2M,20,21,22,23,24,25,26,25,24,23,22,21,23"});
  return {SyntheticEpw().text(),       joined(made_tmy3()),
          joined(made_tmy2()),         joined(made_pvgis_tmy()),
          made_pvgis_tmy_json(),       joined(made_pvgis_hourly()),
          joined(made_power_hourly()), joined(daily),
          joined(climatology),         joined(made_csv()),
          joined(made_csv(";", true))};
}

void expect_sound(const base::Result<ReadWeather>& result) {
  if (!result.ok()) {
    ASSERT_FALSE(result.problems().empty());
    ASSERT_LE(result.problems().size(), 26U);
    return;
  }
  const ReadWeather& read = result.value();
  if (read.climate) return;
  ASSERT_EQ(read.weather.ghi_W_m2.size(), 8760U);
  for (const double g : read.weather.ghi_W_m2) ASSERT_TRUE(g >= 0.0 && g <= 3000.0);
  for (const double t : read.weather.temperature_C) ASSERT_TRUE(t >= -75.0 && t <= 75.0);
}

TEST(DamagedWeather, SurvivesRandomEdits) {
  // The place is given, so that a lost header does not end every run at once.
  WeatherOptions options;
  options.place = sky::Site{10.0, 15.0, 100.0};
  const std::vector<std::string> all = texts();
  for (std::size_t format = 0; format < all.size(); ++format) {
    const std::string& whole = all[format];
    const std::string head = whole.substr(0, 4000);
    constexpr std::size_t kRuns = 500;
    for (std::size_t run = 0; run < kRuns; ++run) {
      base::RandomStream random(20235, format, run);
      std::string text = run % 16 == 0 ? whole : head;
      hostile::bite(text, "0,9-.;:\n\r\t\"e+xN{}[]\xff ", random);
      SCOPED_TRACE(whole.substr(0, 60) + ", run " + std::to_string(run));
      expect_sound(read_weather(text, "damaged", options));
    }
  }
}

TEST(DamagedWeather, HugeFieldsAndEndlessLines) {
  for (const char c : {',', ';', '\t', '"', '{', '[', '9', '#', '-'}) {
    EXPECT_FALSE(read_weather(std::string(1'000'000, c), "endless").ok());
    EXPECT_FALSE(read_weather("time,ghi,temperature\n" + std::string(1'000'000, c), "endless").ok());
  }
}

}  // namespace
}  // namespace voltwright::files
