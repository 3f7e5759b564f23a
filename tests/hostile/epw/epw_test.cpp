// Broken EPW texts, made in code: each must give problems at the right place, none may crash or hang.
#include "files/weather/epw.h"

#include <gtest/gtest.h>

#include <chrono>

#include "engine/base/random.h"
#include "files/weather/read_weather.h"
#include "tests/hostile/damaged_text.h"
#include "tests/unit/files/synthetic_epw.h"

namespace voltwright::files {
namespace {

const std::vector<std::string>& whole() {
  static const std::vector<std::string> lines = SyntheticEpw().lines();
  return lines;
}

/// As read_weather reads it once the format is known to be EPW.
base::Result<ReadWeather> read_as_epw(const std::string& text, const std::string& name) {
  auto series = read_epw(text, name);
  if (!series.ok()) return series.problems();
  return year_of(std::move(series).value(), name, {});
}

base::Problems problems_of(const std::string& text) {
  const auto result = read_as_epw(text, "broken.epw");
  EXPECT_FALSE(result.ok());
  return result.ok() ? base::Problems{base::Problem{}} : result.problems();
}

/// Problems of the whole year with one line (counted from 1) replaced.
base::Problems with_line(std::size_t line, const std::string& replacement) {
  auto lines = whole();
  lines[line - 1] = replacement;
  return problems_of(joined(lines));
}

base::Problems with_value(std::size_t line, std::size_t field, const std::string& value) {
  return with_line(line, with_field(whole()[line - 1], field, value));
}

void expect_at(const base::Problems& problems, int line, int column, const char* part) {
  ASSERT_FALSE(problems.empty());
  EXPECT_EQ(problems[0].where.line, line);
  EXPECT_EQ(problems[0].where.column, column);
  EXPECT_NE(base::to_text(problems[0]).find(part), std::string::npos) << base::to_text(problems[0]);
}

TEST(BrokenEpw, Empty) { expect_at(problems_of(""), 0, 1, "LOCATION"); }

TEST(BrokenEpw, OtherFile) { expect_at(problems_of("<html>\n<body>\n"), 1, 1, "LOCATION"); }

TEST(BrokenEpw, ZeroBytes) { expect_at(problems_of(std::string(5000, '\0')), 1, 1, "LOCATION"); }

TEST(BrokenEpw, HeaderOnly) {
  const auto problems = problems_of(joined({whole().begin(), whole().begin() + 8}));
  expect_at(problems, 8, 1, "0 rows");
}

TEST(BrokenEpw, HeaderWithoutDataPeriods) {
  expect_at(problems_of(joined({whole().begin(), whole().begin() + 7})), 7, 1, "DATA PERIODS");
}

TEST(BrokenEpw, HeaderLineMissing) {
  auto lines = whole();
  lines.erase(lines.begin() + 7);
  expect_at(problems_of(joined(lines)), 8, 1, "not a header line");
}

TEST(BrokenEpw, LocationCutShort) {
  const auto problems = with_line(1, "LOCATION,Nowhere,-,NIL");
  EXPECT_EQ(problems.size(), 4U);  // latitude, longitude, zone and height
  expect_at(problems, 1, 23, "latitude");
}

TEST(BrokenEpw, LatitudeNotOnEarth) {
  expect_at(with_line(1, "LOCATION,A,-,N,s,0,95,8,1,9"), 1, 20, "latitude");
}

TEST(BrokenEpw, ZoneNotANumber) {
  expect_at(with_line(1, "LOCATION,A,-,N,s,0,45,8,CET,9"), 1, 25, "time zone");
}

TEST(BrokenEpw, RecordsPerHourZero) {
  expect_at(with_line(8, "DATA PERIODS,1,0,Data"), 8, 16, "records per hour");
}

TEST(BrokenEpw, RecordsPerHourSeven) { expect_at(with_line(8, "DATA PERIODS,1,7,Data"), 8, 16, "divide"); }

TEST(BrokenEpw, RecordsPerHourHuge) { expect_at(with_line(8, "DATA PERIODS,1,1e300,Data"), 8, 16, "range"); }

TEST(BrokenEpw, RowMissing) {
  auto lines = whole();
  lines.pop_back();
  expect_at(problems_of(joined(lines)), 8767, 1, "8759 rows");
}

TEST(BrokenEpw, RowTooMany) {
  auto lines = whole();
  lines.push_back(lines.back());
  expect_at(problems_of(joined(lines)), 8769, 1, "8761 rows");
}

TEST(BrokenEpw, HourTwice) {
  auto lines = whole();
  lines[100] = lines[99];
  expect_at(problems_of(joined(lines)), 101, 1, "more than once");
}

TEST(BrokenEpw, RowCutShort) {
  const auto problems = with_line(500, whole()[499].substr(0, 40));
  expect_at(problems, 500, 41, "cut short");
}

TEST(BrokenEpw, FileCutInTheMiddle) {
  const std::string text = joined(whole());
  const auto problems = problems_of(text.substr(0, text.size() / 2));
  EXPECT_FALSE(problems.empty());
}

TEST(BrokenEpw, TextForTemperature) {
  // "2001,1,1,2,60,?9," is 17 characters long, so the temperature begins in column 18.
  expect_at(with_value(10, 6, "warm"), 10, 18, "not a number");
}

TEST(BrokenEpw, InfinityForRadiation) {
  EXPECT_NE(with_value(20, 13, "inf")[0].what.find("number"), std::string::npos);
}

TEST(BrokenEpw, NegativeRadiation) {
  EXPECT_NE(with_value(20, 14, "-5")[0].what.find("range"), std::string::npos);
}

TEST(BrokenEpw, TooMuchRadiation) {
  EXPECT_NE(with_value(20, 13, "5000")[0].what.find("range"), std::string::npos);
}

TEST(BrokenEpw, TooHot) { EXPECT_NE(with_value(20, 6, "80")[0].what.find("range"), std::string::npos); }

TEST(BrokenEpw, MonthThirteen) { expect_at(with_value(10, 1, "13"), 10, 6, "month"); }

TEST(BrokenEpw, ThirtiethOfFebruary) { EXPECT_EQ(with_value(8 + 31 * 24 + 1, 2, "30")[0].field, "day"); }

TEST(BrokenEpw, HourZero) { EXPECT_EQ(with_value(9, 3, "0")[0].field, "hour"); }

TEST(BrokenEpw, HourAndAHalf) { EXPECT_EQ(with_value(9, 3, "1.5")[0].field, "hour"); }

TEST(BrokenEpw, AllRadiationMissing) {
  auto lines = whole();
  for (std::size_t i = 8; i < lines.size(); ++i) lines[i] = with_field(lines[i], 14, "9999");
  // The direct radiation follows from the other two; that is said.
  const auto repaired = read_as_epw(joined(lines), "broken.epw");
  ASSERT_TRUE(repaired.ok());
  ASSERT_FALSE(repaired.value().repairs.empty());
  EXPECT_NE(repaired.value().repairs.front().find("direct normal"), std::string::npos);
  for (std::size_t i = 8; i < lines.size(); ++i) lines[i] = with_field(lines[i], 13, "9999");
  EXPECT_NE(problems_of(joined(lines))[0].what.find("global horizontal"), std::string::npos);
}

TEST(BrokenEpw, AllProblemsAtOnceButNotThousands) {
  auto lines = whole();
  for (std::size_t i = 8; i < lines.size(); ++i) lines[i] = with_field(lines[i], 6, "x");
  const auto problems = problems_of(joined(lines));
  EXPECT_EQ(problems.size(), 26U);
  EXPECT_NE(problems.back().what.find("8735 further"), std::string::npos) << problems.back().what;
}

TEST(BrokenEpw, UnclosedQuoteAndEndlessLine) {
  EXPECT_FALSE(with_line(1, "LOCATION,\"Nowhere,-,NIL,s,0,45,8,1,9").empty());
  EXPECT_FALSE(problems_of("LOCATION" + std::string(2'000'000, ',')).empty());
}

TEST(BrokenEpw, SurvivesRandomDamage) {
  // Three seconds of random edits on a whole year and on its beginning; the seed is fixed, the count is not.
  const std::string year = joined(whole());
  const std::string head = year.substr(0, 3000);
  base::RandomStream random(20231);
  const std::string bites = "0,9-.\n\r\"e+xN\xff ";
  const auto until = std::chrono::steady_clock::now() + std::chrono::seconds(3);
  std::size_t runs = 0;
  for (; std::chrono::steady_clock::now() < until; ++runs) {
    std::string text = runs % 8 == 0 ? year : head;
    hostile::bite(text, bites, random);
    const auto result = read_as_epw(text, "damaged.epw");
    if (result.ok()) {
      ASSERT_EQ(result.value().weather.ghi_W_m2.size(), 8760U);
      for (const double g : result.value().weather.ghi_W_m2) ASSERT_TRUE(g >= 0.0 && g <= 1500.0);
    } else {
      ASSERT_FALSE(result.problems().empty());
      ASSERT_LE(result.problems().size(), 26U);
    }
  }
  EXPECT_GT(runs, 20U);
}

}  // namespace
}  // namespace voltwright::files
