#pragma once
// The claims of one sheet as a slide.
#include <string>

#include "engine/claims/finding.h"

namespace voltwright::files::report {

/// A self-contained SVG of 16 to 9: a line for each claim with its verdict as sign and word, the claim as a
/// flag against what is usual and possible, and the sentence to say. The worst stand first; what finds no
/// room is counted below. `name` is the sheet's, `summary` counts the findings.
std::string claims_slide(const std::string& name, const std::string& summary,
                         const claims::Findings& findings);

}  // namespace voltwright::files::report
