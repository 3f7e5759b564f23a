#include "engine/cost/cash_flow.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace voltwright::cost {

double discount_factor(double rate, double years) { return std::exp(-years * std::log1p(rate)); }

double net_present_value(std::span<const Flow> flows, double rate) {
  double sum = 0.0;
  for (const Flow& flow : flows) sum += flow.amount * discount_factor(rate, flow.year);
  return sum;
}

double annuity_factor(double rate, double years) {
  // expm1 keeps the digits that 1 - (1 + rate)^-years loses at a small rate.
  return rate == 0.0 ? years : -std::expm1(-years * std::log1p(rate)) / rate;
}

double annualised(double present_value, double rate, double years) {
  return present_value / annuity_factor(rate, years);
}

double real_rate(double nominal, double inflation) { return (nominal - inflation) / (1.0 + inflation); }

double nominal_rate(double real, double inflation) { return real + inflation + real * inflation; }

Payback payback(std::span<const Flow> flows, double rate) {
  std::vector<Flow> ordered(flows.begin(), flows.end());
  std::stable_sort(ordered.begin(), ordered.end(),
                   [](const Flow& a, const Flow& b) { return a.year < b.year; });
  double turnover = 0.0;
  for (const Flow& flow : ordered) turnover += std::abs(flow.amount);
  // Sums that should be 0 miss it by rounding.
  constexpr double kRounding = 1e-12;
  const double nothing = -kRounding * turnover;

  Payback found;
  double sum = 0.0;
  bool was_negative = false;
  for (std::size_t i = 0; i < ordered.size(); ++i) {
    const Flow& flow = ordered[i];
    sum += flow.amount * discount_factor(rate, flow.year);
    if (i + 1 < ordered.size() && ordered[i + 1].year == flow.year) continue;
    if (sum < nothing) {
      was_negative = true;
      found.lasts = false;
    } else if (!found.year && was_negative) {
      found = {flow.year, true};
    }
  }
  if (!was_negative) found = {0.0, true};
  return found;
}

}  // namespace voltwright::cost
