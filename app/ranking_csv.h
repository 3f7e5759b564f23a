#pragma once
#include <string>

#include "engine/advise/recommendation.h"

namespace voltwright::app {

/// The ranking as CSV, one row a bank; texts are quoted. Format: docs/formats/answer.md.
std::string ranking_csv(const advise::Recommendation& answer);

}  // namespace voltwright::app
