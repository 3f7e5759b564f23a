#pragma once
// Findings on a data sheet as lines to show: a claim with what is usual, what is possible, and the verdict.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/claims/finding.h"

namespace voltwright::files::report {

/// One claim. Where it was held both against what is possible and against what others state, the worse
/// finding of the two speaks and the other stands beside it.
struct ClaimLine {
  const claims::Finding* finding = nullptr;  // never null
  const claims::Finding* beside = nullptr;   // null if it was held against one thing only

  const claims::Finding* usual() const;  // the one that ranks among what others state; may be null
  /// The claim as a number on the scale, in the unit of the finding.
  std::optional<double> flag() const;
  /// True if there is a number and something to hold it against.
  bool has_scale() const;
};

/// The lines in the order of the findings, which must outlive them.
std::vector<ClaimLine> claim_lines(const claims::Findings& findings);

/// "0.5C", "120 Wh/kg", "1.3": a C-rate is written without a space.
std::string with_unit(double value, const std::string& unit);

/// "possible: at most 145 Wh/kg", "others state 77 to 145 Wh/kg", "expected 1,178 to 1,382 Wh"; empty without
/// a range.
std::string range_words(const claims::Finding& finding);

/// "worked out: 1,280 Wh" where that is another number than the claim names; else empty.
std::string worked_out_words(const claims::Finding& finding);

/// "ask", "bad" or "full": the class by which a severity is drawn, besides its word and its shape.
std::string_view class_of(claims::Severity severity);

/// The sign of a severity with its word, as markup. Closed joint: holds; dotted: note; open: doubt; crossed:
/// contradiction.
std::string severity_mark(claims::Severity severity);

/// The strokes of the sign, in a box of 22 by 12.
std::string_view sign_of(claims::Severity severity);

}  // namespace voltwright::files::report
