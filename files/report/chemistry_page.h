#pragma once
// The chart of chemistries as one self-contained page: picture, every figure with year and source, places,
// what changed, and the family tree.
#include <string>
#include <vector>

#include "engine/chart/chart.h"
#include "engine/chart/family_tree.h"
#include "engine/chart/placing.h"
#include "files/report/page.h"

namespace voltwright::files::report {

struct ChemistryInput {
  const chart::Chart* chart = nullptr;
  const std::vector<chart::Score>* scores = nullptr;
  const chart::Weighting* weighting = nullptr;
  bool weighed = false;  // a use or weights were asked for: rows stand in the order of the scores
  const chart::FamilyTree* tree = nullptr;
  std::vector<std::string> works;  // formatted references that the figures name
  std::string catalogue_mark, engine_version;
  std::string issue = "A";
};

/// HTML with inline style and pictures, no script, nothing loaded from elsewhere; every text is escaped.
std::string chemistry_page(const ChemistryInput& input);

/// The sections of the page, in their order.
std::string chemistry_tables(const chart::Chart& chart, NumberedSources& sources);
std::string chemistry_safety(const chart::Chart& chart, NumberedSources& sources);
std::string chemistry_changes(const chart::Chart& chart, NumberedSources& sources);

}  // namespace voltwright::files::report
