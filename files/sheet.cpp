#include "files/sheet.h"

#include <fmt/core.h>

#include <exception>
#include <utility>

#include "files/fingerprint.h"
#include "files/sheet_parts.h"
#include "files/text_problem.h"
#include "files/toml_tree.h"

namespace voltwright::files {
namespace {

void read_toml_sheet(std::string_view text, PlanReading& reading, ReadSheets& read) {
  TomlTree tree = read_toml(text, reading.file);
  reading.complete = tree.complete;
  reading.problems = std::move(tree.problems);
  Section top(reading, tree.root, "");
  if (format_is_known(top, "sheets", kSheetFormat)) read.sheets.push_back(read_claims(top));
}

void read_table_sheets(std::string_view text, PlanReading& reading, ReadSheets& read) {
  for (const TomlNode& row : sheet_rows(text, reading.file, reading.problems)) {
    Section section(reading, row, "");
    read.sheets.push_back(read_claims(section));
  }
}

/// Runs a reader of sheets; whatever it notes is sorted, limited and told apart from what was read.
template <class Reader>
base::Result<ReadSheets> read_with(const std::string& name, const Catalogue& catalogue, std::string_view text,
                                   const Reader& reader) {
  const Gazetteer no_places;  // a sheet names none
  PlanReading reading{name, catalogue, no_places, true, {}, {}, {}, {}};
  ReadSheets read;
  try {
    reader(reading, read);
  } catch (const std::exception& error) {
    base::Problem problem;
    problem.where.file = name;
    problem.what = fmt::format("The sheet could not be read ({}).", error.what());
    reading.problems.push_back(std::move(problem));
  }
  sort_and_limit(reading.problems, name);
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
