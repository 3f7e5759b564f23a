#pragma once
// A figure of the chart in words, for the page.
#include <string>

#include "engine/chart/kind.h"
#include "files/report/page.h"

namespace voltwright::files::report {

/// Typical figure with its unit; below it the spread, the conditions, the year and the source by number.
std::string fact_markup(const chart::Fact& fact, NumberedSources& sources);

/// The mark of a chemistry with its short name and, below, its plain name.
std::string kind_markup(const chart::Kind& kind);

/// "energy per mass of the cell": the level where figures of cells and batteries stand apart.
std::string quantity_words(const chart::Fact& fact);

}  // namespace voltwright::files::report
