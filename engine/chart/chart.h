#pragma once
// The chart of chemistries as of a year, and what changed since another.
#include <optional>
#include <vector>

#include "engine/chart/kind.h"

namespace voltwright::chart {

/// One chemistry as of the chart's year. A missing figure is missing, not zero.
struct Row {
  const Kind* kind = nullptr;
  std::vector<Fact> figures;                     // in the order of kQuantities, then of kLevels
  std::optional<units::Ranged> power_W_per_kg;   // continuous discharge times energy per mass
  std::optional<units::Ranged> charge_h;         // capacity over charge rate; the last stage comes on top
  std::optional<units::Ranged> life_throughput;  // cycles times depth: capacities delivered over life
  bool safety_known = false;                     // the statements on safety are not younger than the year

  const Fact* figure(Quantity quantity, Level level) const;
  /// The cell's; the battery's for a block or where the cell's is missing.
  const Fact* cell_or_block(Quantity quantity) const;
};

/// A figure that is another one as of the later year.
struct Change {
  const Kind* kind = nullptr;
  std::optional<Fact> before;  // none: no figure was known then
  Fact now;
};

struct Chart {
  int year = 0;
  std::optional<int> since;
  std::vector<Row> rows;
  std::vector<Change> changes;  // since `since`; empty without it
  int first_year = 0;           // of all facts
  int last_year = 0;
};

/// Rows in the order of `kinds`, which must outlive the chart. Year 0 stands for the latest of all facts.
Chart draw(const std::vector<Kind>& kinds, int year, std::optional<int> since);

}  // namespace voltwright::chart
