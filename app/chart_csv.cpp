#include <fmt/format.h>

#include <iterator>

#include "app/chart.h"
#include "app/csv_text.h"

namespace voltwright::app {

namespace {

const char* word_of(chart::Origin origin) {
  switch (origin) {
    case chart::Origin::kSource:
      return "source";
    case chart::Origin::kDerived:
      return "derived";
    case chart::Origin::kAssumption:
      return "assumption";
  }
  return "";
}

void add_figure(std::string& text, const chart::Kind& kind, const chart::Fact& fact) {
  const bool aged =
      fact.quantity == chart::Quantity::kCycles || fact.quantity == chart::Quantity::kCalendarLife;
  const std::string temperature = aged ? fmt::format("{:g}", fact.temperature_C) : "";
  const std::string depth = fact.depth > 0.0 ? fmt::format("{:g}", fact.depth) : "";
  const std::string end = fact.end_of_life_share > 0.0 ? fmt::format("{:g}", fact.end_of_life_share) : "";
  fmt::format_to(std::back_inserter(text), "{},{},{},{},{},{:g},{:g},{:g},{},{},{},{},{},{},{},{}\n", kind.id,
                 in_quotes(kind.name), chart::name_of(fact.quantity), chart::name_of(fact.level), fact.year,
                 fact.value.min, fact.value.typical, fact.value.max, chart::unit_of(fact.quantity), depth,
                 temperature, end, in_quotes(fact.conditions), word_of(fact.origin),
                 fact.from_memory ? "yes" : "no", in_quotes(fact.from));
}

}  // namespace

std::string chart_csv(const ChartResponse& response) {
  std::string text =
      "chemistry,name,quantity,level,year,min,typical,max,unit,depth,temperature_C,end_of_life_share,"
      "conditions,"
      "origin,from_memory,from\n";
  for (const chart::Row& row : response.chart.rows) {
    for (const chart::Quantity quantity : chart::kQuantities) {
      bool known = false;
      for (const chart::Level level : chart::kLevels) {
        const chart::Fact* fact = row.figure(quantity, level);
        if (fact == nullptr) continue;
        known = true;
        add_figure(text, *row.kind, *fact);
      }
      if (known || quantity == chart::Quantity::kEnergyTarget) continue;
      fmt::format_to(std::back_inserter(text), "{},{},{},,,,,,{},,,,,missing,,\n", row.kind->id,
                     in_quotes(row.kind->name), chart::name_of(quantity), chart::unit_of(quantity));
    }
  }
  return text;
}

}  // namespace voltwright::app
