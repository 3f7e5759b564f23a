#pragma once
// Data sheets of batteries held against themselves, physics and what others state.
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/claims/vet.h"

namespace voltwright::app {

struct VetRequest {
  std::string path;                 // of a TOML sheet, or of a CSV table of several; empty: see claims
  std::vector<std::string> claims;  // claims said one by one, "capacity=100 Ah", in place of a sheet
};

struct VettedSheet {
  claims::Sheet sheet;
  claims::Findings findings;  // contradictions first
  std::string summary;        // one sentence
};

struct VetResponse {
  std::string catalogue_mark;
  std::string sheet_mark;
  std::vector<VettedSheet> sheets;
  std::vector<std::string> cautions;
  base::Problems warnings;
};

/// Reads the sheet or sheets, or the claims, and the catalogue and holds one against the other; every problem
/// at once.
base::Result<VetResponse> vet(const VetRequest& request);

/// Format: docs/formats/answer.md.
std::string to_json(const VetResponse& response);

/// One finding a row. Format: docs/formats/answer.md.
std::string findings_csv(const VetResponse& response);

}  // namespace voltwright::app
