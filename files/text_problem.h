#pragma once
#include <string>

#include "engine/base/problem.h"

namespace voltwright::files {

/// What is wrong with a text, in the words of base::Problem.
struct ProblemWords {
  std::string what;
  std::string field;
  std::string given;
  std::string limit;
  std::string remedy;
};

/// An error at a place of a file; line and column count from 1, 0 means not known.
base::Problem text_problem(const std::string& file, int line, int column, const ProblemWords& words);

/// The same as a warning.
base::Problem text_warning(const std::string& file, int line, int column, const ProblemWords& words);

/// Puts the problems of a file in the order of its lines and keeps the first 200; one more then counts the
/// rest.
void sort_and_limit(base::Problems& problems, const std::string& file);

}  // namespace voltwright::files
