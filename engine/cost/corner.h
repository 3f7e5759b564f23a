#pragma once
// Inputs moved to one end of their spread.
#include "engine/cost/priced_bank.h"

namespace voltwright::cost {

/// A spread without width: {value, value, value}.
units::Ranged exactly(double value);

/// The bank with price, life, scrap and upkeep at the end that makes it cheap (or dear); the energy delivered
/// stays.
PricedBank cheap(PricedBank bank);
PricedBank dear(PricedBank bank);

/// The terms with energy and fuel at the end that makes every bank cheap (or dear); the discount rate stays.
Terms cheap(Terms terms);
Terms dear(Terms terms);

}  // namespace voltwright::cost
