#include "engine/advise/candidate.h"

#include <algorithm>
#include <cmath>

namespace voltwright::advise {

namespace {

bool listed(const std::vector<std::string>& list, const std::string& id) {
  return list.empty() || std::find(list.begin(), list.end(), id) != list.end();
}

const cell::Chemistry* chemistry_of(std::span<const cell::Chemistry> chemistries, const std::string& id) {
  const auto found = std::find_if(chemistries.begin(), chemistries.end(),
                                  [&](const cell::Chemistry& c) { return c.id == id; });
  return found == chemistries.end() ? nullptr : &*found;
}

Candidate make(const bank::Battery& battery, const cell::Chemistry& chemistry, const bank::Layout& layout) {
  return {&battery, &chemistry, layout, bank::bank_figures(battery, layout), false};
}

}  // namespace

std::string Candidate::id() const {
  return battery->id + ":" + std::to_string(layout.in_series) + "s" + std::to_string(layout.in_parallel) +
         "p";
}

std::string Candidate::name() const {
  return count() == 1 ? battery->name : std::to_string(count()) + " \u00D7 " + battery->name;
}

std::vector<Candidate> candidates_of(const Plan& plan, std::span<const cell::Chemistry> chemistries,
                                     std::span<const bank::Battery> batteries) {
  std::vector<Candidate> all;
  const double system_V = units::as_volts(plan.system_voltage);
  for (const bank::Battery& battery : batteries) {
    if (!listed(plan.candidates.batteries, battery.id)) continue;
    if (!listed(plan.candidates.chemistries, battery.chemistry)) continue;
    const cell::Chemistry* chemistry = chemistry_of(chemistries, battery.chemistry);
    if (chemistry == nullptr || !chemistry->simulated) continue;
    const double series = system_V / battery.system_V;
    const int in_series = static_cast<int>(std::lround(series));
    if (in_series < 1 || std::fabs(series - in_series) > 1e-9 || in_series > battery.max_in_series) continue;
    for (int parallel = 1; parallel <= plan.candidates.max_parallel; ++parallel) {
      all.push_back(make(battery, *chemistry, {in_series, parallel, 0.0}));
    }
  }
  return all;
}

Candidate named_candidate(const NamedBank& named, std::span<const cell::Chemistry> chemistries,
                          std::span<const bank::Battery> batteries) {
  for (const bank::Battery& battery : batteries) {
    if (battery.id != named.battery) continue;
    const cell::Chemistry* chemistry = chemistry_of(chemistries, battery.chemistry);
    if (chemistry == nullptr) break;
    return make(battery, *chemistry,
                {named.in_series, named.in_parallel, named.age_fraction, named.weakest_below, named.ahead,
                 named.resistance_factor});
  }
  return {};
}

}  // namespace voltwright::advise
