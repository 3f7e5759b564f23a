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
  std::string only;                 // name of the one sheet of a table to judge; empty: all
};

struct VettedSheet {
  claims::Sheet sheet;
  std::string kind_words;     // "iron-phosphate"; a family stays as the sheet names it
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

/// Every claim with its picture, verdict, working and source as one self-contained HTML page.
std::string vet_html(const VetResponse& response);

/// The claims of one sheet as a picture for a slide, 16 to 9; a problem if there are several sheets.
base::Result<std::string> vet_svg(const VetResponse& response);

}  // namespace voltwright::app
