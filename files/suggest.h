#pragma once
// The known word that someone probably meant.
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::files {

/// Known words that look most like `word`, best first, at most `most`. Case, spaces, '-' and '_' do not
/// count; a word is near if a third of its letters or fewer differ. Words of one letter have no neighbours.
std::vector<std::string> near_words(std::string_view word, const std::vector<std::string>& known,
                                    std::size_t most);

/// The best of near_words; empty if none is near.
std::string nearest_word(std::string_view word, const std::vector<std::string>& known);

}  // namespace voltwright::files
