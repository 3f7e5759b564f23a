#pragma once
// The one mapping from answers to JSON, used by every face. Numbers carry their unit in the key.
#include <string>

#include "app/advise.h"
#include "app/simulate.h"

namespace voltwright::app {

/// Format: docs/formats/answer.md, version kAnswerFormat.
inline constexpr int kAnswerFormat = 1;

std::string to_json(const AdviseResponse& response);
std::string to_json(const SimulateResponse& response);
std::string to_json(const base::Problems& problems);

}  // namespace voltwright::app
