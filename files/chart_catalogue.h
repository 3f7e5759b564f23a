#pragma once
// The parts of the catalogue that the chart of chemistries is drawn from.
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/chart/family_tree.h"
#include "engine/chart/kind.h"
#include "engine/chart/weighting.h"
#include "files/embedded.h"

namespace voltwright::files {

struct ChartCatalogue {
  std::vector<chart::Kind> kinds;      // in the order of the tree
  std::vector<chart::Weighting> uses;  // by id
  chart::FamilyTree tree;
};

/// The `facts` of one chemistry record; `name` is shown in problems. A figure of a quantity, level and year
/// must stand once (cycles: once at each depth, conditions apart).
base::Result<chart::Kind> read_kind(std::string_view text, const std::string& name);

/// One file of uses/.
base::Result<chart::Weighting> read_use(std::string_view text, const std::string& name);

/// One file of tree/. Every branch of the tree ends within its steps.
base::Result<chart::FamilyTree> read_family_tree(std::string_view text, const std::string& name);

/// chemistries/*.json, uses/*.json and tree/*.json of `files`; every chemistry that the tree names must be
/// there, and every chemistry must hang on the tree once. All problems at once.
base::Result<ChartCatalogue> read_chart_files(std::span<const EmbeddedFile> files);

/// The same of the files packed into the program.
base::Result<ChartCatalogue> read_chart_catalogue();

}  // namespace voltwright::files
