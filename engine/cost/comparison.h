#pragma once
// Whether and when another bank pays, against what is there.
#include <vector>

#include "engine/base/result.h"
#include "engine/cost/internal_rate.h"
#include "engine/cost/life_cycle.h"

namespace voltwright::cost {

/// When the extra first cost has come back in one case.
struct PaysBack {
  Payback simple;      // without interest
  Payback discounted;  // at the typical discount rate
};

struct Comparison {
  /// What is saved by the candidate, typical: the incumbent's payments less the candidate's, in order of
  /// time.
  std::vector<Flow> savings;
  /// Present value of the savings: the candidate at its dear end against the incumbent at its cheap end,
  /// typical, and the reverse. Energy, fuel and discount rate are typical in all three: they move both.
  units::Ranged net_present_value;
  InternalRates internal_rates;  // of the typical savings
  PaysBack pessimistic;
  PaysBack typical;
  PaysBack optimistic;
};

/// The candidate against the incumbent under the same terms, or the problems of both. What the incumbent
/// would fetch if it were sold now is left out.
base::Result<Comparison> compare(const PricedBank& candidate, const PricedBank& incumbent,
                                 const Terms& terms);

}  // namespace voltwright::cost
