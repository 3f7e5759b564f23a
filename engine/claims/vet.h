#pragma once
// A data sheet held against itself, physics, and what others state.
#include "engine/claims/evidence.h"
#include "engine/claims/finding.h"
#include "engine/claims/sheet.h"

namespace voltwright::claims {

/// Every finding on a sheet, contradictions first. A finding never says more than the evidence: figures that
/// exclude each other contradict, figures beyond what was ever seen raise a doubt, and what is not said is a
/// note. See docs/method/claims.md.
Findings vet(const Sheet& sheet, const Evidence& evidence);

}  // namespace voltwright::claims
