// The ready-made checks of cells: one case for each row of checks.json.
#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "files/embedded.h"
#include "tests/published/cells/quantities.h"

namespace voltwright::published {
namespace {

base::Result<Checks> read_file() {
  std::ostringstream text;
  text << std::ifstream(VW_CELL_CHECKS, std::ios::binary).rdbuf();
  return read_checks(text.str(), "checks.json");
}

/// The file's rows; none if it cannot be read, which ChecksFile.CanBeRead reports.
const Checks& checks() {
  static const Checks kRead = [] {
    auto read = read_file();
    return read.ok() ? std::move(read).value() : Checks{};
  }();
  return kRead;
}

std::string lines(const base::Problems& problems) {
  std::string all;
  for (const auto& problem : problems) all += problem.field + ": " + base::to_text(problem) + '\n';
  return all;
}

class CellCheck : public ::testing::TestWithParam<Row> {};

TEST_P(CellCheck, Holds) {
  const Row& row = GetParam();
  const auto found = evaluate(row);
  ASSERT_TRUE(found.ok()) << lines(found.problems());
  EXPECT_NEAR(found.value(), row.expected, allowance(row))
      << row.quantity << "; " << row.source << (row.note.empty() ? "" : "; ") << row.note;
}

INSTANTIATE_TEST_SUITE_P(Row, CellCheck, ::testing::ValuesIn(checks().rows),
                         [](const auto& row) { return row.param.id; });

TEST(ChecksFile, CanBeRead) {
  const auto read = read_file();
  ASSERT_TRUE(read.ok()) << lines(read.problems());
  EXPECT_FALSE(read.value().rows.empty());
}

TEST(ChecksFile, NamesEachRowOnce) {
  std::set<std::string> ids;
  for (const Row& row : checks().rows) {
    EXPECT_TRUE(ids.insert(row.id).second) << row.id;
    EXPECT_FALSE(row.source.empty()) << row.id;
  }
}

// Every check of the list has a row or a reason, and none both.
TEST(ChecksFile, EveryCheckIsThereOrExplained) {
  std::set<int> with_row, explained;
  for (const Row& row : checks().rows) with_row.insert(row.check());
  for (const LeftOut& left_out : checks().left_out) {
    EXPECT_TRUE(explained.insert(left_out.check).second) << left_out.check;
    EXPECT_EQ(with_row.count(left_out.check), 0U) << left_out.check;
    EXPECT_FALSE(left_out.reason.empty()) << left_out.check;
  }
  for (const LeftOut& partly : checks().partly_left_out) {
    EXPECT_EQ(with_row.count(partly.check), 1U) << partly.check;
    EXPECT_FALSE(partly.reason.empty()) << partly.check;
  }
  for (int check = 1; check <= kChecks; ++check) {
    EXPECT_EQ(with_row.count(check) + explained.count(check), 1U) << check;
  }
}

// A source "bib:key" must be a key of the bibliography.
TEST(ChecksFile, SourcesAreInTheBibliography) {
  std::string bibliography;
  for (const auto& file : files::embedded_catalogue()) {
    if (file.name == "references.bib") bibliography = file.bytes;
  }
  ASSERT_FALSE(bibliography.empty());
  for (const Row& row : checks().rows) {
    const std::string& source = row.source;
    for (std::size_t at = source.find("bib:"); at != std::string::npos; at = source.find("bib:", at + 1)) {
      const std::size_t end = source.find_first_of(" ,;:.)", at + 4);
      const std::string key = source.substr(at + 4, end - at - 4);
      EXPECT_NE(bibliography.find('{' + key + ','), std::string::npos) << row.id << ": " << key;
    }
  }
}

Row plain_row(const std::string& quantity) {
  Row row;
  row.id = "1a";
  row.quantity = quantity;
  row.inputs.put("temperature_C", 25.0);
  return row;
}

TEST(Evaluating, RefusesAQuantityThatNothingGives) {
  EXPECT_TRUE(evaluate(plain_row("size_factor")).ok());
  EXPECT_FALSE(evaluate(plain_row("size_of_everything")).ok());
}

TEST(Evaluating, RefusesInputsThatAreNotItsOwn) {
  Row extra = plain_row("size_factor");
  extra.inputs.put("humidity", 0.5);
  EXPECT_FALSE(evaluate(extra).ok());
  Row missing = plain_row("resistance_factor");
  EXPECT_FALSE(evaluate(missing).ok());
  Row text = plain_row("size_factor");
  text.inputs.put("temperature_C", std::string("warm"));
  EXPECT_FALSE(evaluate(text).ok());
}

TEST(Evaluating, RefusesARecordThatIsNotThere) {
  Row row;
  row.quantity = "coulombic_efficiency";
  row.inputs.put("record", std::string("unobtainium"));
  EXPECT_FALSE(evaluate(row).ok());
}

TEST(ReadingChecks, FindsMistakesOfTheFile) {
  const auto rows = [](const std::string& row) {
    return read_checks("{\"rows\": [" + row + "], \"left_out\": [], \"partly_left_out\": []}", "test").ok();
  };
  const std::string whole =
      R"("id": "1a", "quantity": "q", "inputs": {}, "expected": 1, "tolerance": 0.1, "source": "s")";
  EXPECT_TRUE(rows("{" + whole + "}"));
  EXPECT_FALSE(rows("{" + whole + R"(, "tolerence": 1})"));
  EXPECT_FALSE(rows(R"({"id": "1a", "quantity": "q", "inputs": {}, "expected": 1, "source": "s"})"));
  EXPECT_FALSE(rows(R"({"id": "1a", "quantity": "q", "inputs": {"x": [1]}, "expected": 1, "tolerance": 0.1,
                        "source": "s"})"));
  EXPECT_FALSE(read_checks("{", "test").ok());
}

}  // namespace
}  // namespace voltwright::published
