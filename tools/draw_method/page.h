#pragma once
// Everything that vw_draw_method writes: docs/method/curves.md and its pictures.
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "tools/draw_method/points.h"

namespace voltwright::tools {

struct DrawnFile {
  std::string path;  // from the root of the tree
  std::string text;
};

/// A kind with its published sets and the residuals of each set.
struct HeldKind {
  Kind kind;
  std::vector<PublishedSet> sets;
  std::vector<std::vector<Residual>> rows;  // of each set
};

/// Every simulated kind of the built-in catalogue, and any other with published curves, recomputed.
base::Result<std::vector<HeldKind>> hold_catalogue();

/// The page and the pictures. `kinds` as hold_catalogue() gives them.
std::vector<DrawnFile> draw_method(const std::vector<HeldKind>& kinds);

}  // namespace voltwright::tools
