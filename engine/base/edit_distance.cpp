#include "engine/base/edit_distance.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace voltwright::base {

int edit_distance(std::string_view a, std::string_view b) {
  constexpr std::size_t kLongest = 64;
  a = a.substr(0, kLongest);
  b = b.substr(0, kLongest);
  using Row = std::array<int, kLongest + 1>;
  Row before_last{};
  Row last{};
  Row row{};
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last = last;
    last = row;
  }
  return last[b.size()];
}

}  // namespace voltwright::base
