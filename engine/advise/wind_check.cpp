#include "engine/advise/wind_check.h"

#include <algorithm>
#include <set>
#include <string>

#include "engine/advise/wording.h"

namespace voltwright::advise {

base::Problems wind_problems(const Plan& plan, std::span<const season::LegSky> skies) {
  base::Problems problems;
  if (!plan.wind || plan.wind->mean_m_s) return problems;
  std::set<std::string> named;
  for (std::size_t k = 0; k < std::min(plan.legs.size(), skies.size()); ++k) {
    if (skies[k].typical_year || skies[k].climate.wind_known) continue;
    const journey::Place& place = plan.legs[k].place;
    const std::string where = place.name.empty()
                                  ? figure(place.site.latitude_deg) + ", " + figure(place.site.longitude_deg)
                                  : place.name;
    if (!named.insert(where).second) continue;
    base::Problem problem;
    problem.field = "wind.mean";
    problem.what = "No mean wind is known for " + where + ": on land the climate table has none.";
    problem.remedy = "Give mean = \"5 m/s\" or twelve monthly means in [wind], or a weather file to the leg.";
    problems.push_back(std::move(problem));
  }
  return problems;
}

}  // namespace voltwright::advise
