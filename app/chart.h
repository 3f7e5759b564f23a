#pragma once
// The chart of chemistries: sourced figures as of a year, what changed, and scores under a weighting.
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/chart/chart.h"
#include "engine/chart/family_tree.h"
#include "engine/chart/placing.h"

namespace voltwright::app {

struct ChartRequest {
  int year = 0;              // 0: the latest of all facts
  std::optional<int> since;  // also list what changed since this year
  std::string use;           // id of a use of the catalogue; empty: none
  std::string weigh;         // "energy=3,price=1"; empty: none
};

/// Not copied: the chart points into the kinds, the scores into the chart.
struct ChartResponse {
  ChartResponse() = default;
  ChartResponse(const ChartResponse&) = delete;
  ChartResponse& operator=(const ChartResponse&) = delete;
  ChartResponse(ChartResponse&&) = default;
  ChartResponse& operator=(ChartResponse&&) = default;
  ~ChartResponse() = default;

  std::string catalogue_mark;
  std::vector<chart::Kind> kinds;
  std::vector<chart::Weighting> uses;  // all that the catalogue has
  chart::FamilyTree tree;
  chart::Chart chart;
  chart::Weighting weighting;  // every matter once if none was asked for
  bool weighed = false;        // a use or weights were asked for
  std::vector<chart::Score> scores;
};

/// Reads the catalogue and draws; every problem of the request at once.
base::Result<ChartResponse> chart_chemistries(const ChartRequest& request);

/// Formats: docs/formats/chart.md.
std::string to_json(const ChartResponse& response);
std::string chart_csv(const ChartResponse& response);

/// Picture, figures, places, changes and family tree as one self-contained HTML page.
std::string chart_html(const ChartResponse& response);

/// The picture, 16 to 9.
std::string chart_svg(const ChartResponse& response);

}  // namespace voltwright::app
