#pragma once
// Section [money] of the plan file. Format: docs/formats/plan.md.
#include <string>

#include "engine/cost/money.h"
#include "files/plan_section.h"

namespace voltwright::files {

/// What the plan says about money; problems are noted in the section's reading. `currency` is empty if the
/// plan names none that can be used; then sums are not read. Without the section, cost::Money{} holds.
cost::Money read_money(Section section, const std::string& currency);

}  // namespace voltwright::files
