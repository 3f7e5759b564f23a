#include "engine/claims/finding.h"

#include <algorithm>

namespace voltwright::claims {

std::string_view name_of(Severity severity) {
  switch (severity) {
    case Severity::kHolds:
      return "holds";
    case Severity::kNote:
      return "note";
    case Severity::kDoubt:
      return "doubt";
    case Severity::kContradiction:
      return "contradiction";
  }
  return "";
}

bool is_doubted(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
    return f.severity == Severity::kDoubt || f.severity == Severity::kContradiction;
  });
}

}  // namespace voltwright::claims
