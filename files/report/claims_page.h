#pragma once
// Vetted sheets of claims as one self-contained page for screen and paper.
#include <string>
#include <vector>

#include "engine/claims/finding.h"

namespace voltwright::files::report {

struct ClaimsSheet {
  std::string name;
  std::string kind;     // chemistry as the sheet names it
  std::string summary;  // a sentence that counts the findings
  const claims::Findings* findings = nullptr;
};

struct ClaimsInput {
  std::vector<ClaimsSheet> sheets;
  std::vector<std::string> cautions;
  std::vector<std::string> works;  // formatted references that the sources name
  std::string sheet_mark, catalogue_mark, engine_version;
  std::string issue = "A";
};

/// HTML with inline style and pictures, no script, nothing loaded from elsewhere; every text is escaped.
std::string claims_page(const ClaimsInput& input);

}  // namespace voltwright::files::report
