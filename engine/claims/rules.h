#pragma once
// The families of rules. Each looks at what the sheet says, adds one finding for every claim that it can
// judge and nothing for what is not said. Thresholds and sources: docs/method/claims.md.
#include "engine/claims/finding.h"
#include "engine/claims/subject.h"

namespace voltwright::claims {

/// Figures of the sheet against each other: energy, densities, currents and rates, temperatures.
void check_consistent(const Subject& subject, Findings& findings);
/// Voltage and charging against the number of cells and the model's charge.
void check_charging(const Subject& subject, Findings& findings);
/// Densities against dated facts of the chemistry: a battery cannot hold more than its best cell.
void check_density(const Subject& subject, Findings& findings);
/// Temperatures, self-discharge and life against the chemistry.
void check_possible(const Subject& subject, Findings& findings);
/// Rank among what others state of batteries of the same chemistry.
void check_usual(const Subject& subject, Findings& findings);
/// What is missing, without which a claim cannot be judged or relied on.
void check_complete(const Subject& subject, Findings& findings);
/// What is true in a way, and means less than it seems to.
void check_misleading(const Subject& subject, Findings& findings);
/// "Replaces N Ah of lead-acid", by usable energy at several rates.
void check_equivalent(const Subject& subject, Findings& findings);

}  // namespace voltwright::claims
