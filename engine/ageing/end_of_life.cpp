#include "engine/ageing/end_of_life.h"

#include <cstddef>

namespace voltwright::ageing {

namespace {

/// Index of the first point of the run that lasts to the end and in which no point is `good`; the size if
/// there is none.
template <class Good>
std::size_t start_of_last_run(std::span<const LifeMoment> life, Good&& good) {
  std::size_t from = life.size();
  while (from > 0 && !good(life[from - 1])) --from;
  return from;
}

bool lasts(std::span<const LifeMoment> life, std::size_t from, double sustain_years) {
  return from < life.size() && life.back().years - life[from].years >= sustain_years;
}

}  // namespace

std::optional<double> crossed_for_good(std::span<const LifeMoment> life, double limit, double sustain_years) {
  const std::size_t from =
      start_of_last_run(life, [limit](const LifeMoment& p) { return p.capacity >= limit; });
  if (!lasts(life, from, sustain_years)) return std::nullopt;
  if (from == 0) return life.front().years;
  const LifeMoment& above = life[from - 1];
  const LifeMoment& below = life[from];
  return above.years +
         (below.years - above.years) * (above.capacity - limit) / (above.capacity - below.capacity);
}

std::optional<double> not_carried_from(std::span<const LifeMoment> life, double sustain_years) {
  const std::size_t from = start_of_last_run(life, [](const LifeMoment& p) { return p.carried; });
  if (!lasts(life, from, sustain_years)) return std::nullopt;
  return life[from].years;
}

LifeEnds life_ends(std::span<const LifeMoment> life, double sustain_years) {
  constexpr double kEnd = 0.8;
  constexpr double kLateEnd = 0.7;
  return {crossed_for_good(life, kEnd, sustain_years), crossed_for_good(life, kLateEnd, sustain_years),
          not_carried_from(life, sustain_years)};
}

}  // namespace voltwright::ageing
