#pragma once
// The catalogue's sources as lines for a report.
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::files {

/// "Authors (year): Title. Publication." of each key, in the order asked; unknown keys are left out.
std::vector<std::string> reference_lines(std::span<const std::string_view> keys);

}  // namespace voltwright::files
