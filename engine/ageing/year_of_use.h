#pragma once
// A year as ageing sees it: exposures and how often each comes in a year.
#include <optional>
#include <span>
#include <vector>

#include "engine/ageing/law.h"

namespace voltwright::ageing {

inline constexpr double kHoursOfYear = 8766.0;

/// An exposure and how many times a year it comes; a season drawn as one of four comes a quarter of the time.
struct Recurring {
  Exposure exposure;
  double per_year = 1.0;
};

using YearOfUse = std::vector<Recurring>;

/// Ages by so many years, >= 0, of such use.
void age_by_years(const Law& law, Aged& aged, std::span<const Recurring> year, double years);

/// The worst reach of all exposures of the year.
Reach reach_of(const Law& law, std::span<const Recurring> year, const Aged& aged);

/// Years from new until the capacity is down to `share` if every year is like this, without the loss feeding
/// back; none if it is not within `most` years.
std::optional<double> years_until(const Law& law, std::span<const Recurring> year, double share, double most);

/// Equivalent full cycles a year.
double full_cycles_per_year(std::span<const Recurring> year);

}  // namespace voltwright::ageing
