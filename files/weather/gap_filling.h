#pragma once
#include <cstddef>
#include <optional>
#include <vector>

namespace voltwright::files {

/// Fills the gaps of a year of hourly values that closes on itself: gaps of at most 3 h on a straight line,
/// longer ones with the same hour of the nearest days that have it, the mean of both sides where both do.
/// Returns nothing if no value is there at all. Values found count as they were, not as filled.
std::optional<std::vector<double>> fill_gaps(const std::vector<std::optional<double>>& hours);

}  // namespace voltwright::files
