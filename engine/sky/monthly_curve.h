#pragma once
// A smooth yearly course through twelve monthly means.
#include <array>

namespace voltwright::sky {

/// Straight lines between mid-months whose mean over each month is that month's mean. The values at mid-month
/// are therefore not the means themselves: a peak month stands a little above its mean.
class MonthlyCurve {
 public:
  explicit MonthlyCurve(const std::array<double, 12>& monthly_means);

  /// `part_of_year` 0 to 1 from 1 January; values outside are taken around the year.
  double at(double part_of_year) const;

 private:
  std::array<double, 12> knot_{};
};

}  // namespace voltwright::sky
