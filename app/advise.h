#pragma once
// The main job: from a plan to a proven recommendation.
#include <string>
#include <vector>

#include "app/plan_on_hand.h"
#include "engine/advise/life_cost.h"
#include "engine/advise/recommendation.h"
#include "engine/advise/search.h"
#include "engine/advise/sun_check.h"

namespace voltwright::app {

struct AdviseRequest {
  std::string plan_path;
  std::string start;     // moves the journey to begin on this day; empty = as planned
  unsigned threads = 0;  // 0 = all processors
};

/// One season of the best (or nearest) bank in minutes.
struct ShownSeason {
  std::uint64_t season = 0;
  season::Fared fared;
  season::Trace trace;
  std::vector<float> outside_C;
};

struct AdviseResponse {
  PlanOnHand hand;
  advise::Recommendation answer;
  advise::LifeCost costs;
  double demand_Wh_day = 0.0;  // mean of the first season
  std::vector<advise::SunFinding> sun_findings;
  ShownSeason worst, median;
};

base::Result<AdviseResponse> advise(const AdviseRequest& request, const advise::Progress& progress);

/// What was assumed, as sentences for the report.
std::vector<std::string> assumptions_of(const PlanOnHand& hand);

}  // namespace voltwright::app
