// A comma-separated table of claims as sections of keys.
#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "files/number_table.h"
#include "files/sheet_parts.h"
#include "files/suggest.h"
#include "files/text_problem.h"

namespace voltwright::files {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::size_t kMostRows = 1000;

/// Line and column of a part of a text, both from 1.
std::pair<int, int> place_of(std::string_view text, std::string_view part) {
  const auto at = static_cast<std::size_t>(part.data() - text.data());
  const std::string_view before = text.substr(0, at);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t feed = before.rfind('\n');
  const std::size_t column = feed == std::string_view::npos ? at + 1 : at - feed;
  return {static_cast<int>(line), static_cast<int>(column)};
}

bool is_word_key(std::string_view key) {
  static constexpr std::string_view kWords[] = {"name",     "chemistry", "level", "form",
                                                "currency", "price",     "note"};
  return std::find(std::begin(kWords), std::end(kWords), key) != std::end(kWords);
}

/// Notes columns that are no keys or stand twice. Returns false for each such column.
std::vector<bool> known_columns(const NumberTable& table, std::string_view text, const std::string& name,
                                base::Problems& problems) {
  std::vector<bool> known;
  std::vector<std::string_view> seen;
  for (const std::string_view raw : table.columns) {
    const std::string_view column = trimmed(raw);
    const auto& keys = sheet_keys();
    const bool is_key = std::find(keys.begin(), keys.end(), column) != keys.end();
    const bool twice = std::find(seen.begin(), seen.end(), column) != seen.end();
    seen.push_back(column);
    known.push_back(is_key && !twice);
    if (is_key && !twice) continue;
    const auto [line, at] = place_of(text, raw);
    const std::string near = nearest_word(column, keys);
    std::string remedy =
        near.empty() ? "The keys are listed in docs/formats/sheet.md." : "Did you mean \"" + near + "\"?";
    if (column.find(';') != std::string_view::npos) remedy = "Separate the columns by commas.";
    problems.push_back(
        text_problem(name, line, at,
                     {.what = twice ? "This column stands twice." : "This column is not known.",
                      .field = "",
                      .given = shown(column),
                      .limit = "",
                      .remedy = twice ? "Leave one." : remedy}));
  }
  return known;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

TomlNode sheet_value(std::string_view key, std::string_view field, std::pair<int, int> place) {
  TomlNode node;
  node.kind = TomlKind::kText;
  node.line = place.first;
  node.column = place.second;
  node.text = field;
  if (is_word_key(key)) return node;
  if (field == "yes" || field == "true" || field == "no" || field == "false") {
    node.kind = TomlKind::kFlag;
    node.flag = field == "yes" || field == "true";
    return node;
  }
  const auto number = to_number(field);
  if (!number) return node;
  constexpr double kMostWhole = 1e15;
  node.real = *number;
  const bool whole = std::floor(*number) == *number && std::fabs(*number) < kMostWhole;
  node.kind = whole ? TomlKind::kWhole : TomlKind::kReal;
  if (whole) node.whole = static_cast<std::int64_t>(*number);
  return node;
}

std::vector<TomlNode> sheet_rows(std::string_view text, const std::string& name, base::Problems& problems) {
  std::vector<TomlNode> rows;
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  const auto read = read_table(text, name);
  if (!read) {
    problems.insert(problems.end(), read.problems().begin(), read.problems().end());
    return rows;
  }
  const NumberTable& table = read.value();
  const std::vector<bool> known = known_columns(table, text, name, problems);
  const auto refuse = [&](const char* what, std::string limit) {
    problems.push_back(text_problem(
        name, 0, 0,
        {.what = what, .field = "", .given = "", .limit = std::move(limit), .remedy = "Mend the table."}));
  };
  if (table.rows.empty()) refuse("The table holds no row under its header.", "");
  if (table.rows.size() > kMostRows)
    refuse("The table holds too many rows.", fmt::format("up to {}", kMostRows));
  if (table.rows.empty() || table.rows.size() > kMostRows) return rows;
  for (const NumberTable::Row& row : table.rows) {
    TomlNode node;
    node.line = row.line;
    node.column = 1;
    for (std::size_t i = 0; i < row.fields.size(); ++i) {
      const std::string_view field = trimmed(row.fields[i]);
      if (field.empty() || !known[i]) continue;
      const std::string key(trimmed(table.columns[i]));
      const auto place = place_of(text, field);
      node.members.push_back({key, place.first, place.second, sheet_value(key, field, place)});
    }
    rows.push_back(std::move(node));
  }
  return rows;
}

}  // namespace voltwright::files
