#include "files/report/minute_means.h"

#include <algorithm>

namespace voltwright::files::report {

std::vector<Strip> strips_of(std::size_t from, std::size_t to, std::size_t count,
                             const std::function<double(std::size_t)>& value) {
  std::vector<Strip> strips;
  if (to <= from || count == 0) return strips;
  const std::size_t total = to - from;
  const std::size_t n = std::min(count, total);
  strips.reserve(n);
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t begin = from + total * i / n;
    const std::size_t end = from + total * (i + 1) / n;
    Strip s{value(begin), value(begin), 0.0, true};
    std::size_t at_low = begin, at_high = begin;
    for (std::size_t m = begin; m < end; ++m) {
      const double v = value(m);
      s.mean += v / static_cast<double>(end - begin);
      if (v < s.low) s.low = v, at_low = m;
      if (v > s.high) s.high = v, at_high = m;
    }
    s.low_first = at_low < at_high;
    strips.push_back(s);
  }
  return strips;
}

}  // namespace voltwright::files::report
