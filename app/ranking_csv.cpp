#include "app/ranking_csv.h"

#include <fmt/format.h>

#include <iterator>

#include "app/csv_text.h"

namespace voltwright::app {

std::string ranking_csv(const advise::Recommendation& answer) {
  std::string text =
      "bank,name,chemistry,verdict,seasons_short,seasons,chance_low_95,chance_high_95,capacity_Ah,energy_Wh,"
      "mass_kg,"
      "volume_L,price,price_currency,life_years,life_min_years,life_max_years,lowest_state_of_charge,fitted_"
      "now,reason\n";
  for (const advise::Ranked& r : answer.ranking) {
    const advise::Candidate& c = r.trial.candidate;
    const advise::Chance chance = r.trial.chance();
    const units::Ranged life = r.trial.life_years();
    fmt::format_to(
        std::back_inserter(text),
        "{},{},{},{},{},{},{:.5f},{:.5f},{:.1f},{:.0f},{:.1f},{:.1f},{:.0f},{},{:.1f},{:.1f},{:.1f},{"
        ":.4f},{},{}\n",
        c.id(), in_quotes(c.name()), c.chemistry->id, advise::name_of(r.holding), chance.events,
        chance.seasons, chance.low, chance.high, c.figures.capacity_Ah, c.figures.nominal_Wh,
        c.figures.mass_kg.typical, c.figures.volume_L.typical, r.price.amount.typical, r.price.currency,
        life.typical, life.min, life.max, r.trial.deepest_charge, c.fitted_now ? "yes" : "no",
        in_quotes(r.reason));
  }
  return text;
}

}  // namespace voltwright::app
