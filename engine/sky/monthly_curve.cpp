#include "engine/sky/monthly_curve.h"

#include <cmath>
#include <cstddef>

namespace voltwright::sky {
namespace {

constexpr std::array<double, 12> kMonthDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

constexpr std::array<double, 12> middles() {
  std::array<double, 12> middle{};
  double start = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    middle[m] = start + 0.5 * kMonthDays[m];
    start += kMonthDays[m];
  }
  return middle;
}
constexpr std::array<double, 12> kMiddle = middles();

}  // namespace

MonthlyCurve::MonthlyCurve(const std::array<double, 12>& monthly_means) : knot_(monthly_means) {
  // The mean of a month is a weighted mean of three knots: the neighbours weigh length / (4 (length +
  // neighbour)). Sweeping over the months solves for the knots; each sweep cuts the error to about a third.
  for (int sweep = 0; sweep < 24; ++sweep) {
    for (std::size_t m = 0; m < 12; ++m) {
      const std::size_t before = (m + 11) % 12;
      const std::size_t after = (m + 1) % 12;
      const double to_before = kMonthDays[m] / (4.0 * (kMonthDays[m] + kMonthDays[before]));
      const double to_after = kMonthDays[m] / (4.0 * (kMonthDays[m] + kMonthDays[after]));
      knot_[m] = (monthly_means[m] - to_before * knot_[before] - to_after * knot_[after]) /
                 (1.0 - to_before - to_after);
    }
  }
}

double MonthlyCurve::at(double part_of_year) const {
  const double day = 365.0 * (part_of_year - std::floor(part_of_year));
  std::size_t before = 11;
  for (std::size_t m = 0; m < 12; ++m) {
    if (day >= kMiddle[m]) before = m;
  }
  if (day < kMiddle[0]) before = 11;
  const std::size_t after = (before + 1) % 12;
  const double span = 0.5 * (kMonthDays[before] + kMonthDays[after]);
  double gone = day - kMiddle[before];
  if (gone < 0.0) gone += 365.0;
  return knot_[before] + (knot_[after] - knot_[before]) * gone / span;
}

}  // namespace voltwright::sky
