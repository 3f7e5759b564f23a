#include <algorithm>
#include <iterator>

#include "engine/journey/leg.h"

namespace voltwright::journey {

int CivilClock::offset_s(std::int64_t utc_s) const {
  if (changes_.empty()) return 0;
  const auto after = std::upper_bound(changes_.begin(), changes_.end(), utc_s,
                                      [](std::int64_t t, const OffsetChange& c) { return t < c.utc_s; });
  return after == changes_.begin() ? changes_.front().offset_s : std::prev(after)->offset_s;
}

}  // namespace voltwright::journey
