// Broken plans of our own making: each must give problems, and none may crash, hang or be accepted.
#include <gtest/gtest.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/hostile/plan_mutation.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& path) {
  const std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

void expect_refused(const std::string& text, const std::string& label) {
  const auto start = std::chrono::steady_clock::now();
  const base::Result<ReadPlan> read = read_small(text);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  EXPECT_FALSE(read.ok()) << label;
  EXPECT_EQ(broken_promise(text), "") << label;
  // Generous for sanitizers; the reading itself takes milliseconds.
  EXPECT_LT(took.count(), 5.0) << label;
}

TEST(PlanCorpus, EveryBrokenFileIsRefused) {
  int count = 0;
  for (const fs::directory_entry& entry : fs::directory_iterator(VW_SOURCE_DIR "/tests/hostile/plans")) {
    expect_refused(bytes_of(entry.path()), entry.path().filename().string());
    ++count;
  }
  EXPECT_GE(count, 40);
}

TEST(PlanCorpus, LargeAndDeepTexts) {
  expect_refused(std::string(10'000'000, '['), "ten million brackets");
  expect_refused(std::string(900'000, '['), "brackets below the size limit");
  expect_refused("x = " + std::string(500'000, '['), "array in array");
  expect_refused(std::string(900'000, '\n') + "x", "line feeds");
  expect_refused(std::string(900'000, '\r') + "x", "carriage returns");
  std::string inline_tables;
  for (int i = 0; i < 100'000; ++i) inline_tables += "a={";
  expect_refused(inline_tables, "table in table");
  std::string dotted = "a";
  for (int i = 0; i < 400'000; ++i) dotted += ".a";
  expect_refused(dotted + " = 1", "one key of many parts");
  expect_refused("[" + dotted + "]", "one header of many parts");
}

TEST(PlanCorpus, ManySectionsAndProblems) {
  std::string loads = short_plan();
  for (int i = 0; i < 60'000; ++i) loads += "[[load]]\n";
  expect_refused(loads, "sixty thousand loads");
  std::string keys;
  for (int i = 0; i < 50'000; ++i) {
    keys += 'k';
    keys += std::to_string(i);
    keys += " = 1\n";
  }
  expect_refused(keys + short_plan(), "fifty thousand unknown keys");
  const base::Result<ReadPlan> read = read_small(keys + short_plan());
  ASSERT_FALSE(read.ok());
  EXPECT_LE(read.problems().size(), 201U);
}

TEST(PlanCorpus, DamagedPlansKeepThePromise) {
  const auto start = std::chrono::steady_clock::now();
  // A fixed sequence of texts, cut short by time alone.
  for (std::uint64_t number = 0; number < 20'000; ++number) {
    ASSERT_EQ(broken_promise(damaged_plan(number)), "") << "number " << number << "\n"
                                                        << damaged_plan(number);
    if (std::chrono::steady_clock::now() - start > std::chrono::seconds(3)) break;
  }
}

}  // namespace
}  // namespace voltwright::files
