#pragma once
#include <string>

#include "app/chart.h"

namespace voltwright::cli {

/// The chart as tables, with what changed and the scores.
std::string chart_text(const app::ChartResponse& response, std::size_t width);

/// The family tree as indented lines.
std::string tree_text(const app::ChartResponse& response);

}  // namespace voltwright::cli
