#pragma once
// Lines and fields of a weather text with their places, and the problems found in them.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "files/number_table.h"
#include "files/text_problem.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Blanks, tabs and a carriage return taken off both ends.
std::string_view trimmed(std::string_view text);

/// Small Latin letters.
std::string lower_case(std::string_view text);

/// Walks through the lines of a text; a byte order mark at its start is left out.
class Lines {
 public:
  explicit Lines(std::string_view text);

  /// Goes to the next line; false at the end.
  bool next();
  std::string_view text() const { return current_; }
  int number() const { return number_; }

 private:
  std::string_view rest_;
  std::string_view current_;
  int number_ = 0;
};

/// Notes problems, 25 at most; the rest is counted.
class WeatherProblems {
 public:
  explicit WeatherProblems(const std::string& name) : name_(name) {}

  void add(int line, int column, const ProblemWords& words);
  bool empty() const { return problems_.empty(); }
  /// The problems, with one more that counts those not shown.
  base::Problems take();

  /// A field of a row as a number within the range of its column. Nothing and no problem if it is empty or
  /// at or beyond a missing code; nothing and a problem if it is not a number or out of range. `where` is the
  /// column in the line, or 0.
  std::optional<double> value(std::string_view field, WeatherColumn column, int line, int where,
                              double factor = 1.0);

  /// A value if it lies in the range of its column, otherwise nothing and a problem that shows `field`.
  std::optional<double> in_range(double value, std::string_view field, WeatherColumn column, int line,
                                 int where);

 private:
  const std::string& name_;
  base::Problems problems_;
  int further_ = 0;
};

/// Column of a field in its line, from 1.
int place_in(std::string_view line, std::string_view field);

/// Days of a month, 29 for February.
int most_days(int month);

/// A calendar date; nothing if a part is out of range. February has 29 days here.
bool is_date(int year, int month, int day);

/// Whole number of exactly these characters, digits only.
std::optional<int> digits(std::string_view text);

}  // namespace voltwright::files
