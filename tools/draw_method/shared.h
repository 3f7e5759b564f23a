#pragma once
// What the pictures of a cell kind have in common.
#include <span>
#include <string>
#include <vector>

#include "tools/draw_method/pictures.h"

namespace voltwright::tools {

/// A discharge rate over rated capacity with its name ("C/5").
struct NamedRate {
  double per_h = 0.0;
  std::string name;
};

/// Cells that a picture shows in series: a 12 V block of lead-acid, one cell of everything else.
int cells_shown(const Kind& kind);

/// "per cell" or "of a 12 V block of six cells".
std::string per_what(const Kind& kind);

/// Whether two rates are drawn as one: within a tenth.
bool same_rate(double a_per_h, double b_per_h);

/// Rates of the picture, slowest first, at most five.
std::vector<NamedRate> rates_of(const Kind& kind, std::span<const PublishedSet> sets);

/// Voltage axis that holds all lines and marks, from and to round values.
ChartAxis voltage_axis(const Kind& kind, const ChartPanel& panel);

/// Line of a run: share of the rated capacity drawn [%] against voltage as shown.
base::Curve drawn_share(const Kind& kind, const Bench& bench);

}  // namespace voltwright::tools
