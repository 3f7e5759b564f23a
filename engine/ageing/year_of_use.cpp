#include "engine/ageing/year_of_use.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

void age_by_years(const Law& law, Aged& aged, std::span<const Recurring> year, double years) {
  if (years <= 0.0) return;
  for (const Recurring& part : year) law.age(aged, part.exposure, part.per_year * years);
}

Reach reach_of(const Law& law, std::span<const Recurring> year, const Aged& aged) {
  Reach worst = Reach::kInside;
  for (const Recurring& part : year) {
    if (part.per_year > 0.0) worst = std::max(worst, law.reach(part.exposure, aged));
  }
  return worst;
}

std::optional<double> years_until(const Law& law, std::span<const Recurring> year, double share,
                                  double most) {
  const auto left_after = [&](double years) {
    Aged aged;
    age_by_years(law, aged, year, years);
    return aged.capacity();
  };
  if (left_after(most) > share) return std::nullopt;
  double low = 0.0;
  double high = most;
  // To a thousand-millionth of the longest time: far finer than any law.
  constexpr int kHalvings = 30;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (left_after(middle) > share ? low : high) = middle;
  }
  return high;
}

double full_cycles_per_year(std::span<const Recurring> year) {
  double sum = 0.0;
  for (const Recurring& part : year) sum += full_cycles(part.exposure) * part.per_year;
  return sum;
}

}  // namespace voltwright::ageing
