#pragma once
#include <string_view>

namespace voltwright::base {

/// Number of insertions, deletions, replacements and swaps of neighbouring bytes that turn `a` into `b`
/// (optimal string alignment after Damerau 1964 and Levenshtein 1966). Only the first 64 bytes of each count.
int edit_distance(std::string_view a, std::string_view b);

}  // namespace voltwright::base
