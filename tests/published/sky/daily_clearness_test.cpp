// Daily clearness: spread, distribution and day-to-day correlation of both models.
#include "engine/sky/daily_clearness.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "engine/sky/bendt_clearness.h"
#include "tests/unit/sky/matrices_csv.h"

namespace voltwright::sky {
namespace {

struct Statistics {
  double mean = 0.0;
  double deviation = 0.0;
  double lag_one = 0.0;
};

template <class Next>
Statistics statistics_of(int days, const Next& next) {
  double sum = 0.0;
  double squares = 0.0;
  double products = 0.0;
  double before = next();
  for (int day = 0; day < days; ++day) {
    const double k = next();
    sum += k;
    squares += k * k;
    products += k * before;
    before = k;
  }
  const double n = days;
  const double mean = sum / n;
  const double variance = squares / n - mean * mean;
  return {mean, std::sqrt(variance), (products / n - mean * mean) / variance};
}

TEST(BendtDistribution, SteepnessAndSpread) {
  // Steepness and deviation worked out independently from the density of Bendt, Collares-Pereira and Rabl
  // 1981 with the largest clearness of Hollands and Huget 1983 (formulas from memory).
  struct Row {
    double mean, largest, steepness, deviation;
  };
  constexpr std::array<Row, 6> kRows{{{.20, .5851, -5.6267, .126},
                                      {.30, .6914, -2.1252, .177},
                                      {.40, .7354, .1863, .198},
                                      {.50, .7646, 2.2720, .194},
                                      {.60, .7915, 4.6209, .167},
                                      {.70, .8182, 8.3725, .115}}};
  for (const Row& row : kRows) {
    EXPECT_NEAR(largest_daily_clearness(row.mean), row.largest, 1e-4) << row.mean;
    const BendtDistribution days(row.mean, largest_daily_clearness(row.mean));
    EXPECT_NEAR(days.steepness(), row.steepness, 1e-3) << row.mean;
    EXPECT_NEAR(days.deviation(), row.deviation, 1e-3) << row.mean;
    EXPECT_NEAR(days.mean(), row.mean, 1e-9) << row.mean;
  }
}

TEST(BendtSequence, MeanSpreadAndCorrelation) {
  // Sequence of Graham, Hollands and Brunger 1988 with 0.29 between the Gaussian days (from memory); values
  // of an independent run of 60,000 days. Tolerances are three sampling errors of the difference.
  struct Row {
    double wanted, deviation, lag_one;
  };
  constexpr std::array<Row, 3> kRows{{{.30, .177, .271}, {.50, .193, .273}, {.65, .143, .257}}};
  for (const Row& row : kRows) {
    BendtSequence sequence;
    base::RandomStream random(21, static_cast<std::uint64_t>(row.wanted * 100.0));
    const Statistics s = statistics_of(60000, [&] { return sequence.next(row.wanted, 0.9, random); });
    EXPECT_NEAR(s.mean, row.wanted, 0.006) << row.wanted;
    EXPECT_NEAR(s.deviation, row.deviation, 0.003) << row.wanted;
    EXPECT_NEAR(s.lag_one, row.lag_one, 0.018) << row.wanted;
  }
}

TEST(BendtSequence, DaysFollowTheDistribution) {
  // Kolmogorov distance of 20,000 days from the exponential distribution; 1.36/sqrt(n) is its 5 % bound for
  // independent days, doubled for days that hold together.
  BendtSequence sequence;
  base::RandomStream random(22);
  const BendtDistribution days(0.5, largest_daily_clearness(0.5));
  constexpr int kDays = 20000;
  constexpr std::size_t kParts = 20;
  std::array<int, kParts> below{};
  for (int day = 0; day < kDays; ++day) {
    const double k = sequence.next(0.5, 0.9, random);
    for (std::size_t i = 0; i < kParts; ++i) {
      below[i] += k < days.quantile(static_cast<double>(i) / kParts) ? 1 : 0;
    }
  }
  for (std::size_t i = 0; i < kParts; ++i) {
    EXPECT_NEAR(static_cast<double>(below[i]) / kDays, static_cast<double>(i) / kParts,
                2.0 * 1.36 / std::sqrt(kDays))
        << i;
  }
}

TEST(ClearnessSequence, SpreadAndCorrelationOfEachMatrix) {
  // Long-run mean, deviation and lag-one correlation worked out independently from the printed matrices of
  // Aguiar, Collares-Pereira and Conde 1988.
  constexpr std::array<double, 10> kMean{.241, .334, .374, .429, .476, .526, .575, .620, .668, .728};
  constexpr std::array<double, 10> kDeviation{.156, .167, .166, .167, .167, .157, .153, .136, .119, .073};
  constexpr std::array<double, 10> kLagOne{.39, .02, .29, .31, .33, .32, .23, .24, .20, .27};
  const ClearnessMatrices matrices = catalogue_matrices();
  for (std::size_t c = 0; c < kMean.size(); ++c) {
    ClearnessSequence sequence(matrices);
    base::RandomStream random(23, c);
    const Statistics s = statistics_of(40000, [&] { return sequence.next(kMean[c], 0.95, random); });
    EXPECT_NEAR(s.mean, kMean[c], 0.01 * kMean[c]) << c;
    EXPECT_NEAR(s.deviation, kDeviation[c], 0.006) << c;
    EXPECT_NEAR(s.lag_one, kLagOne[c], 0.03) << c;
  }
}

}  // namespace
}  // namespace voltwright::sky
