#pragma once
// The catalogue's sources as lines for a report.
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::files {

/// "[key] Authors (year): Title. Publication." of each work that the texts name as "bib:key" or "[key]",
/// once, in the order of their first mention.
std::vector<std::string> works_named_in(std::span<const std::string> texts);

/// The same for records of the catalogue, such as "batteries/lfp-12v-100ah.json"; unknown ones name nothing.
std::vector<std::string> works_named_by_records(std::span<const std::string> records);

/// "Authors (year): Title. Publication." of each key, in the order asked; unknown keys are left out.
std::vector<std::string> reference_lines(std::span<const std::string_view> keys);

}  // namespace voltwright::files
