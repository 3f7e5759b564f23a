#pragma once
// Daily clearness by the exponential distribution: a second model beside the Markov matrices, without tables.
#include "engine/base/random.h"

namespace voltwright::sky {

/// Largest daily clearness index of a month against its mean, 0.2 to 0.75 (Hollands and Huget 1983, from
/// memory).
double largest_daily_clearness(double monthly_mean);

/// Distribution of the daily clearness index within a month whose density is exponential between a smallest
/// and a largest value (Bendt, Collares-Pereira and Rabl 1981, from memory). The steepness is solved for the
/// wanted mean, so that the mean is exact; the published closed fits keep it to about 0.005 only.
class BendtDistribution {
 public:
  /// `mean`: monthly mean, 0 to 1; held between the smallest clearness (0.05, or half the mean if that is
  /// less) and `largest`, the clearness of the clearest day, 0 to 1.
  BendtDistribution(double mean, double largest);

  /// Clearness below which a part `probability` of the days lies, 0 to below 1.
  double quantile(double probability) const;

  /// Exponent per unit of clearness; 0 is the uniform distribution.
  double steepness() const;
  double mean() const;
  double deviation() const;

 private:
  double smallest_;
  double span_;
  double exponent_ = 0.0;  // steepness times span
};

/// Lag-one correlation of the Gaussian variable behind the days (Graham, Hollands and Brunger 1988, from
/// memory).
constexpr double kBendtPersistence = 0.29;

/// Day-to-day sequence: a Gaussian autoregressive variable mapped onto the month's distribution (Graham,
/// Hollands and Brunger 1988).
class BendtSequence {
 public:
  /// Clearness of the next day. `mean` and `clearest` as for ClearnessSequence::next; the month's largest
  /// clearness is that of Hollands and Huget or `clearest`, whichever is less.
  double next(double mean, double clearest, base::RandomStream& random);

 private:
  double normal_ = 0.0;
  bool started_ = false;
};

}  // namespace voltwright::sky
