#include "files/sheet.h"

#include <fmt/core.h>

#include <algorithm>
#include <exception>
#include <tuple>
#include <utility>

#include "files/fingerprint.h"
#include "files/sheet_parts.h"
#include "files/toml_tree.h"

namespace voltwright::files {
namespace {

constexpr std::size_t kMostProblems = 200;

bool format_is_known(Section& top) {
  const TomlNode* format = top.find("format");
  if (format == nullptr) {
    top.note_missing("format", "1");
    return true;
  }
  if (format->kind == TomlKind::kWhole && format->whole == kSheetFormat) return true;
  base::Problem& problem = top.note(*format, "format", "This program reads sheets of format 1.");
  problem.given = shown(*format);
  problem.remedy =
      format->kind == TomlKind::kWhole ? "Take a newer version of the program." : "Write format = 1.";
  return false;
}

void read_toml_sheet(std::string_view text, PlanReading& reading, ReadSheets& read) {
  TomlTree tree = read_toml(text, reading.file);
  reading.complete = tree.complete;
  reading.problems = std::move(tree.problems);
  Section top(reading, tree.root, "");
  if (format_is_known(top)) read.sheets.push_back(read_claims(top));
}

void read_table_sheets(std::string_view text, PlanReading& reading, ReadSheets& read) {
  for (const TomlNode& row : sheet_rows(text, reading.file, reading.problems)) {
    Section section(reading, row, "");
    read.sheets.push_back(read_claims(section));
  }
}

void sort_and_limit(base::Problems& problems) {
  std::stable_sort(problems.begin(), problems.end(), [](const base::Problem& a, const base::Problem& b) {
    return std::tie(a.where.line, a.where.column) < std::tie(b.where.line, b.where.column);
  });
  if (problems.size() <= kMostProblems) return;
  const std::size_t more = problems.size() - kMostProblems;
  problems.resize(kMostProblems);
  base::Problem rest = problems.front();
  rest.where.line = 0;
  rest.where.column = 0;
  rest.field.clear();
  rest.given.clear();
  rest.limit.clear();
  rest.remedy.clear();
  rest.what = fmt::format("{} further problems are not shown.", more);
  problems.push_back(std::move(rest));
}

/// Runs a reader of sheets; whatever it notes is sorted, limited and told apart from what was read.
template <class Reader>
base::Result<ReadSheets> read_with(const std::string& name, const Catalogue& catalogue, std::string_view text,
                                   const Reader& reader) {
  const Gazetteer no_places;  // a sheet names none
  PlanReading reading{name, catalogue, no_places, true, {}};
  ReadSheets read;
  try {
    reader(reading, read);
  } catch (const std::exception& error) {
    base::Problem problem;
    problem.where.file = name;
    problem.what = fmt::format("The sheet could not be read ({}).", error.what());
    reading.problems.push_back(std::move(problem));
  }
  sort_and_limit(reading.problems);
  if (base::has_error(reading.problems)) return std::move(reading.problems);
  read.warnings = std::move(reading.problems);
  read.mark = Fingerprint().add(text).mark();
  return read;
}

}  // namespace

base::Result<ReadSheets> read_sheets(std::string_view text, const std::string& name,
                                     const Catalogue& catalogue) {
  return read_with(name, catalogue, text, [&](PlanReading& reading, ReadSheets& read) {
    if (name.ends_with(".csv")) {
      read_table_sheets(text, reading, read);
    } else {
      read_toml_sheet(text, reading, read);
    }
  });
}

base::Result<ReadSheets> read_said_claims(const std::vector<std::string>& claims, const std::string& name,
                                          const Catalogue& catalogue) {
  std::string text;
  for (const std::string& said : claims) text += said + "\n";
  return read_with(name, catalogue, text, [&](PlanReading& reading, ReadSheets& read) {
    const TomlNode node = sheet_of_words(claims, name, reading.problems);
    Section section(reading, node, "");
    read.sheets.push_back(read_claims(section));
  });
}

}  // namespace voltwright::files
