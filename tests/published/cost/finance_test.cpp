// Present value, internal rates, annuity and payback against the values of two finance libraries
// (numpyFinancial, pyxirr); finance_table.py beside this file says which function each row comes from.
#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "engine/cost/cash_flow.h"
#include "engine/cost/internal_rate.h"

namespace voltwright::cost {
namespace {

struct Row {
  std::string kind;
  double rate = 0.0;
  double years = 0.0;
  std::vector<Flow> flows;
  std::vector<double> answer;
};

std::vector<std::string> parted(const std::string& text, char by) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, by);) parts.push_back(part);
  return parts;
}

std::vector<Row> read_table() {
  std::ifstream file(VW_FINANCE_TABLE);
  std::vector<Row> rows;
  std::string line;
  std::getline(file, line);  // versions
  std::getline(file, line);  // titles
  while (std::getline(file, line)) {
    const std::vector<std::string> fields = parted(line, ',');
    Row row;
    row.kind = fields.at(0);
    row.rate = std::stod(fields.at(1));
    row.years = std::stod(fields.at(2));
    for (const std::string& pair : parted(fields.at(3), ';')) {
      const std::size_t colon = pair.find(':');
      row.flows.push_back({std::stod(pair.substr(0, colon)), std::stod(pair.substr(colon + 1))});
    }
    for (const std::string& value : parted(fields.at(4), ';')) row.answer.push_back(std::stod(value));
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> rows_of(const std::string& kind) {
  static const std::vector<Row> all = read_table();
  std::vector<Row> some;
  for (const Row& row : all) {
    if (row.kind == kind) some.push_back(row);
  }
  return some;
}

/// Sum of the sizes of the discounted payments: what rounding is a share of.
double size_of(const Row& row) {
  double size = 0.0;
  for (const Flow& flow : row.flows) size += std::abs(flow.amount) * discount_factor(row.rate, flow.year);
  return size;
}

TEST(Finance, PresentValueIsThatOfTheLibraries) {
  // Both sum up to 31 payments; rounding stays below 1e-12 of their sizes.
  for (const char* kind : {"npv", "npv_at"}) {
    const std::vector<Row> rows = rows_of(kind);
    ASSERT_GE(rows.size(), 80U);
    for (const Row& row : rows) {
      EXPECT_NEAR(net_present_value(row.flows, row.rate), row.answer[0], 1e-12 * size_of(row)) << kind;
    }
  }
}

TEST(Finance, TheOneInternalRateIsThatOfTheLibraries) {
  // The libraries stop within about 1e-9 of the root.
  for (const char* kind : {"irr", "irr_at"}) {
    const std::vector<Row> rows = rows_of(kind);
    ASSERT_GE(rows.size(), 60U);
    for (const Row& row : rows) {
      const InternalRates found = internal_rates(row.flows);
      ASSERT_EQ(found.count, RateCount::kOne) << kind;
      EXPECT_NEAR(*found.only(), row.answer[0], 1e-8 * (1.0 + row.answer[0])) << kind;
    }
  }
}

TEST(Finance, SeveralInternalRatesAreTheRootsOfThePolynomial) {
  // Up to four rates at least 0.01 apart; the matrix method is good to about 1e-9 of a root then.
  const std::vector<Row> rows = rows_of("rates");
  ASSERT_GE(rows.size(), 100U);
  for (const Row& row : rows) {
    const InternalRates found = internal_rates(row.flows);
    EXPECT_EQ(found.count, RateCount::kSeveral);
    EXPECT_FALSE(found.only());
    ASSERT_EQ(found.rates.size(), row.answer.size());
    for (std::size_t i = 0; i < row.answer.size(); ++i) {
      EXPECT_NEAR(found.rates[i], row.answer[i], 1e-8 * (1.0 + row.answer[i]));
    }
  }
}

TEST(Finance, AnnuityIsThatOfTheLibraries) {
  // The library forms 1 - (1 + r)^-n directly and loses digits at small rates.
  for (const Row& row : rows_of("pv")) {
    EXPECT_NEAR(annuity_factor(row.rate, row.years), row.answer[0], 1e-10 * row.answer[0]);
  }
  const std::vector<Row> rows = rows_of("pmt");
  ASSERT_GE(rows.size(), 50U);
  for (const Row& row : rows) {
    EXPECT_NEAR(annualised(1.0, row.rate, row.years), row.answer[0], 1e-10 * row.answer[0]);
  }
}

TEST(Finance, DiscountedPaybackIsTheNumberOfPeriodsOfTheLibrary) {
  const std::vector<Row> rows = rows_of("payback");
  ASSERT_GE(rows.size(), 50U);
  for (const Row& row : rows) {
    const Payback found = payback(row.flows, row.rate);
    ASSERT_TRUE(found.year);
    EXPECT_EQ(*found.year, row.answer[0]);
    EXPECT_TRUE(found.lasts);
  }
}

}  // namespace
}  // namespace voltwright::cost
