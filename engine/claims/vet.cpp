#include "engine/claims/vet.h"

#include <algorithm>

#include "engine/claims/rules.h"

namespace voltwright::claims {

Findings vet(const Sheet& sheet, const Evidence& evidence) {
  Findings findings;
  const Subject subject = subject_of(sheet, evidence);
  check_consistent(subject, findings);
  check_charging(subject, findings);
  check_density(subject, findings);
  check_possible(subject, findings);
  check_usual(subject, findings);
  check_misleading(subject, findings);
  check_equivalent(subject, findings);
  check_complete(subject, findings);
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  return findings;
}

}  // namespace voltwright::claims
