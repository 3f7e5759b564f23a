#pragma once
// The cost over life as JSON. Format: docs/formats/answer.md.
#include <nlohmann/json.hpp>

#include "engine/advise/life_cost.h"

namespace voltwright::app {

/// What one bank of the ranking costs, or why that is not known.
nlohmann::ordered_json bank_cost_json(const advise::BankCost& bank);

/// Terms, sentences, the working of the shown bank and of those it is held against.
nlohmann::ordered_json cost_json(const advise::Recommendation& answer, const advise::LifeCost& costs);

}  // namespace voltwright::app
