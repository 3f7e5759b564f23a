#include "engine/ageing/life_map.h"

#include <algorithm>

#include "engine/ageing/changed_use.h"

namespace voltwright::ageing {

namespace {

constexpr double kEnd = 0.8;
constexpr double kHoursOfDay = 24.0;
constexpr double kDaysOfYear = kHoursOfYear / kHoursOfDay;

bool has_swings(const YearOfUse& year) {
  return std::any_of(year.begin(), year.end(),
                     [](const Recurring& part) { return !part.exposure.swings.empty(); });
}

bool knows(const Opinion& opinion, const YearOfUse& year) {
  return opinion.knows_rest && (opinion.knows_swings || !has_swings(year));
}

std::vector<const Opinion*> asked(const std::vector<Opinion>& opinions, const YearOfUse& year) {
  std::vector<const Opinion*> all;
  for (const Opinion& opinion : opinions) {
    if (knows(opinion, year) && reach_of(*opinion.law, year, {}) != Reach::kOutside) all.push_back(&opinion);
  }
  if (!all.empty()) return all;
  for (const Opinion& opinion : opinions) {
    if (knows(opinion, year)) all.push_back(&opinion);
  }
  if (all.empty()) all.push_back(&opinions.front());
  return all;
}

Mapped mapped(const std::vector<Opinion>& opinions, const Duty& duty) {
  return {duty, said_life(opinions, year_of(duty), kEnd)};
}

}  // namespace

YearOfUse year_of(const Duty& duty) {
  // Three stretches stand for the way between the two ends.
  constexpr double kThird = kHoursOfDay / 3.0;
  Exposure day;
  day.hours = kHoursOfDay;
  const double t_C = duty.temperature_C;
  if (duty.depth <= 0.0) {
    day.dwell = {{t_C, duty.top_soc, kHoursOfDay}};
  } else {
    const double middle = duty.top_soc - 0.5 * duty.depth;
    day.dwell = {
        {t_C, duty.top_soc, kThird}, {t_C, middle, kThird}, {t_C, duty.top_soc - duty.depth, kThird}};
    day.swings = {{duty.depth, middle, 1.0, duty.rate_per_h, duty.rate_per_h, t_C}};
  }
  return {{day, kDaysOfYear}};
}

SaidLife said_life(const std::vector<Opinion>& opinions, const YearOfUse& year, double share) {
  SaidLife said;
  bool first = true;
  for (const Opinion* opinion : asked(opinions, year)) {
    const auto found = years_until(*opinion->law, year, share, kLongestLookedFor_years);
    const double years = found.value_or(kLongestLookedFor_years);
    if (first) {
      said = {opinion->id, {years, years, years}, Reach::kInside};
      Aged aged;
      age_by_years(*opinion->law, aged, year, years);
      said.reach = reach_of(*opinion->law, year, aged);
      first = false;
    }
    said.years.min = std::min(said.years.min, years);
    said.years.max = std::max(said.years.max, years);
  }
  return said;
}

LifeMap life_map(const std::vector<Opinion>& opinions, bool must_be_filled) {
  LifeMap map;
  if (opinions.empty()) return map;
  for (const double depth : {0.2, 0.5, 0.8, 1.0}) {
    for (const double temperature_C : {5.0, 15.0, 25.0, 35.0, 45.0})
      map.by_depth.push_back(mapped(opinions, {temperature_C, depth}));
  }
  if (must_be_filled) return map;
  for (const double ceiling : {1.0, 0.9, 0.8, 0.7})
    map.by_ceiling.push_back(mapped(opinions, {25.0, 0.5, ceiling}));
  for (const double temperature_C : {25.0, 35.0}) {
    for (const double soc : {1.0, 0.9, 0.8, 0.5, 0.2})
      map.by_storage.push_back(mapped(opinions, {temperature_C, 0.0, soc}));
  }
  return map;
}

std::vector<Gain> what_helps(const Law& law, const YearOfUse& year, const std::vector<std::size_t>& rest,
                             const Habits& habits) {
  constexpr double kCooler_K = 10.0;
  constexpr double kTwice = 2.0;
  constexpr double kCeiling = 0.9;
  constexpr double kHalf = 0.5;
  constexpr double kUsualDoubling_K = 10.0;  // nothing of it is used where there are no plates
  const bool is_lead = habits.plates_doubling_K > 0.0;
  const double doubling_K = is_lead ? habits.plates_doubling_K : kUsualDoubling_K;
  const double before =
      years_until(law, year, kEnd, kLongestLookedFor_years).value_or(kLongestLookedFor_years);
  std::vector<Gain> gains;
  const auto ask = [&](const char* habit, const char* note, auto&& change) {
    YearOfUse changed = year;
    for (std::size_t i = 0; i < changed.size(); ++i) change(i, changed[i].exposure);
    const double after =
        years_until(law, changed, kEnd, kLongestLookedFor_years).value_or(kLongestLookedFor_years);
    gains.push_back({habit, after / before, before, after, note});
  };
  ask("cooler by 10 K", is_lead ? "" : "Never charge below what the maker permits.",
      [&](std::size_t, Exposure& e) { e = cooler(std::move(e), kCooler_K, doubling_K); });
  ask("half as deep, from twice the bank",
      is_lead ? "Twice the price and the mass."
              : "Twice the price and the mass; it stands fuller then, which may cost more than depth saves.",
      [&](std::size_t, Exposure& e) { e = shared_by(std::move(e), kTwice); });
  if (!is_lead) {
    ask("charging stops at 90 %", "The bank holds a tenth less for a bad day.",
        [&](std::size_t, Exposure& e) { e = stopping_at(std::move(e), kCeiling); });
    if (!rest.empty()) {
      ask("stored at half charge", "Between the seasons; check the charge every few months.",
          [&](std::size_t i, Exposure& e) {
            if (std::find(rest.begin(), rest.end(), i) != rest.end()) e = stored_at(std::move(e), kHalf);
          });
    }
  }
  std::stable_sort(gains.begin(), gains.end(),
                   [](const Gain& a, const Gain& b) { return a.times > b.times; });
  return gains;
}

}  // namespace voltwright::ageing
