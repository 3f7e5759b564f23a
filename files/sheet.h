#pragma once
// Claims of batteries: a TOML sheet of one, or a CSV table of several. Format: docs/formats/sheet.md.
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/claims/sheet.h"
#include "files/catalogue.h"

namespace voltwright::files {

inline constexpr int kSheetFormat = 1;

struct ReadSheets {
  std::vector<claims::Sheet> sheets;  // at least one
  base::Problems warnings;
  std::string mark;  // first eight hexadecimal digits of a hash over the text
};

/// Reads one sheet from TOML, or from CSV (a name that ends in ".csv") one a row. `name` is shown in
/// problems; all problems come at once, each with line and column.
base::Result<ReadSheets> read_sheets(std::string_view text, const std::string& name,
                                     const Catalogue& catalogue);

/// Reads one sheet from claims such as "capacity=100 Ah", with the keys of a TOML sheet; `name` is shown in
/// problems, with the number of the claim as line.
base::Result<ReadSheets> read_said_claims(const std::vector<std::string>& claims, const std::string& name,
                                          const Catalogue& catalogue);

}  // namespace voltwright::files
