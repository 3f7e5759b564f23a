#pragma once
// Names without case and accents, so that "Östersund", "ostersund" and "OSTERSUND" are one.
#include <string>
#include <string_view>

namespace voltwright::files {

/// Lower case without accents of a UTF-8 text: Latin letters become plain a to z (o with stroke -> o, sharp s
/// -> ss), hyphens and dots become one space, apostrophes go, other scripts stay (Greek and Cyrillic in lower
/// case). Bytes that are not UTF-8 stay as they are.
std::string fold(std::string_view text);

/// The same into a string that is used again and again.
void fold_into(std::string_view text, std::string& out);

}  // namespace voltwright::files
