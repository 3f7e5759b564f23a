#pragma once
// The part of a year that a plan does not fill: the bank at rest where the journey ends.
#include <span>
#include <vector>

#include "engine/advise/plan.h"
#include "engine/ageing/year_of_use.h"
#include "engine/cell/chemistry.h"
#include "engine/season/series.h"

namespace voltwright::advise {

/// How often the plan's season comes in a year: once, or as often as it fits if it is longer than a year.
double seasons_per_year(const Plan& plan);

/// Rest of the year after the last leg, left at `soc`, in the air outside where the journey ends, month by
/// month at its mean (a heater or a heated cabin is off: assumption). Plates of lead-acid rest at their own
/// voltage. Empty (0 hours) if the season fills a year.
ageing::Exposure rest_of_year(const Plan& plan, std::span<const season::LegSky> skies,
                              const cell::Chemistry& chemistry, double soc);

}  // namespace voltwright::advise
