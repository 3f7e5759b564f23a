#include <algorithm>
#include <cmath>
#include <functional>

#include "engine/advise/cost_words.h"
#include "engine/advise/wording.h"
#include "files/report/charts.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

using advise::BankCost;
using advise::figure;

/// The shown bank, what is fitted now, and the nearest of another chemistry, as far as their cost is known.
std::vector<const BankCost*> columns_of(const advise::LifeCost& costs) {
  std::vector<const BankCost*> columns;
  if (costs.banks[costs.shown].known()) columns.push_back(&costs.banks[costs.shown]);
  for (const advise::Against& against : costs.against) columns.push_back(&costs.banks[against.other]);
  return columns;
}

std::string spread_cell(const units::Ranged& range, const std::string& unit) {
  std::string out = "<td class=\"r\">" + value_text(range.typical, unit);
  if (range.min != range.max)
    out += "<small>" + escaped(figure(range.min)) + " to " + escaped(figure(range.max)) + "</small>";
  return out + "</td>";
}

std::string row(const std::string& name, const std::string& about,
                const std::vector<const BankCost*>& columns,
                const std::function<std::string(const BankCost&)>& cell) {
  std::string out = "<tr><td>" + escaped(name) + "<small>" + escaped(about) + "</small></td>";
  for (const BankCost* bank : columns) out += cell(*bank);
  return out + "</tr>";
}

std::string figures(const advise::LifeCost& costs, const std::vector<const BankCost*>& columns) {
  const std::string& currency = costs.terms.currency;
  const std::string per_kWh = currency + "/kWh";
  std::string out = "<table class=\"cost\"><thead><tr><th></th>";
  for (const BankCost* bank : columns) out += "<th class=\"r\">" + escaped(bank->bank.name) + "</th>";
  out += "</tr></thead><tbody>";
  out += row("Price", "of the whole bank", columns,
             [&](const BankCost& b) { return spread_cell(b.bank.price, currency); });
  out += row("Life", "of a new one at this use, to 80\u202F% of its capacity", columns,
             [](const BankCost& b) { return spread_cell(b.bank.life_years, "years"); });
  out += row("Banks bought", "to the horizon", columns, [](const BankCost& b) {
    return "<td class=\"r\">" + std::to_string(b.life_cycle.typical.bought) + "</td>";
  });
  out += row("A usable kWh", "price over usable energy when new", columns,
             [&](const BankCost& b) { return spread_cell(b.life_cycle.per_usable_kWh, per_kWh); });
  out += row("A delivered kWh, likely", "if inputs err independently", columns,
             [&](const BankCost& b) { return spread_cell(b.tornado.likely, per_kWh); });
  out +=
      row("The same, at worst and best", "all inputs but the rate at their dear or cheap ends at once",
          columns, [&](const BankCost& b) { return spread_cell(b.life_cycle.per_delivered_kWh, per_kWh); });
  out += row("All costs", "present value to the horizon", columns,
             [&](const BankCost& b) { return spread_cell(b.life_cycle.present_value, currency); });
  out += row("The same as a yearly sum", "", columns,
             [&](const BankCost& b) { return spread_cell(b.life_cycle.annualised, currency + "/year"); });
  return out + "</tbody></table>";
}

std::string working(const BankCost& bank) {
  std::string out =
      "<table><thead><tr><th>Line</th><th class=\"r\">Value</th><th>How it comes about</th></tr>"
      "</thead><tbody>";
  for (const cost::WorkingLine& line : bank.life_cycle.working) {
    out += "<tr><td>" + escaped(line.name) + "</td><td class=\"r\">" + value_text(line.value, line.unit) +
           "</td><td>" + escaped(line.words) + "</td></tr>";
  }
  return fold("The working, line by line: " + bank.bank.name, out + "</tbody></table>");
}

}  // namespace

std::string cost_part(const ReportInput& input) {
  if (input.costs == nullptr || input.costs->banks.empty()) return {};
  const advise::LifeCost& costs = *input.costs;
  std::string body;
  for (const std::string& sentence : advise::cost_sentences(*input.answer, costs))
    body += "<p class=\"sub strong\">" + escaped(sentence) + "</p>";
  const std::vector<const BankCost*> columns = columns_of(costs);
  if (!columns.empty()) body += figures(costs, columns);
  for (const BankCost* bank : columns) {
    const bool asked = bank == &costs.banks[costs.shown] || bank->bank.fitted_now;
    if (asked) body += tornado_chart(bank->bank.name, bank->tornado, costs.terms.currency);
  }
  for (const BankCost* bank : columns) body += working(*bank);
  body += list_of(costs.notes, "pencil");
  return section("Life and cost",
                 advise::cost_heading(costs.terms) +
                     ". Of the recommended bank, or the nearest if none holds, and of those it is held "
                     "against.",
                 body);
}

}  // namespace voltwright::files::report
