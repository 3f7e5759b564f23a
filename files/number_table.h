#pragma once
// Comma-separated tables of the catalogue: comment lines start with '#', the first other line names the
// columns, a text field may stand in double quotes.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace voltwright::files {

/// Splits a line at a separator; separators inside double quotes do not split, the quotes are dropped.
std::vector<std::string_view> split_at(std::string_view line, char separator);

/// A decimal number that fills the whole field apart from blanks; nothing for text, NaN or infinity.
std::optional<double> to_number(std::string_view field);

/// Rows of a table, with the line each came from. Views point into the text that was read.
struct NumberTable {
  struct Row {
    int line = 0;
    std::vector<std::string_view> fields;
  };
  std::vector<std::string_view> columns;
  std::vector<Row> rows;

  /// Index of a column, or nothing.
  std::optional<std::size_t> column(std::string_view name) const;
};

/// Reads a table; a row with another number of fields than there are columns is a problem.
base::Result<NumberTable> read_table(std::string_view text, const std::string& name);

}  // namespace voltwright::files
