#pragma once
#include <string>
#include <vector>

#include "engine/season/run.h"

namespace voltwright::files {

/// A bank's minutes as CSV. First row: column names with units; one row a minute, instants in UTC (ISO 8601).
/// Format: docs/formats/minutes.md.
std::string minutes_csv(const season::Trace& trace, const std::vector<float>& outside_C);

}  // namespace voltwright::files
