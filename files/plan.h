#pragma once
// The plan file: TOML with "value unit" texts. Format: docs/formats/plan.md.
#include <string>
#include <string_view>

#include "engine/advise/plan.h"
#include "engine/base/result.h"
#include "files/catalogue.h"
#include "files/gazetteer.h"

namespace voltwright::files {

inline constexpr int kPlanFormat = 1;

struct ReadPlan {
  advise::Plan plan;
  base::Problems warnings;
  std::string mark;  // first eight hexadecimal digits of a hash over the text
};

/// Reads a plan; `name` is shown in problems. All problems at once, each with line and column.
base::Result<ReadPlan> read_plan(std::string_view text, const std::string& name, const Catalogue& catalogue,
                                 const Gazetteer& gazetteer);

}  // namespace voltwright::files
