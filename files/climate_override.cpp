#include "files/climate_override.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "engine/units/month_names.h"

namespace voltwright::files {

namespace {

using Months = sky::ClimateOverride::Months;

// What is taken where neither the tables nor the user say anything; each is an assumption.
constexpr double kDailyRange_K = 10.0;
constexpr double kWind_m_s = 2.5;
constexpr double kTurbidity = 3.5;

bool complete(const Months& months) {
  return std::all_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
}

/// "Jan to Mar, Oct"; empty if no month is given.
std::string months_words(const Months& months) {
  if (complete(months)) return "all months";
  std::string words;
  for (std::size_t m = 0; m < months.size(); ++m) {
    if (!months[m]) continue;
    std::size_t last = m;
    while (last + 1 < months.size() && months[last + 1]) ++last;
    words += words.empty() ? "" : ", ";
    words += units::kShortMonthNames[m];
    if (last > m) words += fmt::format(" to {}", units::kShortMonthNames[last]);
    m = last;
  }
  return words;
}

void put(const Months& given, std::array<double, 12>& months) {
  for (std::size_t m = 0; m < given.size(); ++m) months[m] = given[m].value_or(months[m]);
}

/// Where no table reaches: what the user does not give is assumed.
sky::MonthlyClimate assumed() {
  sky::MonthlyClimate climate;
  climate.daily_range_K.fill(kDailyRange_K);
  climate.linke_turbidity.fill(kTurbidity);
  climate.wind_m_s.fill(kWind_m_s);
  climate.origin = fmt::format(
      "No climate station is near. A daily range of {} K, wind of {} m/s and turbidity {} are assumptions.",
      kDailyRange_K, kWind_m_s, kTurbidity);
  return climate;
}

}  // namespace

std::string override_words(const sky::ClimateOverride& given) {
  std::string words;
  const auto add = [&](const char* what, const Months& months) {
    const std::string which = months_words(months);
    if (!which.empty()) words += fmt::format("{}{} of {}", words.empty() ? "" : "; ", what, which);
  };
  add("clearness", given.clearness);
  add("mean temperature", given.temperature_C);
  add("daily range", given.daily_range_K);
  add("wind", given.wind_m_s);
  return words;
}

base::Result<sky::MonthlyClimate> climate_of(const ClimateTable& table, const sky::Site& site,
                                             const sky::ClimateOverride& given,
                                             std::vector<ClimateSource>* sources) {
  base::Result<sky::MonthlyClimate> known = table.at(site, sources);
  if (!known && !(complete(given.clearness) && complete(given.temperature_C))) return known.problems();
  sky::MonthlyClimate climate = known ? std::move(known).value() : assumed();
  const std::string words = override_words(given);
  if (words.empty()) return climate;
  put(given.clearness, climate.clearness);
  put(given.temperature_C, climate.temperature_C);
  put(given.daily_range_K, climate.daily_range_K);
  put(given.wind_m_s, climate.wind_m_s);
  if (complete(given.wind_m_s)) climate.wind_known = true;
  climate.origin += fmt::format(" Override by the user, in place of the above: {}.", words);
  return climate;
}

}  // namespace voltwright::files
