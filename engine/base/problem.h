#pragma once
// A problem is something a person must mend: what is wrong, where, and what would be right.
#include <string>
#include <vector>

namespace voltwright::base {

/// Position in a text that a person wrote. Line and column count from 1; 0 means not known.
struct TextPlace {
  std::string file;
  int line = 0;
  int column = 0;
};

enum class Severity { kError, kWarning };

/// One thing to mend. `what` is a full sentence; `given` is what stood there; `limit` is what is allowed;
/// `remedy` says what would be right.
struct Problem {
  std::string what;
  TextPlace where;
  std::string field;
  std::string given;
  std::string limit;
  std::string remedy;
  Severity severity = Severity::kError;
};

using Problems = std::vector<Problem>;

/// True if at least one problem is an error and not merely a warning.
bool has_error(const Problems& problems);

/// One line per problem: "file:line:column: what (given …; allowed …). remedy".
std::string to_text(const Problem& problem);

}  // namespace voltwright::base
