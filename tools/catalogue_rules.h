#pragma once
// The rules that every catalogue file must keep, apart from what the reader checks. See
// docs/formats/catalogue.md.
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "engine/base/problem.h"

namespace voltwright::tools {

/// Checks one record: id against `stem` (the file name without ending), a unit at the end of every numeric
/// key or its name in the list of ratios, exactly one of source, derived_from and assumption in every block
/// that holds numbers, ranges in order, curves that rise.
base::Problems check_record(std::string_view text, const std::string& file, const std::string& stem);

/// Keys of a BibTeX text, and a problem for each that stands twice.
std::set<std::string> bib_keys(std::string_view text, const std::string& file, base::Problems& problems);

/// Bibliography keys that a catalogue text cites as bib:key.
std::set<std::string> cited_in_catalogue(std::string_view text);

/// Bibliography keys that a page of docs/ cites as [key]: a name that ends in a year, or any name in `known`.
std::set<std::string> cited_in_page(std::string_view text, const std::set<std::string>& known);

/// Citations that resolve nowhere, and keys that nothing cites. `cited` maps a key to a file that cites it.
base::Problems check_citations(const std::set<std::string>& known,
                               const std::map<std::string, std::string>& cited,
                               const std::string& bibliography);

}  // namespace voltwright::tools
