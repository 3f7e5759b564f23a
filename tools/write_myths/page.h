#pragma once
// The handbook's pages of misconceptions: docs/handbook/myths/.
#include <string>
#include <vector>

#include "app/myths/myth.h"

namespace voltwright::tools {

struct WrittenPage {
  std::string path;  // from the root of the tree
  std::string text;
};

/// One page for each entry and the index. `list` as app::myths() gives it.
std::vector<WrittenPage> write_myths(const std::vector<app::Myth>& list);

}  // namespace voltwright::tools
