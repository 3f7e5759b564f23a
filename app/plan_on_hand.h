#pragma once
// A plan with everything it refers to: catalogue, climates and weather files.
#include <string>
#include <vector>

#include "engine/advise/plan.h"
#include "engine/base/result.h"
#include "engine/cost/money.h"
#include "engine/season/series.h"
#include "files/catalogue.h"
#include "files/climate.h"

namespace voltwright::app {

struct PlanOnHand {
  advise::Plan plan;
  files::Catalogue catalogue;
  files::ClimateTable climates;
  cost::RunningFacts cost_facts;      // of the catalogue
  std::vector<season::LegSky> skies;  // one a leg
  std::string plan_mark;
  std::string moved;  // how the journey was moved, in words; empty = as planned
  base::Problems warnings;
};

/// Reads the plan at `path`, the built-in catalogue and the climate of each leg. Weather files and a track
/// are looked for beside the plan. `start` moves the journey, see files::read_plan.
base::Result<PlanOnHand> plan_on_hand(const std::string& path, const std::string& start = {});

}  // namespace voltwright::app
