// Every output of the chart is well formed and says the same.
#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "app/chart.h"
#include "app/slide_png.h"
#include "tests/unit/files/report/markup_check.h"

namespace voltwright::app {
namespace {

ChartResponse drawn(const ChartRequest& request = {}) {
  auto made = chart_chemistries(request);
  if (!made) throw std::runtime_error(base::to_text(made.problems().front()));
  return std::move(made).value();
}

std::vector<std::vector<std::string>> csv_rows(const std::string& text) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row(1);
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      row.emplace_back();
    } else if (c == '\n' && !quoted) {
      rows.push_back(std::move(row));
      row = {""};
    } else {
      row.back() += c;
    }
  }
  EXPECT_FALSE(quoted);
  EXPECT_EQ(row, std::vector<std::string>{""}) << "the last line does not end";
  return rows;
}

TEST(ChartOutput, CsvHasOneWidthAndEveryFigureItsSource) {
  const auto rows = csv_rows(chart_csv(drawn()));
  ASSERT_GT(rows.size(), 100U);
  std::set<std::string> chemistries;
  std::size_t missing = 0;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    ASSERT_EQ(rows[i].size(), rows[0].size()) << i;
    chemistries.insert(rows[i][0]);
    if (rows[i][13] == "missing") {
      ++missing;
      EXPECT_EQ(rows[i][6], "") << rows[i][0];
      continue;
    }
    EXPECT_FALSE(rows[i][15].empty()) << rows[i][0] << ' ' << rows[i][2];
    EXPECT_LE(std::stod(rows[i][5]), std::stod(rows[i][6]));
    EXPECT_LE(std::stod(rows[i][6]), std::stod(rows[i][7]));
    EXPECT_GE(std::stoi(rows[i][4]), 1990);
  }
  EXPECT_EQ(chemistries.size(), drawn().kinds.size());
  EXPECT_GT(missing, 0U);
}

TEST(ChartOutput, CsvAsOfAYearHoldsNothingYounger) {
  ChartRequest request;
  request.year = 2016;
  for (const auto& row : csv_rows(chart_csv(drawn(request)))) {
    if (row[0] == "chemistry" || row[4].empty()) continue;
    EXPECT_LE(std::stoi(row[4]), 2016) << row[0] << ' ' << row[2];
  }
}

TEST(ChartOutput, JsonIsWholeAndAgreesWithTheCsv) {
  ChartRequest request;
  request.since = 2016;
  request.use = "house-bank";
  const ChartResponse response = drawn(request);
  const auto json = nlohmann::json::parse(to_json(response));
  EXPECT_EQ(json["year"], response.chart.year);
  EXPECT_EQ(json["since"], 2016);
  EXPECT_EQ(json["weighting"]["weights"]["life"], 3.0);
  EXPECT_EQ(json["scores"].size(), response.kinds.size());
  EXPECT_FALSE(json["changes"].empty());
  EXPECT_FALSE(json["family_tree"]["branches"].empty());
  std::size_t figures = 0;
  for (const auto& row : json["chemistries"]) {
    for (const auto& figure : row["figures"]) {
      ++figures;
      const int origins = static_cast<int>(figure.contains("source")) +
                          static_cast<int>(figure.contains("derived_from")) +
                          static_cast<int>(figure.contains("assumption"));
      EXPECT_EQ(origins, 1);
    }
  }
  std::size_t lines = 0;
  for (const auto& row : csv_rows(chart_csv(response))) lines += row[4].empty() ? 0U : 1U;
  EXPECT_EQ(figures, lines - 1);
}

TEST(ChartOutput, SvgIsWholeAndNeedsNothingFromElsewhere) {
  ChartRequest request;
  request.since = 2016;
  request.weigh = "energy=3,price=1";
  const std::string svg = chart_svg(drawn(request));
  EXPECT_EQ(files::unbalanced(svg), "");
  EXPECT_TRUE(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1600\" height=\"900\""));
  EXPECT_EQ(svg.find("href"), std::string::npos);
  EXPECT_EQ(svg.find("url("), std::string::npos);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
  const std::string text = files::visible_text(svg);
  for (const char* word : {"as of 2026", "as of 2016", "energy 3, price 1", "LFP", "no figure", "0 to 45"}) {
    EXPECT_NE(text.find(word), std::string::npos) << word;
  }
}

// To draw it again: voltwright chart --year 2026 --since 2016 --svg docs/pictures/chemistries.svg
TEST(ChartOutput, PictureOfTheHandbookIsTheOneDrawnNow) {
  ChartRequest request;
  request.year = 2026;
  request.since = 2016;
  std::ifstream in(std::filesystem::path(VW_SOURCE_DIR) / "docs/pictures/chemistries.svg");
  std::ostringstream text;
  text << in.rdbuf();
  EXPECT_EQ(text.str(), chart_svg(drawn(request)));
}

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = value * 256 + static_cast<unsigned char>(bytes[i]);
  return value;
}

TEST(ChartOutput, PngHasItsSizeAndInk) {
  const auto png = slide_png(chart_svg(drawn()));
  ASSERT_TRUE(png) << base::to_text(png.problems().front());
  const std::string& bytes = png.value();
  ASSERT_GT(bytes.size(), 20000U) << "an empty page would be smaller";
  EXPECT_EQ(bytes.substr(0, 8), "\x89PNG\r\n\x1a\n");
  EXPECT_EQ(big_endian(bytes, 16), 1920U);
  EXPECT_EQ(big_endian(bytes, 20), 1080U);
}

std::string fault(const ChartRequest& request) {
  const auto made = chart_chemistries(request);
  return made ? "" : base::to_text(made.problems().front());
}

TEST(ChartOutput, WrongRequestsAreTold) {
  ChartRequest request;
  request.year = 12;
  EXPECT_NE(fault(request).find("--year"), std::string::npos);
  request = {};
  request.year = 2016;
  request.since = 2020;
  EXPECT_NE(fault(request).find("--since"), std::string::npos);
  request = {};
  request.use = "housebank";
  EXPECT_NE(fault(request).find("\"house-bank\""), std::string::npos);
  request.weigh = "energy=1";
  EXPECT_NE(fault(request).find("one of the two"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::app
