#include "engine/ageing/making_spread.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace voltwright::ageing {

namespace {

/// Purpose of the stream, so that no other use of the seed draws the same numbers.
constexpr std::uint64_t kLives = 0x6c69766573ULL;

double at_rank(const std::vector<double>& sorted, double share) {
  const double last = static_cast<double>(sorted.size() - 1);
  return sorted[static_cast<std::size_t>(std::lround(share * last))];
}

}  // namespace

double drawn_life(double spread, base::RandomStream& random) {
  const double variance = std::log1p(spread * spread);
  return std::exp(std::sqrt(variance) * random.normal() - 0.5 * variance);
}

std::vector<double> bank_lives(const Strings& strings, double spread, std::uint64_t seed, int draws) {
  std::vector<double> lives;
  lives.reserve(static_cast<std::size_t>(draws));
  for (int draw = 0; draw < draws; ++draw) {
    double sum = 0.0;
    for (int string = 0; string < strings.in_parallel; ++string) {
      // One stream a string: a string more or less leaves the others as they were.
      base::RandomStream random(seed, kLives, static_cast<std::uint64_t>(draw),
                                static_cast<std::uint64_t>(string));
      double shortest = std::numeric_limits<double>::infinity();
      for (int unit = 0; unit < strings.units_in_series; ++unit)
        shortest = std::min(shortest, drawn_life(spread, random));
      sum += shortest;
    }
    lives.push_back(sum / strings.in_parallel);
  }
  std::sort(lives.begin(), lives.end());
  return lives;
}

units::Ranged central_90(const std::vector<double>& sorted) {
  constexpr double kLow = 0.05;
  constexpr double kHigh = 0.95;
  return {at_rank(sorted, kLow), at_rank(sorted, 0.5), at_rank(sorted, kHigh)};
}

}  // namespace voltwright::ageing
