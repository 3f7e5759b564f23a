#pragma once
// The one place where a worked-out life becomes a date that may be told: never finer than a quarter of
// itself.
#include <string>

#include "engine/units/ranged.h"

namespace voltwright::advise {

/// A life may not be told with less doubt than this share to either side.
inline constexpr double kLeastDoubt = 0.25;
/// Lives beyond are told as longer than this [years]: tests are far shorter.
inline constexpr double kLongestTold_years = 25.0;

/// A life as it may be told, in steps that the doubt allows.
struct StatedLife {
  units::Ranged years;       // least <= 0.75 typical, most >= 1.25 typical; at most kLongestTold_years
  bool longer = false;       // the typical life is longer than kLongestTold_years
  bool most_longer = false;  // the longest is
  bool past = false;         // the limit is already crossed
};

/// Widens to kLeastDoubt, then rounds: typical to the nearest step of 1/4, 1/2, 3/4, 1, 1 1/2, 2, 2 1/2, 3
/// ... 10, 12, 15, 20, 25 years, least down, most up.
StatedLife stated(const units::Ranged& years);

/// "about 9 years (6 to 13)", "about 18 months (12 to 24)", "more than 25 years (at least 15)".
std::string life_words(const StatedLife& life);

/// The typical alone, for a table: "9", "1.5", "over 25", "past".
std::string years_words(const StatedLife& life);

/// The spread alone, for a table: "6 to 13", "15 to over 25"; empty where the limit is past.
std::string spread_words(const StatedLife& life);

}  // namespace voltwright::advise
