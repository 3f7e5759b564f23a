#pragma once
// The printable answer: one self-contained page of HTML with its pictures, for screen and paper.
#include <cstdint>
#include <string>
#include <vector>

#include "engine/advise/caution.h"
#include "engine/advise/life_cost.h"
#include "engine/advise/plan.h"
#include "engine/advise/recommendation.h"
#include "engine/season/run.h"

namespace voltwright::files {

/// One season of the shown bank in minutes.
struct ReportSeason {
  std::string label;
  std::uint64_t season = 0;
  season::Fared fared;
  season::Trace trace;
  std::vector<float> outside_C;  // one a minute, like the trace
};

struct ReportInput {
  const advise::Plan* plan = nullptr;
  const advise::Recommendation* answer = nullptr;
  const advise::LifeCost* costs = nullptr;  // of that ranking; null leaves its part out
  ReportSeason worst, median;               // of the best bank, or of the nearest if none holds
  std::vector<advise::Caution> sun_cautions;
  std::vector<std::string> assumptions;
  std::vector<std::string> climate_origins;
  std::vector<std::string> sources;  // formatted references
  std::string plan_mark, catalogue_mark, engine_version;
  std::string issue = "A";
};

/// The report as HTML with inline style and pictures; no script, nothing loaded from elsewhere. All texts are
/// escaped. Plan and answer must not be null; an empty ranking or empty traces leave their parts out.
std::string report_html(const ReportInput& input);

}  // namespace voltwright::files
