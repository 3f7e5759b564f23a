#pragma once
// What a bank costs to buy, in the money that the plan counts in if that can be known. No rate of exchange is
// built in: see docs/method/cost.md.
#include <string>

#include "engine/advise/candidate.h"
#include "engine/cost/money.h"

namespace voltwright::advise {

/// Price of the whole bank: the plan's own, else the catalogue's, turned into the plan's currency if that is
/// dollars or the plan says what a dollar costs; else as it stands in the catalogue.
cost::Sum price_of(const Plan& plan, const Candidate& candidate);

/// Whether a sum is in the plan's currency, so that it can be held against the plan's sums.
bool counts_in(const Plan& plan, const cost::Sum& sum);

/// "289 EUR", or "640 USD of 2025" if that is not the plan's currency; the typical amount.
std::string price_text(const Plan& plan, const cost::Sum& sum);

/// Where a sum comes from: "by the plan", "money of 2025".
std::string price_origin(const cost::Sum& sum);

/// What a person does so that a price in another currency can be counted.
std::string price_remedy(const Plan& plan, const cost::Sum& sum, const std::string& battery);

}  // namespace voltwright::advise
