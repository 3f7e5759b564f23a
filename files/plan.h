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
  std::string track;  // GPX file that gives the legs, as written in the plan; empty = the plan's own legs
  std::string moved;  // how the journey was moved, in words; empty = as planned
  std::string mark;   // first eight hexadecimal digits of a hash over the text
};

/// Reads a plan; `name` is shown in problems. All problems at once, each with line and column.
/// `start`: day on which the whole journey is to begin in place of the planned one, "2027-05-01", or
/// "2027-05" or "2027", which keep the planned day (the last of its month where it does not exist); every leg
/// moves by the same number of days. Empty: as planned.
base::Result<ReadPlan> read_plan(std::string_view text, const std::string& name, const Catalogue& catalogue,
                                 const Gazetteer& gazetteer, std::string_view start = {});

/// Gives a plan that takes its legs from a track these legs: `legs` holds [[leg]] sections, `name` is shown
/// in problems, `start` as in read_plan. Returns problems, and then the plan has no legs.
base::Problems take_legs(std::string_view legs, const std::string& name, const Catalogue& catalogue,
                         const Gazetteer& gazetteer, std::string_view start, ReadPlan& read);

}  // namespace voltwright::files
