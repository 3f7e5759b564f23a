#include "engine/cost/comparison.h"

#include <algorithm>

#include "engine/cost/corner.h"

namespace voltwright::cost {

namespace {

/// The payments of `candidate` less those of `other`: what is not paid any more is received. One flow for
/// each moment.
std::vector<Flow> savings_of(const PricedBank& candidate, const PricedBank& other, const Terms& terms) {
  std::vector<Flow> all = plain(flows_of(candidate, terms));
  for (const ItemFlow& one : flows_of(other, terms)) all.push_back({one.flow.year, -one.flow.amount});
  std::stable_sort(all.begin(), all.end(), [](const Flow& a, const Flow& b) { return a.year < b.year; });
  std::vector<Flow> savings;
  for (const Flow& flow : all) {
    if (!savings.empty() && savings.back().year == flow.year) {
      savings.back().amount += flow.amount;
    } else {
      savings.push_back(flow);
    }
  }
  return savings;
}

PaysBack pays_back(const std::vector<Flow>& savings, double rate) {
  return {payback(savings, 0.0), payback(savings, rate)};
}

}  // namespace

base::Result<Comparison> compare(const PricedBank& candidate, const PricedBank& incumbent,
                                 const Terms& terms) {
  base::Problems problems = problems_of(candidate, terms);
  const base::Problems more = problems_of(incumbent, terms);
  problems.insert(problems.end(), more.begin(), more.end());
  if (!problems.empty()) return problems;
  const double rate = terms.discount_rate.typical;
  const std::vector<Flow> worst = savings_of(dear(candidate), cheap(incumbent), terms);
  const std::vector<Flow> best = savings_of(cheap(candidate), dear(incumbent), terms);
  Comparison answer;
  answer.savings = savings_of(candidate, incumbent, terms);
  answer.net_present_value = {net_present_value(worst, rate), net_present_value(answer.savings, rate),
                              net_present_value(best, rate)};
  answer.internal_rates = internal_rates(answer.savings);
  answer.pessimistic = pays_back(worst, rate);
  answer.typical = pays_back(answer.savings, rate);
  answer.optimistic = pays_back(best, rate);
  return answer;
}

}  // namespace voltwright::cost
