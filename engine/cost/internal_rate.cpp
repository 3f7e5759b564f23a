#include "engine/cost/internal_rate.h"

#include <algorithm>
#include <cmath>

namespace voltwright::cost {

namespace {

/// Present value over the sum of the sizes of its parts, -1..1, with u = ln(1 + rate): the same roots as the
/// present value, and no overflow.
double relative_value(const std::vector<Flow>& flows, double u) {
  double greatest = -flows.front().year * u;
  for (const Flow& flow : flows) greatest = std::max(greatest, -flow.year * u);
  double sum = 0.0;
  double size = 0.0;
  for (const Flow& flow : flows) {
    const double part = flow.amount * std::exp(-flow.year * u - greatest);
    sum += part;
    size += std::abs(part);
  }
  return size > 0.0 ? sum / size : 0.0;
}

/// In order of time, one flow for each moment, none of 0.
std::vector<Flow> merged(std::span<const Flow> flows) {
  std::vector<Flow> ordered(flows.begin(), flows.end());
  std::stable_sort(ordered.begin(), ordered.end(),
                   [](const Flow& a, const Flow& b) { return a.year < b.year; });
  std::vector<Flow> one_each;
  for (const Flow& flow : ordered) {
    if (!one_each.empty() && one_each.back().year == flow.year) {
      one_each.back().amount += flow.amount;
    } else {
      one_each.push_back(flow);
    }
  }
  std::erase_if(one_each, [](const Flow& flow) { return flow.amount == 0.0; });
  return one_each;
}

std::size_t changes_of(const std::vector<Flow>& flows) {
  std::size_t changes = 0;
  for (std::size_t i = 1; i < flows.size(); ++i) {
    if ((flows[i].amount < 0.0) != (flows[i - 1].amount < 0.0)) ++changes;
  }
  return changes;
}

/// The root between two points where the values have opposite signs.
double halved(const std::vector<Flow>& flows, double low, double high) {
  const bool falls = relative_value(flows, low) > 0.0;
  while (true) {
    const double middle = low + 0.5 * (high - low);
    if (middle <= low || middle >= high) return middle;
    const double value = relative_value(flows, middle);
    if (value == 0.0) return middle;
    ((value > 0.0) == falls ? low : high) = middle;
  }
}

/// Roots in u, rising. A flow of the derivative with respect to u is -(year - first year) times the flow once
/// the first is brought to year 0, which moves no root: the first falls away, so that the recursion ends.
std::vector<double> roots(const std::vector<Flow>& flows, double low, double high) {
  const std::size_t changes = changes_of(flows);
  if (changes == 0) return {};
  std::vector<double> bounds = {low};
  if (changes > 1) {
    std::vector<Flow> slope;
    for (std::size_t i = 1; i < flows.size(); ++i) {
      const double later = flows[i].year - flows.front().year;
      slope.push_back({later, -later * flows[i].amount});
    }
    const std::vector<double> extremes = roots(slope, low, high);
    bounds.insert(bounds.end(), extremes.begin(), extremes.end());
  }
  bounds.push_back(high);
  // An extreme that touches 0 is a root itself; it is met only to rounding.
  constexpr double kTouches = 1e-13;
  std::vector<double> values;
  for (const double u : bounds) {
    const double value = relative_value(flows, u);
    values.push_back(std::abs(value) < kTouches ? 0.0 : value);
  }
  std::vector<double> found;
  for (std::size_t i = 0; i < bounds.size(); ++i) {
    if (i > 0 && values[i - 1] * values[i] < 0.0) found.push_back(halved(flows, bounds[i - 1], bounds[i]));
    if (values[i] == 0.0) found.push_back(bounds[i]);
  }
  return found;
}

}  // namespace

std::optional<double> InternalRates::only() const {
  return count == RateCount::kOne ? std::optional(rates.front()) : std::nullopt;
}

std::size_t sign_changes(std::span<const Flow> flows) { return changes_of(merged(flows)); }

InternalRates internal_rates(std::span<const Flow> flows) {
  InternalRates answer;
  const std::vector<Flow> ordered = merged(flows);
  if (ordered.empty()) {
    answer.count = RateCount::kEvery;
    return answer;
  }
  for (const double u : roots(ordered, std::log1p(kLeastInternalRate), std::log1p(kGreatestInternalRate))) {
    answer.rates.push_back(std::expm1(u));
  }
  if (!answer.rates.empty()) {
    answer.count = answer.rates.size() == 1 ? RateCount::kOne : RateCount::kSeveral;
  }
  return answer;
}

}  // namespace voltwright::cost
