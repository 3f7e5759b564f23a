#include "files/report/chemistry_words.h"

#include "engine/advise/wording.h"
#include "files/report/chemistry_marks.h"
#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

using advise::figure;
using chart::Fact;
using chart::Quantity;

constexpr double kPercent = 100.0;

bool is_share(Quantity quantity) {
  return quantity == Quantity::kEfficiency || quantity == Quantity::kSelfDischarge;
}

std::string unit_words(Quantity quantity) {
  if (quantity == Quantity::kEfficiency) return "%";
  if (quantity == Quantity::kSelfDischarge) return "% a month";
  if (quantity == Quantity::kCycles) return "cycles";
  const std::string unit(chart::unit_of(quantity));
  if (unit == "1/h") return "C";
  return unit == "degC" ? "°C" : unit;
}

/// A C-rate is written without a space.
std::string measured(double value, Quantity quantity) {
  const std::string unit = unit_words(quantity);
  const double shown = is_share(quantity) ? kPercent * value : value;
  return unit == "C" ? figure(shown) + unit : figure(shown, unit);
}

std::string shown(double value, Quantity quantity) {
  return figure(is_share(quantity) ? kPercent * value : value);
}

}  // namespace

std::string fact_markup(const Fact& fact, NumberedSources& sources) {
  const units::Ranged& v = fact.value;
  std::string out = chart::is_soft(fact) ? "<span class=\"nb soft pencil\">" : "<span class=\"nb\">";
  out += escaped(measured(v.typical, fact.quantity)) + "</span>";
  std::string below;
  if (v.min != v.max) below = shown(v.min, fact.quantity) + " to " + shown(v.max, fact.quantity) + "; ";
  if (fact.quantity == Quantity::kCycles) {
    below += "at " + advise::percent(fact.depth) + " depth, " + figure(fact.temperature_C, "°C");
    if (fact.end_of_life_share > 0.0) below += ", to " + advise::percent(fact.end_of_life_share);
    below += "; ";
  }
  if (!fact.conditions.empty()) below += cited(fact.conditions) + "; ";
  below += std::to_string(fact.year);
  return out + "<small>" + escaped(below) + sources.mark(fact.from) + "</small>";
}

std::string kind_markup(const chart::Kind& kind) {
  constexpr double kBox = 20.0;
  Drawing d(kBox, kBox, "kind", kind.plain_name);
  draw_chemistry_mark(d, kind.id, 0.5 * kBox, 0.5 * kBox, 7.5, "mark");
  return d.finish() + escaped(kind.short_name) + "<small>" + escaped(kind.plain_name) + "</small>";
}

std::string quantity_words(const Fact& fact) {
  std::string words(chart::name_of(fact.quantity));
  const bool apart = fact.quantity == Quantity::kEnergyPerMass ||
                     fact.quantity == Quantity::kEnergyPerVolume || fact.quantity == Quantity::kPrice;
  return apart ? words + " of the " + std::string(chart::name_of(fact.level)) : words;
}

}  // namespace voltwright::files::report
