#pragma once
// A plan that sets chargers, far loads, a heater on surplus, a controlled alternator and an aged bank.
#include <string>
#include <string_view>

#include "files/plan.h"

namespace voltwright::files {

/// A plan with all of these keys, on top of the shortest one.
std::string charging_plan();

/// Reads with the small catalogue, whose two chemistries have charge stages here: "lfp" 3.55 V a cell without
/// float, "agm" 2.42 V with 2.25 V of float and -3.7 mV/K.
base::Result<ReadPlan> read_with_stages(std::string_view text);

}  // namespace voltwright::files
