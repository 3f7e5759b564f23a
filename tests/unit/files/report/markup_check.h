#pragma once
// A small reader of tags: enough to see that every element that opens closes, in order.
#include <string>
#include <string_view>

namespace voltwright::files {

/// Empty if all tags balance; else what is wrong and where.
std::string unbalanced(std::string_view html);

/// The text between tags with the style left out and the character references resolved.
std::string visible_text(std::string_view html);

}  // namespace voltwright::files
