#include "engine/sky/bendt_clearness.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace voltwright::sky {
namespace {

constexpr double kSmallestClearness = 0.05;
constexpr double kLargestExponent = 500.0;  // beyond it all days equal a bound
constexpr double kNearlyUniform = 1e-4;     // below it the closed forms cancel

/// Mean of the distribution in parts of its span.
double mean_part(double exponent) {
  if (std::abs(exponent) < kNearlyUniform) return 0.5 + exponent / 12.0;
  return -1.0 / std::expm1(-exponent) - 1.0 / exponent;
}

}  // namespace

double largest_daily_clearness(double monthly_mean) {
  return 0.6313 + 0.267 * monthly_mean - 11.9 * std::pow(monthly_mean - 0.75, 8);
}

BendtDistribution::BendtDistribution(double mean, double largest)
    : smallest_(std::max(0.0, std::min(kSmallestClearness, 0.5 * std::min(mean, largest)))),
      span_(std::max(0.0, largest - smallest_)) {
  if (!(span_ > 0.0)) return;
  const double wanted = (mean - smallest_) / span_;
  double low = -kLargestExponent;
  double high = kLargestExponent;
  constexpr int kHalvings = 60;
  for (int step = 0; step < kHalvings; ++step) {
    const double middle = 0.5 * (low + high);
    (mean_part(middle) < wanted ? low : high) = middle;
  }
  exponent_ = 0.5 * (low + high);
}

double BendtDistribution::quantile(double probability) const {
  const double part = std::abs(exponent_) < kNearlyUniform
                          ? probability
                          : std::log1p(probability * std::expm1(exponent_)) / exponent_;
  return smallest_ + span_ * std::clamp(part, 0.0, 1.0);
}

double BendtDistribution::steepness() const { return span_ > 0.0 ? exponent_ / span_ : 0.0; }

double BendtDistribution::mean() const { return smallest_ + span_ * mean_part(exponent_); }

double BendtDistribution::deviation() const {
  if (std::abs(exponent_) < 0.01) return span_ / std::sqrt(12.0);
  const double half_sinh = 2.0 * std::sinh(0.5 * exponent_);
  return span_ * std::sqrt(1.0 / (exponent_ * exponent_) - 1.0 / (half_sinh * half_sinh));
}

double BendtSequence::next(double mean, double clearest, base::RandomStream& random) {
  const double fresh = random.normal();
  constexpr double kRho = kBendtPersistence;
  normal_ = started_ ? kRho * normal_ + std::sqrt(1.0 - kRho * kRho) * fresh : fresh;
  started_ = true;
  const double probability = 0.5 * std::erfc(-normal_ / std::numbers::sqrt2);
  const double largest = std::clamp(largest_daily_clearness(std::clamp(mean, 0.2, 0.75)), 0.0, clearest);
  return BendtDistribution(mean, largest).quantile(std::min(probability, 1.0 - 1e-12));
}

}  // namespace voltwright::sky
