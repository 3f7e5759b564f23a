// Three-point counting with the rest as half cycles is four-point counting with its residue as half cycles
// (McInnes and Meehan 2008): 20,000 random series, exact.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <map>
#include <vector>

#include "engine/ageing/rainflow.h"
#include "engine/base/random.h"

namespace voltwright::ageing {
namespace {

using Count = std::map<std::array<double, 2>, double>;  // by range and mean

std::vector<double> turning_points(const std::vector<double>& series) {
  std::vector<double> turns;
  for (const double v : series) {
    if (!turns.empty() && v == turns.back()) continue;
    if (turns.size() >= 2 && (v > turns.back()) == (turns.back() > turns[turns.size() - 2])) turns.pop_back();
    turns.push_back(v);
  }
  return turns;
}

void count(Count& counts, double a, double b, double cycles) {
  counts[{std::fabs(a - b), 0.5 * (a + b)}] += cycles;
}

/// A range that lies within the two around it is a cycle.
Count four_point(const std::vector<double>& series) {
  Count counts;
  std::vector<double> stack;
  for (const double v : turning_points(series)) {
    stack.push_back(v);
    while (stack.size() >= 4) {
      const double* p = stack.data() + stack.size() - 4;
      const double inner = std::fabs(p[2] - p[1]);
      if (inner > std::fabs(p[1] - p[0]) || inner > std::fabs(p[3] - p[2])) break;
      count(counts, p[1], p[2], 1.0);
      stack.erase(stack.end() - 3, stack.end() - 1);
    }
  }
  for (std::size_t i = 1; i < stack.size(); ++i) count(counts, stack[i - 1], stack[i], 0.5);
  return counts;
}

TEST(Rainflow, ThreePointsCountWhatFourPointsCount) {
  for (std::uint64_t k = 0; k < 20000; ++k) {
    base::RandomStream random(77, k);
    std::vector<double> series(3 + random.next_bits() % 38);
    for (double& v : series) v = static_cast<double>(random.next_bits() % 21) - 10.0;
    RainflowCounter counter(0.0);
    for (const double v : series) counter.add(v);
    Count three;
    double path = 0.0;
    for (const Swing& s : counter.swings()) {
      three[{s.depth, s.mean_soc}] += s.count;
      path += 2.0 * s.count * s.depth;
    }
    ASSERT_EQ(three, four_point(series)) << k;
    for (std::size_t i = 1; i < series.size(); ++i) path -= std::fabs(series[i] - series[i - 1]);
    ASSERT_EQ(path, 0.0) << k;
  }
}

}  // namespace
}  // namespace voltwright::ageing
