#pragma once
// How the lives of cells of one batch differ, and what that makes of a bank. Method:
// docs/method/life_at_use.md.
#include <cstdint>
#include <vector>

#include "engine/base/random.h"
#include "engine/units/ranged.h"

namespace voltwright::ageing {

/// Coefficient of variation of the lives of like cells under like use where none was measured: judgement, no
/// source.
inline constexpr double kLifeSpreadIfUnknown = 0.3;

/// A bank as its lives see it: in each string the first worn unit (cell, or block of lead-acid) sets what can
/// be drawn; strings side by side add.
struct Strings {
  int units_in_series = 4;  // >= 1
  int in_parallel = 1;      // >= 1
};

/// Life of one unit over the mean life: log-normal with mean 1 and this coefficient of variation, >= 0.
double drawn_life(double spread, base::RandomStream& random);

/// Life of a bank over the life of its mean unit, in `draws` draws keyed by `seed`, sorted. The mean over the
/// strings of the shortest life in each: exact for one string; for more it takes the loss as straight over
/// the difference between them.
std::vector<double> bank_lives(const Strings& strings, double spread, std::uint64_t seed, int draws);

/// Of sorted values: the 5 % quantile, the median, the 95 % quantile; nearest rank. @pre not empty
units::Ranged central_90(const std::vector<double>& sorted);

}  // namespace voltwright::ageing
