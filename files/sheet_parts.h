#pragma once
// The pieces of reading claims: one section of keys to one sheet; a CSV table, or claims said one
// by one, to such sections.
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/claims/sheet.h"
#include "files/plan_section.h"

namespace voltwright::files {

/// Every key of a sheet, as the columns of a table are named.
const std::vector<std::string>& sheet_keys();

/// Reads the claims of one section; every problem is noted with its place.
claims::Sheet read_claims(Section& section);

/// Without spaces and tabs at both ends.
std::string_view trimmed(std::string_view text);

/// The value of a key as TOML would have it: a number, yes or no, or a text.
TomlNode sheet_value(std::string_view key, std::string_view value, std::pair<int, int> place);

/// Claims such as "capacity=100 Ah" as a section; a name is given to it if none is claimed. What is no claim,
/// or is claimed twice, is noted in `problems`; the line of a problem is the number of the claim.
TomlNode sheet_of_words(const std::vector<std::string>& claims, const std::string& name,
                        base::Problems& problems);

/// The rows of a comma-separated table as sections, keys from its header; unknown columns and a table that
/// cannot be read are noted in `problems`. Empty fields are left out.
std::vector<TomlNode> sheet_rows(std::string_view text, const std::string& name, base::Problems& problems);

}  // namespace voltwright::files
