// Works the fits of the battery records out again from the survey of 171 stated figures, where it is at hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <vector>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

using Row = std::map<std::string, std::string>;

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      cells.emplace_back();
    } else if (c != '\r') {
      cells.back() += c;
    }
  }
  return cells;
}

std::vector<Row> survey() {
  std::ifstream in(std::filesystem::path(VW_SOURCE_DIR) / "../shared/data/generic_batteries.csv");
  std::vector<Row> rows;
  std::string line;
  if (!std::getline(in, line)) return rows;
  const auto names = cells_of(line);
  while (std::getline(in, line)) {
    const auto cells = cells_of(line);
    Row row;
    for (std::size_t i = 0; i < std::min(cells.size(), names.size()); ++i) row[names[i]] = cells[i];
    if (row["quality"] != "X") rows.push_back(row);
  }
  return rows;
}

double value(const Row& row, const char* name) { return std::strtod(row.at(name).c_str(), nullptr); }

struct Line {
  double offset = 0.0;
  double slope = 0.0;
  int rows = 0;
};

/// Least squares of mass on ampere-hours over the rows of a kind and voltage from `least_Ah`.
Line mass_line(const std::vector<Row>& rows, const std::string& kind, double least_V, double most_V,
               double least_Ah) {
  double n = 0.0, sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0;
  for (const Row& row : rows) {
    const double volt = value(row, "V");
    if (row.at("chemistry") != kind || row.at("mass_kg").empty() || volt < least_V || volt > most_V) continue;
    const double x = value(row, "Ah");
    const double y = value(row, "mass_kg");
    if (x < least_Ah) continue;
    n += 1.0, sx += x, sy += y, sxx += x * x, sxy += x * y;
  }
  const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  return {(sy - slope * sx) / n, slope, static_cast<int>(n)};
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

class Survey : public ::testing::Test {
 protected:
  void SetUp() override {
    rows_ = survey();
    if (rows_.empty()) GTEST_SKIP() << "the survey is not beside the source tree";
  }
  std::vector<Row> rows_;
};

TEST_F(Survey, MassesFollowTheFits) {
  const struct {
    const char* kind;
    double least_V, most_V, least_Ah;
    int rows;
    std::vector<const char*> batteries;
  } kFits[] = {{"LFP", 12.7, 13.0, 45.0, 23, {"lfp-12v-50ah", "lfp-12v-100ah", "lfp-12v-300ah"}},
               {"LFP", 25.5, 25.7, 0.0, 11, {"lfp-24v-50ah", "lfp-24v-200ah"}},
               {"AGM", 12.0, 12.0, 20.0, 26, {"agm-12v-50ah", "agm-12v-98ah", "agm-12v-200ah"}}};
  for (const auto& fit : kFits) {
    const Line line = mass_line(rows_, fit.kind, fit.least_V, fit.most_V, fit.least_Ah);
    EXPECT_EQ(line.rows, fit.rows) << fit.kind;
    for (const char* id : fit.batteries) {
      const auto& battery = *catalogue().battery(id);
      // The records keep three digits.
      EXPECT_NEAR(battery.mass_kg.typical, line.offset + line.slope * battery.capacity_Ah,
                  0.006 * battery.mass_kg.typical)
          << id;
    }
  }
}

TEST_F(Survey, RateRatiosOfGlassMat) {
  std::vector<double> ten, five, one;
  for (const Row& row : rows_) {
    if (row.at("chemistry") != "AGM" || row.at("C1_Ah").empty()) continue;
    ten.push_back(value(row, "C10_Ah") / value(row, "Ah"));
    five.push_back(value(row, "C5_Ah") / value(row, "Ah"));
    one.push_back(value(row, "C1_Ah") / value(row, "Ah"));
  }
  EXPECT_EQ(one.size(), 26U);
  EXPECT_NEAR(median(ten), 0.939, 0.002);
  EXPECT_NEAR(median(five), 0.839, 0.002);
  EXPECT_NEAR(median(one), 0.614, 0.002);
}

TEST_F(Survey, ResistanceOfLargeGlassMatBlocks) {
  std::vector<double> product;
  for (const Row& row : rows_) {
    if (row.at("chemistry") != "AGM" || row.at("Ri_mohm").empty() || value(row, "Ah") < 80.0) continue;
    product.push_back(value(row, "Ri_mohm") * value(row, "Ah") * 1e-3);
  }
  EXPECT_NEAR(6.0 * chemistry("agm").resistance.ohmic_ohm_Ah, median(product), 0.005);
}

TEST_F(Survey, PricesOfTwelveVoltIronPhosphate) {
  std::vector<double> price;
  for (const Row& row : rows_) {
    const std::string& year = row.at("year");
    if (row.at("chemistry") != "LFP" || row.at("currency") != "USD" || value(row, "V") > 13.0) continue;
    if (year != "2026" && year != "2025-26") continue;
    price.push_back(value(row, "price") / (value(row, "V") * value(row, "Ah") / 1000.0));
  }
  EXPECT_NEAR(catalogue().battery("lfp-12v-100ah")->price.typical / 1.28, median(price), 2.0);
}

}  // namespace
}  // namespace voltwright::published
