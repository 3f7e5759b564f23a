#pragma once
#include <string>

#include "app/advise.h"
#include "app/simulate.h"

namespace voltwright::cli {

/// The answer for a terminal: three sentences, the ranking, what others would need, cautions.
std::string answer_text(const app::AdviseResponse& response, bool all, std::size_t width);

/// A season's summary and ledger.
std::string season_text(const app::SimulateResponse& response, std::size_t width);

}  // namespace voltwright::cli
