#pragma once
// One named bank through one season, in minutes.
#include <string>

#include "app/advise.h"

namespace voltwright::app {

struct SimulateRequest {
  std::string plan_path;
  std::string start;  // moves the journey to begin on this day; empty = as planned
  std::string bank;   // "lfp-12v-100ah", "lfp-12v-100ah:1s2p"
  std::uint64_t season = 0;
};

struct SimulateResponse {
  PlanOnHand hand;
  advise::Candidate candidate;
  ShownSeason shown;
};

base::Result<SimulateResponse> simulate(const SimulateRequest& request);

/// Bank text to a named bank: battery id, then optionally ":<series>s<parallel>p".
base::Result<advise::NamedBank> parse_bank(const std::string& text, const advise::Plan& plan,
                                           const files::Catalogue& catalogue);

}  // namespace voltwright::app
