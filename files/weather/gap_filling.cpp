#include "files/weather/gap_filling.h"

#include <algorithm>

namespace voltwright::files {

namespace {

constexpr std::size_t kLongestLine_h = 3;
constexpr std::size_t kDay_h = 24;

using Sparse = std::vector<std::optional<double>>;

/// Value from the same hour of other days, the nearest first; nothing if no day has that hour.
std::optional<double> from_other_days(const Sparse& hours, std::size_t i) {
  const std::size_t n = hours.size();
  for (std::size_t step = kDay_h; step < n; step += kDay_h) {
    const auto& before = hours[(i + n - step) % n];
    const auto& after = hours[(i + step) % n];
    if (before && after) return 0.5 * (*before + *after);
    if (before || after) return before ? before : after;
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::vector<double>> fill_gaps(const Sparse& hours) {
  const std::size_t n = hours.size();
  const auto first = std::find_if(hours.begin(), hours.end(), [](const auto& h) { return h.has_value(); });
  if (first == hours.end()) return std::nullopt;
  std::vector<double> filled(n, 0.0);
  // Starting at a value, every gap has one on each side.
  const auto start = static_cast<std::size_t>(first - hours.begin());
  std::size_t k = 0;
  while (k < n) {
    const std::size_t here = (start + k) % n;
    std::size_t gap = 0;
    while (k + gap + 1 < n && !hours[(here + gap + 1) % n]) ++gap;
    const double from = hours[here].value_or(0.0);  // there is a value here and after the gap
    const double to = hours[(here + gap + 1) % n].value_or(0.0);
    filled[here] = from;
    for (std::size_t g = 1; g <= gap; ++g) {
      const std::size_t i = (here + g) % n;
      const double line = from + (to - from) * static_cast<double>(g) / static_cast<double>(gap + 1);
      filled[i] = gap <= kLongestLine_h ? line : from_other_days(hours, i).value_or(line);
    }
    k += gap + 1;
  }
  return filled;
}

}  // namespace voltwright::files
