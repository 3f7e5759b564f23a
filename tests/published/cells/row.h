#pragma once
// One row of checks.json: a quantity, what goes in, what must come out and who says so.
#include <iosfwd>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "engine/base/result.h"

namespace voltwright::published {

/// Named inputs of a row. A quantity asks for each by name; what it asks for and is not there, and what is
/// there and it never asks for, is a mistake in the row.
class Inputs {
 public:
  using Value = std::variant<double, std::string>;

  void put(const std::string& name, Value value) { values_[name] = std::move(value); }

  double number(const std::string& name);
  double number_or(const std::string& name, double otherwise);
  std::string text(const std::string& name);
  /// Notes a mistake: the inputs cannot be used together.
  void refuse(const std::string& why) { mistakes_ += why + "; "; }

  /// What was wrong so far, empty if nothing; call it after all is asked for.
  std::string mistakes() const;

 private:
  const Value* find(const std::string& name);

  std::map<std::string, Value> values_;
  std::set<std::string> asked_;
  std::string mistakes_;
};

struct Row {
  std::string id;  // number of the check and a letter
  std::string quantity;
  Inputs inputs;
  double expected = 0.0;
  double tolerance = 0.0;
  bool relative = false;  // the tolerance is a share of the expected value
  std::string source;
  std::string note;

  int check() const;  // leading number of the id
};

/// The checks are numbered from 1 to this.
inline constexpr int kChecks = 60;

/// Shown by the test runner.
void PrintTo(const Row& row, std::ostream* out);

/// A check that has no row, or not all, and why.
struct LeftOut {
  int check = 0;
  std::string reason;
};

struct Checks {
  std::vector<Row> rows;
  std::vector<LeftOut> left_out;         // no row
  std::vector<LeftOut> partly_left_out;  // some values have no row
};

/// Reads the text of checks.json; all problems at once.
base::Result<Checks> read_checks(std::string_view text, const std::string& file);

/// What the row's quantity gives for its inputs. A problem if nothing gives that quantity or the inputs are
/// not the ones that it takes.
base::Result<double> evaluate(const Row& row);

/// How far the value may lie from `expected`.
double allowance(const Row& row);

}  // namespace voltwright::published
