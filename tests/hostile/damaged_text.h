#pragma once
// Texts damaged at random, for readers that must answer with a value or with problems.
#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "engine/base/random.h"

namespace voltwright::hostile {

struct Damage {
  std::uint64_t seed = 0;
  double most_hits = 1.0;  // places that are hit: 1 to this
  const char* inserted = "";
};

/// A few places of the text overwritten, cut out, doubled, or with a text put in. The same for a seed and
/// number.
inline std::string damaged(std::string text, std::uint64_t number, const Damage& damage) {
  base::RandomStream random(damage.seed, number);
  const int hits = 1 + static_cast<int>(random.uniform() * damage.most_hits);
  for (int i = 0; i < hits && !text.empty(); ++i) {
    const auto at = static_cast<std::size_t>(random.uniform() * static_cast<double>(text.size()));
    const auto length = std::min(text.size() - at, static_cast<std::size_t>(random.uniform() * 12.0) + 1);
    switch (static_cast<int>(random.uniform() * 4.0)) {
      case 0:
        text[at] = static_cast<char>(random.next_bits() & 0xffU);
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.insert(at, text.substr(at, length));
        break;
      default:
        text.insert(at, damage.inserted);
        break;
    }
  }
  return text;
}

/// One to twelve places overwritten, cut out, or with bytes of `bites` or of the text's own put in.
inline void bite(std::string& text, std::string_view bites, base::RandomStream& random) {
  const std::size_t edits = 1 + random.next_bits() % 12;
  for (std::size_t e = 0; e < edits && !text.empty(); ++e) {
    const std::size_t at = random.next_bits() % text.size();
    const std::size_t length = random.next_bits() % 40;
    switch (random.next_bits() % 4) {
      case 0:
        text[at] = bites[random.next_bits() % bites.size()];
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.insert(at, text.substr(text.size() / 2, length));
        break;
      default:
        text.insert(at, length, bites[random.next_bits() % bites.size()]);
        break;
    }
  }
}

}  // namespace voltwright::hostile
