#include "files/text_problem.h"

#include <fmt/core.h>

#include <algorithm>
#include <tuple>
#include <utility>

namespace voltwright::files {
namespace {

constexpr std::size_t kMostProblems = 200;

}  // namespace

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

void sort_and_limit(base::Problems& problems, const std::string& file) {
  std::stable_sort(problems.begin(), problems.end(), [](const base::Problem& a, const base::Problem& b) {
    return std::tie(a.where.line, a.where.column) < std::tie(b.where.line, b.where.column);
  });
  if (problems.size() <= kMostProblems) return;
  base::Problem more;
  more.where.file = file;
  more.what = fmt::format("{} further problems are not shown.", problems.size() - kMostProblems);
  more.severity = base::has_error(problems) ? base::Severity::kError : base::Severity::kWarning;
  problems.resize(kMostProblems);
  problems.push_back(std::move(more));
}

}  // namespace voltwright::files
