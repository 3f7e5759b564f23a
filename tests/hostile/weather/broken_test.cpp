// Broken weather files, made in code: each gives a precise message or a stated repair. EPW has its own
// folder.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "files/weather/read_weather.h"
#include "tests/unit/files/synthetic_epw.h"
#include "tests/unit/files/synthetic_weather.h"

namespace voltwright::files {
namespace {

using Lines = std::vector<std::string>;

struct Broken {
  std::string name;
  std::function<std::string()> text;
  int line;          // of the first problem; -1 where it is a repair
  std::string told;  // part of the problem, or of the warnings and repairs
};

std::string changed(Lines lines, const std::function<void(Lines&)>& change) {
  change(lines);
  return joined(lines);
}

void replace(std::string& text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at != std::string::npos) text.replace(at, from.size(), to);
}

/// Everything that was said about a file that could be read.
std::string said(const ReadWeather& read) {
  std::string all;
  for (const auto& warning : read.warnings) all += base::to_text(warning) + "\n";
  for (const auto& repair : read.repairs) all += repair + "\n";
  return all;
}

const std::vector<Broken>& broken() {
  static const std::vector<Broken> kBroken = {
      {"empty", [] { return std::string(); }, 1, "no weather file"},
      {"page_of_the_web", [] { return std::string("<html>\n<body>\n"); }, 1, "no weather file"},
      {"zero_bytes", [] { return std::string(5000, '\0'); }, 1, "no weather file"},
      {"tmy3_truncated_between_rows", [] { return changed(made_tmy3(), [](Lines& l) { l.resize(5000); }); },
       5000, "whole year"},
      {"tmy3_truncated_in_a_row",
       [] {
         return changed(made_tmy3(), [](Lines& l) {
           l.resize(5000);
           l.back().resize(30);
         });
       },
       5000, "cut short"},
      {"tmy3_semicolons",
       [] {
         return changed(made_tmy3(), [](Lines& l) {
           for (auto& line : l) std::replace(line.begin(), line.end(), ',', ';');
         });
       },
       1, "split by commas"},
      {"tmy3_decimal_commas",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[100], ".", ","); }); }, 101, "more fields"},
      {"tmy3_without_temperature",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[1], "Dry-bulb (C)", "Dry (C)"); }); }, 2,
       "lacks a column title"},
      {"tmy3_zone_not_a_number",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[0], "1.0,10.000", "CET,10.000"); }); }, 1,
       "time zone"},
      {"tmy3_date_turned_round",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[700], "01/", "31/"); }); }, 701,
       "cannot be read"},
      {"tmy3_hour_25",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[25], "24:00", "25:00"); }); }, 26,
       "cannot be read"},
      {"tmy3_hour_twice", [] { return changed(made_tmy3(), [](Lines& l) { l[40] = l[39]; }); }, 41,
       "more than once"},
      {"tmy3_missing_codes",
       [] { return changed(made_tmy3(), [](Lines& l) { l[60] = with_field(l[60], 6, "-9900"); }); }, -1,
       "1 missing values were filled"},
      {"tmy3_wrong_zone",
       [] { return changed(made_tmy3(), [](Lines& l) { replace(l[0], "NA,1.0", "NA,3.0"); }); }, -1,
       "nearest time zone that fits is +1 h"},
      {"tmy2_row_cut", [] { return changed(made_tmy2(), [](Lines& l) { l[9].resize(60); }); }, 10,
       "60 characters"},
      {"tmy2_letters", [] { return changed(made_tmy2(), [](Lines& l) { l[9].replace(17, 4, "ABCD"); }); }, 10,
       "not a number"},
      {"pvgis_titles_lost", [] { return changed(made_pvgis_tmy(), [](Lines& l) { l.resize(4); }); }, 4,
       "no line of column titles"},
      {"pvgis_truncated", [] { return changed(made_pvgis_tmy(), [](Lines& l) { l.resize(3000); }); }, 3000,
       "whole year"},
      {"pvgis_decimal_commas",
       [] { return changed(made_pvgis_tmy(), [](Lines& l) { replace(l[30], ".", ","); }); }, 31,
       "more fields"},
      {"pvgis_two_files_joined", [] { return joined(made_pvgis_tmy()) + joined(made_pvgis_tmy()); }, 8777,
       "two files joined"},
      {"pvgis_hour_24",
       [] { return changed(made_pvgis_tmy(), [](Lines& l) { replace(l[31], ":2300", ":2400"); }); }, 32,
       "cannot be read"},
      {"pvgis_latitude_text",
       [] { return changed(made_pvgis_tmy(), [](Lines& l) { replace(l[0], "10.000", "ten"); }); }, 1,
       "latitude"},
      {"pvgis_tilted_without_components",
       [] {
         return changed(made_pvgis_hourly("30 deg."),
                        [](Lines& l) { l[8] = "time,G(i),x,y,H_sun,T2m,WS10m,Int"; });
       },
       0, "without its components"},
      {"json_cut", [] { return made_pvgis_tmy_json().substr(0, 20000); }, 1, "not valid JSON"},
      {"json_of_another_kind", [] { return std::string("{\"outputs\": {\"monthly\": []}}"); }, 0,
       "no list of hours"},
      {"power_header_without_end",
       [] { return changed(made_power_hourly(), [](Lines& l) { l.erase(l.begin() + 9); }); }, 100,
       "does not end"},
      {"power_of_a_region",
       [] { return changed(made_power_hourly(), [](Lines& l) { l[3] = "Location: Regional"; }); }, 10,
       "where the weather is from"},
      {"power_unit_unknown",
       [] { return changed(made_power_hourly(), [](Lines& l) { replace(l[7], "Wh/m^2", "langley"); }); }, 11,
       "unit of the radiation"},
      {"power_missing_codes",
       [] { return changed(made_power_hourly(), [](Lines& l) { l[50] = with_field(l[50], 5, "-999"); }); },
       -1, "1 missing values were filled"},
      {"power_row_short", [] { return changed(made_power_hourly(), [](Lines& l) { l[50] = "2023,1,2"; }); },
       51, "3 fields"},
      {"csv_shuffled", [] { return changed(made_csv(), [](Lines& l) { std::swap(l[100], l[7000]); }); }, -1,
       "not in order of time"},
      {"csv_two_headers",
       [] { return changed(made_csv(), [](Lines& l) { l.insert(l.begin() + 50, l[5]); }); }, -1,
       "stand in the file again in line 51"},
      {"csv_decimal_commas_with_commas", [] { return joined(made_csv(",", true)); }, 7, "semicolons"},
      {"csv_slashed_dates",
       [] { return changed(made_csv(), [](Lines& l) { l[6].replace(0, 10, "01/02/2023"); }); }, 7,
       "cannot be told apart"},
      {"csv_unit_unknown", [] { return changed(made_csv(), [](Lines& l) { replace(l[5], "W/m2", "lux"); }); },
       6, "unit of this column"},
      {"csv_zone_name", [] { return changed(made_csv(), [](Lines& l) { l[3] = "# zone: Europe/Oslo"; }); }, 4,
       "time zone cannot be read"},
      {"csv_wrong_zone", [] { return changed(made_csv(), [](Lines& l) { l[3] = "# zone: +4"; }); }, -1,
       "nearest time zone that fits is +1 h"},
      {"csv_no_zone", [] { return changed(made_csv(), [](Lines& l) { l.erase(l.begin() + 3); }); }, -1,
       "time zone +1 h"},
      {"csv_hour_24_00",
       [] {
         return changed(made_csv(), [](Lines& l) { replace(l[30], "2023-01-02 00:00", "2023-01-01 24:00"); });
       },
       -1, "split by Erbs"},
      {"csv_night_below_zero",
       [] { return changed(made_csv(), [](Lines& l) { replace(l[6], ",0.000,", ",-2.5,"); }); }, -1,
       "1 values a little below zero"},
      {"csv_three_hourly",
       [] {
         return changed(made_csv(), [](Lines& l) {
           Lines kept(l.begin(), l.begin() + 6);
           for (std::size_t i = 6; i < l.size(); i += 3) kept.push_back(l[i]);
           l = kept;
         });
       },
       0, "10800 s between rows"},
      {"csv_no_radiation",
       [] { return changed(made_csv(), [](Lines& l) { replace(l[5], "GHI (W/m2)", "rain"); }); }, 0,
       "no global horizontal radiation"},
  };
  return kBroken;
}

TEST(BrokenWeather, EachGivesAMessageOrAStatedRepair) {
  EXPECT_GE(broken().size(), 30U);
  for (const Broken& one : broken()) {
    SCOPED_TRACE(one.name);
    const auto result = read_weather(one.text(), one.name);
    if (one.line < 0) {
      EXPECT_TRUE(result.ok()) << (result.ok() ? "" : base::to_text(result.problems().front()));
      if (!result.ok()) continue;
      EXPECT_NE(said(result.value()).find(one.told), std::string::npos) << said(result.value());
      continue;
    }
    EXPECT_FALSE(result.ok());
    if (result.ok()) continue;
    const base::Problem& problem = result.problems().front();
    EXPECT_EQ(problem.where.line, one.line) << base::to_text(problem);
    EXPECT_NE(base::to_text(problem).find(one.told), std::string::npos) << base::to_text(problem);
    EXPECT_FALSE(problem.remedy.empty()) << base::to_text(problem);
  }
}

}  // namespace
}  // namespace voltwright::files
