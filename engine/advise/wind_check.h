#pragma once
// Whether the wind is known wherever a plan's turbine stands.
#include <span>

#include "engine/advise/plan.h"
#include "engine/base/problem.h"
#include "engine/season/series.h"

namespace voltwright::advise {

/// One problem for each place without a known wind: on land the climate table has none, so the plan must give
/// a mean, or the leg a weather file. Nothing if the plan has no wind turbine. `skies` has one entry a leg.
base::Problems wind_problems(const Plan& plan, std::span<const season::LegSky> skies);

}  // namespace voltwright::advise
