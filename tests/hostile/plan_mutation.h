#pragma once
// Random damage to plan texts, the same for the same number.
#include <cstdint>
#include <string>

namespace voltwright::files {

/// A plan text with one to eight random changes: bytes altered, pieces doubled, removed, swapped or replaced
/// by words that are hard on readers. The same `number` gives the same text.
std::string damaged_plan(std::uint64_t number);

/// Reads a text with the small catalogue and checks what every reading must keep to. Empty if all is well,
/// else what was broken.
std::string broken_promise(const std::string& text);

}  // namespace voltwright::files
