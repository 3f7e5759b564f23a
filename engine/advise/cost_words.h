#pragma once
// The cost over life in sentences.
#include <string>
#include <vector>

#include "engine/advise/life_cost.h"

namespace voltwright::advise {

/// "0.42 USD (0.31 to 0.6)": the typical figure and a range with it, two significant digits.
std::string band_text(const units::Ranged& range, const std::string& unit);

/// A value of an assumption with its unit; rates as percentages a year, years with two significant digits.
std::string value_of(const cost::Assumption& assumption, double value);

/// "Most hangs on the price: 0.3 USD at 200 USD, 0.5 USD at 400 USD."; empty if nothing moves the cost.
std::string decisive_sentence(const cost::Tornado& tornado, const std::string& currency);

/// Why the cost of a bank is not known, and what would mend that; empty if it is known.
std::string unknown_sentence(const BankCost& bank);

/// What the bank shown first costs for each delivered kWh, with its likely band and the assumption that moves
/// it most; the same of what is fitted now; when the one pays against the other; and at which value of an
/// assumption the order of the shown bank and another turns. Empty for an empty ranking.
std::vector<std::string> cost_sentences(const Recommendation& answer, const LifeCost& costs);

/// Heading for these: "Cost over 10 years at 3 % a year, money of today".
std::string cost_heading(const cost::Terms& terms);

}  // namespace voltwright::advise
