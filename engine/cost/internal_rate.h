#pragma once
// Internal rate of return: every rate at which a row of payments is worth nothing. Method:
// docs/method/cost.md.
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "engine/cost/cash_flow.h"

namespace voltwright::cost {

/// Rates are looked for between these, per year.
inline constexpr double kLeastInternalRate = -0.99;
inline constexpr double kGreatestInternalRate = 99.0;

enum class RateCount {
  kNone,     // no rate makes the payments worth nothing
  kOne,      // the internal rate of return
  kSeveral,  // the payments change sign more than once: none of the rates says whether they pay
  kEvery,    // all payments are 0
};

struct InternalRates {
  std::vector<double> rates;  // rising; empty for kNone and kEvery
  RateCount count = RateCount::kNone;

  /// The internal rate of return if there is just one.
  std::optional<double> only() const;
};

/// All rates in kLeastInternalRate..kGreatestInternalRate at which net_present_value() is 0, each to about
/// 1e-12. Between two neighbouring extremes of the present value there is at most one root, so the roots of
/// the derivative bracket all of them, and each bracket is halved until it cannot be narrowed.
InternalRates internal_rates(std::span<const Flow> flows);

/// How often the flows change sign in the order of time; no more rates than that exist (Descartes' rule).
std::size_t sign_changes(std::span<const Flow> flows);

}  // namespace voltwright::cost
