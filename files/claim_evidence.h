#pragma once
// What claims are held against, from the catalogue packed into the program.
#include "engine/base/result.h"
#include "engine/claims/evidence.h"
#include "files/catalogue.h"

namespace voltwright::files {

/// The chemistries of `catalogue` with the dated facts and sources of their records, and the stated figures
/// of other batteries (stated/batteries.csv).
base::Result<claims::Evidence> read_evidence(const Catalogue& catalogue);

}  // namespace voltwright::files
