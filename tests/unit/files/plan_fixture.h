#pragma once
// A small catalogue and place list by hand, and plans built from them.
#include <string>
#include <string_view>

#include "files/plan.h"

namespace voltwright::files {

/// Two chemistries (one that cannot be simulated beside them), two batteries, three appliances.
Catalogue small_catalogue();

/// A plan that uses every section and key.
std::string full_plan();

/// The shortest plan that reads without a problem.
std::string short_plan();

/// Reads with the small catalogue and an empty place list, as the file "plan.toml".
base::Result<ReadPlan> read_small(std::string_view text);

}  // namespace voltwright::files
