#pragma once
// Places and scores, computed from the chart. Rule: docs/method/scores.md.
#include <array>
#include <optional>
#include <vector>

#include "engine/chart/standing.h"
#include "engine/chart/weighting.h"

namespace voltwright::chart {

/// The place of one chemistry in one matter; 1 is the best, equals share the mean of their places.
struct Place {
  Standing standing;
  double place = 0.0;
  int among = 0;        // chemistries with a figure
  double points = 0.0;  // 1 for the first, 0 for the last, even steps between
};

/// One chemistry under a weighting. A matter without a figure counts 0 points in `least` and 1 in `most`.
struct Score {
  const Row* row = nullptr;
  std::array<std::optional<Place>, kMatters.size()> places;  // in the order of kMatters
  double least = 0.0;
  double most = 0.0;
  std::vector<Matter> missing;  // weighed matters without a figure
  int rank = 0;                 // by `least`, then `most`; equals share the better rank

  const std::optional<Place>& place(Matter matter) const;
};

/// Best first. The chart must outlive the scores. At least one weight is above 0.
std::vector<Score> score(const Chart& chart, const Weighting& weighting);

}  // namespace voltwright::chart
