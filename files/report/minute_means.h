#pragma once
// Minutes gathered into the few hundred strips that a picture can show.
#include <cstddef>
#include <functional>
#include <vector>

namespace voltwright::files::report {

struct Strip {
  double low = 0.0, high = 0.0, mean = 0.0;
  bool low_first = true;  // the lowest minute comes before the highest
};

/// value(minute) over [from, to) in at most `count` strips of equal length.
std::vector<Strip> strips_of(std::size_t from, std::size_t to, std::size_t count,
                             const std::function<double(std::size_t)>& value);

}  // namespace voltwright::files::report
