#include "files/number_table.h"

#include <charconv>
#include <cmath>

#include "files/text_problem.h"

namespace voltwright::files {

std::vector<std::string_view> split_at(std::string_view line, char separator) {
  std::vector<std::string_view> fields;
  std::size_t start = 0;
  bool quoted = false;
  for (std::size_t i = 0; i <= line.size(); ++i) {
    if (i < line.size() && line[i] == '"') quoted = !quoted;
    if (i < line.size() && (line[i] != separator || quoted)) continue;
    std::string_view field = line.substr(start, i - start);
    if (field.size() >= 2 && field.front() == '"' && field.back() == '"') {
      field = field.substr(1, field.size() - 2);
    }
    fields.push_back(field);
    start = i + 1;
  }
  return fields;
}

std::optional<double> to_number(std::string_view field) {
  while (!field.empty() && (field.front() == ' ' || field.front() == '\t')) field.remove_prefix(1);
  while (!field.empty() && (field.back() == ' ' || field.back() == '\t')) field.remove_suffix(1);
  if (field.size() > 1 && field.front() == '+' && field[1] != '-') field.remove_prefix(1);
  double value = 0.0;
  const auto [end, error] = std::from_chars(field.data(), field.data() + field.size(), value);
  if (field.empty() || error != std::errc() || end != field.data() + field.size() || !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

std::optional<std::size_t> NumberTable::column(std::string_view name) const {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i] == name) return i;
  }
  return std::nullopt;
}

base::Result<NumberTable> read_table(std::string_view text, const std::string& name) {
  NumberTable table;
  base::Problems problems;
  int line_number = 0;
  while (!text.empty()) {
    ++line_number;
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string_view> fields = split_at(line, ',');
    if (table.columns.empty()) {
      table.columns = std::move(fields);
    } else if (fields.size() == table.columns.size()) {
      table.rows.push_back({line_number, std::move(fields)});
    } else {
      problems.push_back(text_problem(name, line_number, 1,
                                      {.what = "The row does not have as many fields as there are columns.",
                                       .field = "",
                                       .given = std::to_string(fields.size()),
                                       .limit = std::to_string(table.columns.size()),
                                       .remedy = "Mend the row."}));
    }
  }
  if (!problems.empty()) return problems;
  return table;
}

}  // namespace voltwright::files
