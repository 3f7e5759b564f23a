#include "engine/sky/daily_clearness.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace voltwright::sky {
namespace {

using Row = std::array<double, 10>;

/// Rank, 0 to 10, that a uniform number reaches in the cumulated row, linear within a state.
double draw_rank(const Row& row, double uniform) {
  double rest = uniform;
  for (std::size_t state = 0; state < row.size(); ++state) {
    if (rest < row[state]) return static_cast<double>(state) + rest / row[state];
    rest -= row[state];
  }
  std::size_t last = row.size() - 1;
  while (last > 0 && row[last] <= 0.0) --last;
  return static_cast<double>(last) + 0.999;
}

}  // namespace

ClearnessSequence::ClearnessSequence(const ClearnessMatrices& matrices)
    : matrices_(matrices), long_run_(matrices.matrices.size()), known_(matrices.matrices.size(), 0) {
  for (ClearnessMatrices::Matrix& matrix : matrices_.matrices) {
    for (Row& row : matrix.row) {
      const double sum = std::accumulate(row.begin(), row.end(), 0.0);
      for (double& p : row) p = sum > 0.0 ? p / sum : 0.1;
    }
  }
}

std::size_t ClearnessSequence::class_of(double mean) {
  if (!(mean >= 0.30)) return 0;
  // The small addition keeps an edge such as 0.35, which binary numbers miss, in the class above it.
  return std::min<std::size_t>(9, static_cast<std::size_t>((mean - 0.30) / 0.05 + 1e-9) + 1);
}

const ClearnessSequence::LongRun& ClearnessSequence::long_run(std::size_t matrix) {
  LongRun& found = long_run_[matrix];
  if (known_[matrix] != 0) return found;
  const ClearnessMatrices::Matrix& m = matrices_.matrices[matrix];
  Row share;
  share.fill(0.1);
  // Averaging each step with the one before lets also a matrix that alternates converge.
  for (int step = 0; step < 150; ++step) {
    Row moved{};
    for (std::size_t from = 0; from < 10; ++from) {
      for (std::size_t to = 0; to < 10; ++to) moved[to] += share[from] * m.row[from][to];
    }
    for (std::size_t state = 0; state < 10; ++state) share[state] = 0.5 * (share[state] + moved[state]);
  }
  found.share = share;
  const double width = (m.k_max - m.k_min) / 10.0;
  for (std::size_t state = 0; state < 10; ++state) {
    found.mean += share[state] * (m.k_min + width * (static_cast<double>(state) + 0.5));
  }
  known_[matrix] = 1;
  return found;
}

double ClearnessSequence::scale_for(std::size_t matrix, double mean, double largest) {
  const LongRun& days = long_run(matrix);
  const ClearnessMatrices::Matrix& m = matrices_.matrices[matrix];
  double scale = mean / std::max(days.mean, 1e-3);
  if (scale * m.k_max <= largest) return scale;
  // The mean of min(scale x, largest) over the long-run days rises with the scale along a curve that bends
  // down, so Newton steps approach the wanted scale from below.
  constexpr double kLargestScale = 20.0;
  const double width = (m.k_max - m.k_min) / 10.0;
  for (int step = 0; step < 12; ++step) {
    double reached = 0.0;
    double slope = 0.0;
    for (std::size_t state = 0; state < 10; ++state) {
      const double low = m.k_min + width * static_cast<double>(state);
      const double free = std::clamp((largest / scale - low) / width, 0.0, 1.0);  // part below the limit
      const double mean_below = low + 0.5 * free * width;
      reached += days.share[state] * (free * mean_below * scale + (1.0 - free) * largest);
      slope += days.share[state] * free * mean_below;
    }
    if (reached >= mean * (1.0 - 1e-6)) break;
    if (slope < 1e-4) break;
    scale = std::min(kLargestScale, scale + (mean - reached) / slope);
  }
  return scale;
}

double ClearnessSequence::next(double mean, double largest, base::RandomStream& random) {
  if (matrices_.matrices.empty()) return std::clamp(mean, 0.0, largest);
  const std::size_t matrix = std::min(class_of(mean), matrices_.matrices.size() - 1);
  const ClearnessMatrices::Matrix& m = matrices_.matrices[matrix];
  const double uniform = random.uniform();
  if (rank_ < 0.0) {
    rank_ = draw_rank(long_run(matrix).share, uniform);
  } else {
    rank_ = draw_rank(m.row[std::min<std::size_t>(9, static_cast<std::size_t>(rank_))], uniform);
  }
  const double raw = m.k_min + (m.k_max - m.k_min) * rank_ / 10.0;
  return std::clamp(raw * scale_for(matrix, mean, largest), 0.0, std::max(0.0, largest));
}

}  // namespace voltwright::sky
