#include <fmt/format.h>

#include <iterator>

#include "app/csv_text.h"
#include "app/swap.h"

namespace voltwright::app {

namespace {

void add_row(std::string& text, const char* role, const std::string& name, const advise::Compared& c,
             const std::vector<advise::Change>& changes) {
  std::string must;
  for (const advise::Change& change : changes) {
    if (change.urgency != advise::Urgency::kMust) continue;
    if (!must.empty()) must += "; ";
    must += advise::name_of(change.topic);
  }
  fmt::format_to(
      std::back_inserter(text),
      "{},{},{},{},{},{:.4f},{:.2f},{:.1f},{:.0f},{:.2f},{:.1f},{:.3f},{:.1f},{:.1f},{:.1f},{:.1f},"
      "{:.1f},{:.1f},{:.0f},{:.0f},{:.0f},{:.0f},{:.0f},{:.0f},{:.1f},{:.0f},{:.0f},{:.1f},{:.0f},{}\n",
      role, in_quotes(name), c.bank.chemistry->id, c.bank.layout.in_series, c.bank.layout.in_parallel,
      c.share, c.figures.nominal_V, c.figures.capacity_Ah, c.figures.nominal_Wh, c.depth, c.run.bank_Wh,
      c.run.hours, c.figures.mass_kg.min, c.figures.mass_kg.typical, c.figures.mass_kg.max,
      c.figures.volume_L.min, c.figures.volume_L.typical, c.figures.volume_L.max, c.figures.price.min,
      c.figures.price.typical, c.figures.price.max, c.life_Wh.min, c.life_Wh.typical, c.life_Wh.max,
      c.bank.chemistry->life.calendar_years.typical, c.figures.continuous_A, c.figures.peak_A,
      c.figures.charge_A, c.short_circuit_A, in_quotes(must));
}

}  // namespace

std::string to_csv(const SwapResponse& r) {
  std::string text =
      "role,name,chemistry,in_series,in_parallel,share_of_target,nominal_V,capacity_Ah,nominal_Wh,depth,"
      "usable_Wh,"
      "hours,mass_min_kg,mass_kg,mass_max_kg,volume_min_L,volume_L,volume_max_L,price_min_USD,price_USD,"
      "price_max_USD,life_min_Wh,life_Wh,life_max_Wh,calendar_years,continuous_A,peak_A,charge_A,"
      "short_circuit_A,must_change\n";
  add_row(text, "incumbent", r.on_hand.name, r.incumbent, {});
  for (const SwapRow& row : r.rows) add_row(text, "equivalent", row.name, row.compared, row.changes);
  return text;
}

}  // namespace voltwright::app
