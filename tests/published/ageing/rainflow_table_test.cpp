// The counter against a rainflow library of the Python registry, 1,000 random series (rainflowPython, version
// in the head of the table; rainflow_table.py says how they are drawn). Exact.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <fstream>
#include <string>

#include "engine/ageing/rainflow.h"
#include "engine/base/random.h"

namespace voltwright::ageing {
namespace {

constexpr std::uint64_t kSeed = 6;

std::vector<double> series_of(std::uint64_t index) {
  base::RandomStream random(kSeed, index);
  std::vector<double> series(3 + random.next_bits() % 58);
  for (double& v : series) v = static_cast<double>(random.next_bits() % 41) - 20.0;
  return series;
}

std::uint64_t doubled(double value) { return static_cast<std::uint64_t>(std::lround(2.0 * value)); }

std::string row_of(std::uint64_t index) {
  const std::vector<double> series = series_of(index);
  RainflowCounter counter(0.0);
  for (const double v : series) counter.add(v);
  std::uint64_t halves = 0;
  std::uint64_t path = 0;
  std::uint64_t fingerprint = 0;
  const auto swings = counter.swings();
  for (const Swing& s : swings) {
    halves += doubled(s.count);
    path += doubled(s.depth * s.count);
    fingerprint +=
        base::mix_bits((doubled(s.depth) << 32U) + (doubled(s.mean_soc + 500.0) << 8U) + doubled(s.count));
  }
  std::string hex(16, '0');
  for (std::size_t i = 0; i < hex.size(); ++i)
    hex[15 - i] = "0123456789abcdef"[(fingerprint >> (4 * i)) & 15U];
  return std::to_string(index) + ',' + std::to_string(series.size()) + ',' + std::to_string(swings.size()) +
         ',' + std::to_string(halves) + ',' + std::to_string(path) + ',' + hex;
}

TEST(Rainflow, CountsAsARegistryLibraryDoes) {
  std::ifstream table(VW_SOURCE_DIR "/tests/published/ageing/rainflow_table.csv");
  std::string line;
  std::getline(table, line);
  EXPECT_NE(line.find("rainflow 3.2.0, seed 6, 1000 series"), std::string::npos) << line;
  std::getline(table, line);
  std::uint64_t rows = 0;
  for (; std::getline(table, line); ++rows) ASSERT_EQ(row_of(rows), line);
  EXPECT_EQ(rows, 1000U);
}

}  // namespace
}  // namespace voltwright::ageing
