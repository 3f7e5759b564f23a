#pragma once
// Day-to-day sequence of the daily clearness index.
#include <array>
#include <cstddef>
#include <vector>

#include "engine/base/random.h"
#include "engine/sky/clearness.h"

namespace voltwright::sky {

/// Sequence of daily clearness by the Markov matrices of Aguiar, Collares-Pereira and Conde 1988. The state
/// is kept as a rank from 0 to 10, so that it carries over from one month's matrix to the next. Values are
/// scaled so that their long-run mean is the wanted one, also where a clear day limits them.
class ClearnessSequence {
 public:
  /// Without matrices every day has the mean.
  explicit ClearnessSequence(const ClearnessMatrices& matrices);

  /// Clearness index of the next day; the first call draws from the long-run distribution.
  /// `mean`: wanted long-run mean, 0 to 1. `largest`: clearness of the clearest day possible. The mean is
  /// kept if it stays below about 0.95 of `largest`; above that the days are all near `largest`.
  double next(double mean, double largest, base::RandomStream& random);

  /// Index of the matrix used for a monthly mean.
  static std::size_t class_of(double mean);

 private:
  struct LongRun {
    std::array<double, 10> share{};  // of days in each state
    double mean = 0.0;
  };
  const LongRun& long_run(std::size_t matrix);
  double scale_for(std::size_t matrix, double mean, double largest);

  ClearnessMatrices matrices_;  // rows made to sum to 1
  std::vector<LongRun> long_run_;
  std::vector<char> known_;
  double rank_ = -1.0;  // none yet
};

}  // namespace voltwright::sky
