#pragma once
// From trials to an answer: order, recommendation, and what each other chemistry would need.
#include <compare>
#include <string>
#include <vector>

#include "engine/advise/price.h"
#include "engine/advise/verdict.h"

namespace voltwright::advise {

struct Ranked {
  Trial trial;
  std::vector<Verdict> verdicts;
  Holding holding = Holding::kNotKnown;
  std::string brief;           // the reason in a few words, for a table
  std::string reason;          // of the decisive verdict, or of the shortfall verdict if it holds
  cost::Sum price;             // of the whole bank
  double cost_per_year = 0.0;  // typical price over typical life, in the currency of the price
};

struct WouldNeed {
  std::string chemistry;  // plain name
  std::string bank;       // the nearest bank of that chemistry
  std::string sentence;
};

struct Recommendation {
  std::vector<Ranked> ranking;  // best first; the bank fitted now last
  int best = -1;                // index into ranking, -1 = nothing holds
  int fitted_now = -1;
  std::vector<std::string> sentences;  // three
  std::vector<WouldNeed> would_need;   // one for each chemistry without a bank that holds
};

/// What the plan prefers less of: price per year of life, price, or mass. Prices in another currency than the
/// plan's come after those in it, as nothing turns one into the other.
struct Preferred {
  bool other_money = false;
  double value = 0.0;
  auto operator<=>(const Preferred&) const = default;
};
Preferred preference_of(const Plan& plan, const Trial& trial);

/// The currency that all prices of the ranking are in; empty if they differ.
std::string price_currency_of(const Recommendation& answer);

/// Order: holds, not known, falls short; within that by the plan's preference, then mass. Falling short is
/// ordered by the number of requirements missed, then by unmet energy.
Recommendation recommend(const Plan& plan, std::vector<Trial> trials);

}  // namespace voltwright::advise
