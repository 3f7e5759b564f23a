#pragma once
// The chart of chemistries as one picture for a slide or a handout.
#include <string>
#include <vector>

#include "engine/chart/chart.h"
#include "engine/chart/placing.h"

namespace voltwright::files::report {

/// A self-contained SVG of 16 to 9: a row for each chemistry with energy per mass, cycles, window for
/// charging and shop price; each figure with its spread and year, dashed if it is an assumption or from
/// memory. Rows stand in the order of `scores`; `weighting` is printed below, null: ordered by energy per
/// mass.
std::string chemistry_slide(const chart::Chart& chart, const std::vector<chart::Score>& scores,
                            const chart::Weighting* weighting);

}  // namespace voltwright::files::report
