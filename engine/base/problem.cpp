#include "engine/base/problem.h"

#include <algorithm>

namespace voltwright::base {

bool has_error(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& p) { return p.severity == Severity::kError; });
}

std::string to_text(const Problem& problem) {
  std::string text;
  if (!problem.where.file.empty()) {
    text += problem.where.file;
    if (problem.where.line > 0) {
      text += ':' + std::to_string(problem.where.line);
      if (problem.where.column > 0) text += ':' + std::to_string(problem.where.column);
    }
    text += ": ";
  }
  if (problem.severity == Severity::kWarning) text += "warning: ";
  if (!problem.field.empty()) text += problem.field + ": ";
  text += problem.what;
  if (!problem.given.empty()) text += " Given: " + problem.given + ".";
  if (!problem.limit.empty()) text += " Allowed: " + problem.limit + ".";
  if (!problem.remedy.empty()) text += " " + problem.remedy;
  return text;
}

}  // namespace voltwright::base
