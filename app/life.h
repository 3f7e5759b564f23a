#pragma once
// How long a bank lasts at a plan's use, and how long a chemistry lasts at made-up duties.
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "app/plan_on_hand.h"
#include "engine/advise/bank_life.h"

namespace voltwright::app {

struct LifeRequest {
  std::string plan_path;
  std::string start;     // moves the journey to begin on this day; empty = as planned
  std::string bank;      // as SimulateRequest::bank; empty = what is fitted now, else the recommended bank
  int in_parallel = 0;   // strings side by side; 0 = as in `bank`, or one
  unsigned threads = 0;  // 0 = all processors
};

struct LifeResponse {
  PlanOnHand hand;
  advise::Candidate candidate;
  std::string chosen;  // how the bank was chosen, in words
  advise::BankLife life;
  advise::StatedLife at_80, at_70, plan;
  std::string sentence;               // the answer
  std::vector<double> over_measured;  // one a law: loss over that measured in a first year at rest, or 0
  std::vector<std::string> assumptions;
  std::vector<std::string> cautions;
};

/// Told while it works: a text for a progress line.
using LifeProgress = std::function<void(const std::string&)>;

/// Every problem of the request at once.
base::Result<std::shared_ptr<const LifeResponse>> bank_life(const LifeRequest& request,
                                                            const LifeProgress& progress);

/// "within its data", "extrapolated", "outside data".
std::string reach_words(ageing::Reach reach);
/// "measured", "published law", "life points", "handbook figures".
std::string basis_words(ageing::Basis basis);

struct LifeMapResponse {
  std::string chemistry, name;
  advise::Speaking speaking;
  ageing::LifeMap map;
  std::vector<ageing::Gain> gains;  // of one deep cycle a day from full at 25 degC, by the leading law
  std::vector<std::string> cautions;
  std::string catalogue_mark;
};

/// The chemistry by its catalogue id.
base::Result<LifeMapResponse> map_life(const std::string& chemistry);

/// Format: docs/formats/life.md.
std::string to_json(const LifeResponse& response);
std::string to_json(const LifeMapResponse& response);
/// Every law's course, a row for each quarter of a year or so; columns in docs/formats/life.md.
std::string life_csv(const LifeResponse& response);
/// The duties of the map; columns in docs/formats/life.md.
std::string life_csv(const LifeMapResponse& response);
/// Sentence, picture, tables, cautions as one self-contained HTML page.
std::string life_html(const LifeResponse& response);
/// The curves with their bands for a slide, 16 to 9.
std::string life_svg(const LifeResponse& response);

}  // namespace voltwright::app
