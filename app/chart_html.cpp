#include "app/chart.h"
#include "app/version.h"
#include "files/references.h"
#include "files/report/chemistry_page.h"

namespace voltwright::app {

namespace {

/// Every origin that the page shows.
std::vector<std::string> origins_of(const chart::Chart& chart) {
  std::vector<std::string> origins;
  for (const chart::Row& row : chart.rows) {
    for (const chart::Fact& fact : row.figures) origins.push_back(fact.from);
    if (row.safety_known) origins.push_back(row.kind->safety.from);
  }
  for (const chart::Change& change : chart.changes) {
    if (change.before) origins.push_back(change.before->from);
  }
  return origins;
}

}  // namespace

std::string chart_html(const ChartResponse& response) {
  files::report::ChemistryInput input;
  input.chart = &response.chart;
  input.scores = &response.scores;
  input.weighting = &response.weighting;
  input.weighed = response.weighed;
  input.tree = &response.tree;
  input.works = files::works_named_in(origins_of(response.chart));
  input.catalogue_mark = response.catalogue_mark;
  input.engine_version = kVersion;
  return files::report::chemistry_page(input);
}

}  // namespace voltwright::app
