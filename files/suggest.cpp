#include "files/suggest.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "engine/base/edit_distance.h"

namespace voltwright::files {
namespace {

/// Lower-case ASCII without the marks that join words.
std::string bare(std::string_view word) {
  std::string out;
  for (const char c : word) {
    if (c == '-' || c == '_' || c == ' ') continue;
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

}  // namespace

std::vector<std::string> near_words(std::string_view word, const std::vector<std::string>& known,
                                    std::size_t most) {
  const std::string wanted = bare(word.substr(0, 200));
  const int allowed = std::max(1, static_cast<int>(wanted.size()) / 3);
  std::vector<std::pair<int, std::string>> near;
  if (wanted.size() < 2) return {};
  for (const std::string& candidate : known) {
    const std::string other = bare(candidate);
    int distance = base::edit_distance(wanted, other);
    // A word cut short or written out is as near as one letter.
    const bool one_begins_other =
        wanted.size() >= 3 && other.size() >= 3 && (other.starts_with(wanted) || wanted.starts_with(other));
    if (one_begins_other) distance = std::min(distance, 1);
    if (distance <= allowed && distance < static_cast<int>(other.size()))
      near.emplace_back(distance, candidate);
  }
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> words;
  for (const auto& [distance, candidate] : near) {
    if (words.size() < most) words.push_back(candidate);
  }
  return words;
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& known) {
  const std::vector<std::string> near = near_words(word, known, 1);
  return near.empty() ? std::string() : near.front();
}

}  // namespace voltwright::files
