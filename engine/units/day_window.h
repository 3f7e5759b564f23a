#pragma once

namespace voltwright::units {

/// A part of each day in local civil time, seconds after midnight. `to_s` below `from_s` runs over midnight;
/// `to_s` equal to `from_s` means the whole day.
struct DayWindow {
  int from_s = 0;
  int to_s = 0;

  constexpr bool contains(int second_of_day) const {
    if (from_s == to_s) return true;
    if (from_s < to_s) return second_of_day >= from_s && second_of_day < to_s;
    return second_of_day >= from_s || second_of_day < to_s;
  }
};

}  // namespace voltwright::units
