#include "app/version.h"
#include "app/vet.h"
#include "files/references.h"
#include "files/report/claims_page.h"
#include "files/report/claims_slide.h"

namespace voltwright::app {

std::string vet_html(const VetResponse& response) {
  files::report::ClaimsInput input;
  std::vector<std::string> origins;
  for (const VettedSheet& vetted : response.sheets) {
    input.sheets.push_back({vetted.sheet.name, vetted.kind_words, vetted.summary, &vetted.findings});
    for (const claims::Finding& f : vetted.findings) origins.push_back(f.source);
  }
  input.cautions = response.cautions;
  input.works = files::works_named_in(origins);
  input.sheet_mark = response.sheet_mark;
  input.catalogue_mark = response.catalogue_mark;
  input.engine_version = kVersion;
  return files::report::claims_page(input);
}

base::Result<std::string> vet_svg(const VetResponse& response) {
  if (response.sheets.size() != 1) {
    base::Problem problem;
    problem.field = "--svg, --png";
    problem.what = "A slide shows one sheet.";
    problem.given = std::to_string(response.sheets.size()) + " sheets";
    problem.remedy = "Choose one with --only NAME.";
    return problem;
  }
  const VettedSheet& vetted = response.sheets.front();
  return files::report::claims_slide(vetted.sheet.name, vetted.summary, vetted.findings);
}

}  // namespace voltwright::app
