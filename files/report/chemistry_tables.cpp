#include <algorithm>
#include <array>
#include <functional>

#include "engine/advise/wording.h"
#include "files/report/chemistry_page.h"
#include "files/report/chemistry_words.h"
#include "files/report/markup.h"
#include "files/report/page.h"

namespace voltwright::files::report {

namespace {

using advise::figure;
using chart::Fact;
using chart::Level;
using chart::Quantity;
using chart::Row;

/// One column of a table: its head, and the markup of its cell in a row.
struct Column {
  std::string head;
  std::function<std::string(const Row&)> cell;
};

std::string tagged(const std::string& head, const std::string& inside) {
  return "<td data-l=\"" + escaped(head) + "\">" + inside + "</td>";
}

std::string none() { return "<em class=\"pencil\">no figure</em>"; }

Column fact_column(const std::string& head, const std::function<const Fact*(const Row&)>& of,
                   NumberedSources& sources) {
  return {head, [of, &sources](const Row& row) {
            const Fact* fact = of(row);
            return fact == nullptr ? none() : fact_markup(*fact, sources);
          }};
}

/// A span that the chart works out from its figures, not a fact of its own.
std::string worked_span(const std::optional<units::Ranged>& span, const std::string& unit) {
  if (!span) return none();
  std::string text = "<span class=\"nb\">" + escaped(figure(span->typical, unit)) + "</span>";
  if (span->min != span->max)
    text += "<small>" + escaped(figure(span->min) + " to " + figure(span->max)) + ", worked out</small>";
  return text;
}

std::string table_of(const chart::Chart& chart, const std::string& title, const std::string& how,
                     const std::vector<Column>& columns) {
  std::string out = "<table class=\"figures\"><thead><tr><th>Chemistry</th>";
  for (const Column& column : columns) out += "<th>" + escaped(column.head) + "</th>";
  out += "</tr></thead><tbody>";
  for (const Row& row : chart.rows) {
    out += "<tr><td>" + kind_markup(*row.kind) + "</td>";
    for (const Column& column : columns) out += tagged(column.head, column.cell(row));
    out += "</tr>";
  }
  return section(title, how, out + "</tbody></table>");
}

Column level_column(const std::string& head, Quantity quantity, Level level, NumberedSources& sources) {
  return fact_column(
      head, [=](const Row& row) { return row.figure(quantity, level); }, sources);
}

Column cell_column(const std::string& head, Quantity quantity, NumberedSources& sources) {
  return fact_column(
      head, [=](const Row& row) { return row.cell_or_block(quantity); }, sources);
}

}  // namespace

std::string chemistry_tables(const chart::Chart& chart, NumberedSources& sources) {
  std::string out = table_of(
      chart, "Energy",
      "Typical figure, least to most found, the year of the source, and the source by number. Italic: "
      "assumed or from memory. Lead-acid is sold as blocks, so its figures stand under battery.",
      {level_column("Cell, by mass", Quantity::kEnergyPerMass, Level::kCell, sources),
       level_column("Battery, by mass", Quantity::kEnergyPerMass, Level::kBattery, sources),
       level_column("Cell, by volume", Quantity::kEnergyPerVolume, Level::kCell, sources),
       level_column("Battery, by volume", Quantity::kEnergyPerVolume, Level::kBattery, sources)});
  out += table_of(
      chart, "Power and charging",
      "Currents as multiples of the capacity: 1C empties or fills it in an hour. The time to charge is "
      "capacity over current; the last stage comes on top.",
      {cell_column("Discharge for long", Quantity::kContinuousRate, sources),
       cell_column("Peak", Quantity::kPeakRate, sources),
       cell_column("Charge", Quantity::kChargeRate, sources),
       {"Time to charge", [](const Row& row) { return worked_span(row.charge_h, "h"); }},
       {"Power by mass", [](const Row& row) { return worked_span(row.power_W_per_kg, "W/kg"); }}});
  out += table_of(
      chart, "Life, losses and price",
      "Cycles mean little without depth, temperature and what counts as the end: all three stand there. "
      "Makers' prices are averages of large contracts, shop prices are what one battery costs: they are "
      "not compared.",
      {cell_column("Cycles", Quantity::kCycles, sources),
       cell_column("On the shelf at 25 °C", Quantity::kCalendarLife, sources),
       cell_column("Energy back", Quantity::kEfficiency, sources),
       cell_column("Self-discharge", Quantity::kSelfDischarge, sources),
       level_column("Makers' pack", Quantity::kPrice, Level::kPack, sources),
       level_column("Shop battery", Quantity::kPrice, Level::kBattery, sources)});
  out += table_of(chart, "Temperature of the cell", "Outside these it is harmed, or its protection opens.",
                  {cell_column("Charge from", Quantity::kChargeFrom, sources),
                   cell_column("Charge up to", Quantity::kChargeTo, sources),
                   cell_column("Discharge from", Quantity::kDischargeFrom, sources),
                   cell_column("Discharge up to", Quantity::kDischargeTo, sources)});
  return out;
}

std::string chemistry_safety(const chart::Chart& chart, NumberedSources& sources) {
  std::string rows;
  std::vector<std::string> notes;
  for (const Row& row : chart.rows) {
    const chart::Safety& said = row.kind->safety;
    rows += "<tr><td>" + kind_markup(*row.kind) + "</td>";
    if (!row.safety_known) {
      rows += tagged("Failure", "<em class=\"pencil\">no statement of this year or before</em>") +
              "<td></td><td></td><td></td></tr>";
      continue;
    }
    const Fact* onset = row.figure(Quantity::kOnset, Level::kCell);
    rows += tagged("Severity", escaped(chart::name_of(said.runaway)) + " " + sources.mark(said.from));
    rows += tagged("Onset in a test", onset != nullptr
                                          ? fact_markup(*onset, sources)
                                          : (said.stated.empty() ? none() : escaped(cited(said.stated))));
    rows += tagged("Gas", escaped(cited(said.gas))) +
            tagged("What it looks like", escaped(cited(said.failure))) + "</tr>";
    if (std::find(notes.begin(), notes.end(), cited(said.note)) == notes.end() && !said.note.empty())
      notes.push_back(cited(said.note));
  }
  return section(
      "When it fails",
      "How violently a cell fails when it does fail. The onset is where one cell in one test ran away, "
      "not a limit up to which it is safe.",
      "<table class=\"figures safety\"><thead><tr><th>Chemistry</th><th>Severity</th><th>Onset in a "
      "test</th><th>Gas</th><th>What it looks like</th></tr></thead><tbody>" +
          rows + "</tbody></table>" + list_of(notes, "plain"));
}

std::string chemistry_changes(const chart::Chart& chart, NumberedSources& sources) {
  if (!chart.since) return {};
  const std::string title = "What is another figure than as of " + std::to_string(*chart.since);
  std::string rows;
  std::vector<std::string> fresh;
  const chart::Kind* last = nullptr;
  for (const chart::Change& change : chart.changes) {
    const std::string name = quantity_words(change.now);
    if (!change.before) {
      if (change.kind == last) {
        fresh.back() += ", " + name;
      } else {
        fresh.push_back(change.kind->short_name + ": " + name);
      }
      last = change.kind;
      continue;
    }
    rows += "<tr><td>" + kind_markup(*change.kind) + "</td>" + tagged("Figure", escaped(name));
    rows += tagged("As of " + std::to_string(*chart.since), fact_markup(*change.before, sources));
    rows += tagged("As of " + std::to_string(chart.year), fact_markup(change.now, sources)) + "</tr>";
  }
  std::string body = rows.empty()
                         ? "<p>No figure of the years between is known.</p>"
                         : "<table class=\"figures\"><thead><tr><th>Chemistry</th><th>Figure</th><th>As of " +
                               std::to_string(*chart.since) + "</th><th>As of " + std::to_string(chart.year) +
                               "</th></tr></thead><tbody>" + rows + "</tbody></table>";
  if (!fresh.empty()) {
    body += "<h3>No figure of " + std::to_string(*chart.since) + " or before was found</h3>" +
            list_of(fresh, "plain");
  }
  return section(
      title,
      "A newer source may have looked at other cells under other conditions: read depth and conditions "
      "before you call it progress.",
      body);
}

}  // namespace voltwright::files::report
