#pragma once
// The pieces of reading claims: one section of keys to one sheet, and a CSV table to such sections.
#include <string>
#include <string_view>
#include <vector>

#include "engine/claims/sheet.h"
#include "files/plan_section.h"

namespace voltwright::files {

/// Every key of a sheet, as the columns of a table are named.
const std::vector<std::string>& sheet_keys();

/// Reads the claims of one section; every problem is noted with its place.
claims::Sheet read_claims(Section& section);

/// The rows of a comma-separated table as sections, keys from its header; unknown columns and a table that
/// cannot be read are noted in `problems`. Empty fields are left out.
std::vector<TomlNode> sheet_rows(std::string_view text, const std::string& name, base::Problems& problems);

}  // namespace voltwright::files
