#include "files/text_problem.h"

namespace voltwright::files {

base::Problem text_problem(const std::string& file, int line, int column, const ProblemWords& words) {
  base::Problem problem;
  problem.where.file = file;
  problem.where.line = line;
  problem.where.column = column;
  problem.what = words.what;
  problem.field = words.field;
  problem.given = words.given;
  problem.limit = words.limit;
  problem.remedy = words.remedy;
  return problem;
}

base::Problem text_warning(const std::string& file, int line, int column, const ProblemWords& words) {
  base::Problem problem = text_problem(file, line, column, words);
  problem.severity = base::Severity::kWarning;
  return problem;
}

}  // namespace voltwright::files
