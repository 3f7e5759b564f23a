#include "cli/chart_text.h"

#include <algorithm>
#include <utility>

#include "cli/table.h"
#include "engine/advise/wording.h"

namespace voltwright::cli {

namespace {

using advise::figure;
using chart::Fact;
using chart::Level;
using chart::Quantity;
using Rows = std::vector<std::vector<std::string>>;

constexpr double kPercent = 100.0;
constexpr const char* kNone = "-";

std::string spread(const units::Ranged& r, double factor) {
  if (r.min == r.max) return figure(factor * r.typical);
  return figure(factor * r.typical) + " (" + figure(factor * r.min) + " to " + figure(factor * r.max) + ")";
}

std::string year_of(const Fact& fact) {
  return " '" + std::to_string(fact.year) + (chart::is_soft(fact) ? " ~" : "");
}

std::string text_of(const Fact* fact, double factor = 1.0) {
  return fact == nullptr ? kNone : spread(fact->value, factor) + year_of(*fact);
}

/// A table with the chemistries as rows.
template <class Cells>
std::string block(const chart::Chart& chart, const std::string& title, const std::vector<std::string>& heads,
                  Cells cells) {
  std::vector<Column> columns = {{"", Align::kLeft}};
  for (const std::string& head : heads) columns.push_back({head, Align::kLeft});
  Rows rows;
  for (const chart::Row& row : chart.rows) {
    std::vector<std::string> line = cells(row);
    line.insert(line.begin(), row.kind->short_name);
    rows.push_back(std::move(line));
  }
  return "\n" + title + "\n" + table(columns, rows);
}

std::string tables(const chart::Chart& chart) {
  std::string text;
  text += block(chart, "Energy", {"Cell Wh/kg", "Battery Wh/kg", "Cell Wh/L", "Battery Wh/L"},
                [](const chart::Row& r) -> std::vector<std::string> {
                  return {text_of(r.figure(Quantity::kEnergyPerMass, Level::kCell)),
                          text_of(r.figure(Quantity::kEnergyPerMass, Level::kBattery)),
                          text_of(r.figure(Quantity::kEnergyPerVolume, Level::kCell)),
                          text_of(r.figure(Quantity::kEnergyPerVolume, Level::kBattery))};
                });
  text += block(chart, "Power and charging (multiples of the capacity per hour)",
                {"Discharge", "Peak", "Charge", "Charge time h", "W/kg"},
                [](const chart::Row& r) -> std::vector<std::string> {
                  return {text_of(r.cell_or_block(Quantity::kContinuousRate)),
                          text_of(r.cell_or_block(Quantity::kPeakRate)),
                          text_of(r.cell_or_block(Quantity::kChargeRate)),
                          r.charge_h ? spread(*r.charge_h, 1.0) : kNone,
                          r.power_W_per_kg ? spread(*r.power_W_per_kg, 1.0) : kNone};
                });
  text +=
      block(chart, "Life", {"Cycles", "Depth %", "At degC", "Ends at %", "On the shelf, years at 25 degC"},
            [](const chart::Row& r) -> std::vector<std::string> {
              const Fact* c = r.cell_or_block(Quantity::kCycles);
              return {text_of(c), c == nullptr ? kNone : figure(kPercent * c->depth),
                      c == nullptr ? kNone : figure(c->temperature_C),
                      c == nullptr ? kNone : figure(kPercent * c->end_of_life_share),
                      text_of(r.cell_or_block(Quantity::kCalendarLife))};
            });
  text += block(chart, "Temperature of the cell, degC", {"Charge from", "to", "Discharge from", "to"},
                [](const chart::Row& r) -> std::vector<std::string> {
                  return {text_of(r.cell_or_block(Quantity::kChargeFrom)),
                          text_of(r.cell_or_block(Quantity::kChargeTo)),
                          text_of(r.cell_or_block(Quantity::kDischargeFrom)),
                          text_of(r.cell_or_block(Quantity::kDischargeTo))};
                });
  text += block(chart, "Losses and price",
                {"Energy back %", "Self-discharge % a month", "Makers' pack USD/kWh", "Shop battery USD/kWh"},
                [](const chart::Row& r) -> std::vector<std::string> {
                  return {text_of(r.cell_or_block(Quantity::kEfficiency), kPercent),
                          text_of(r.cell_or_block(Quantity::kSelfDischarge), kPercent),
                          text_of(r.figure(Quantity::kPrice, Level::kPack)),
                          text_of(r.figure(Quantity::kPrice, Level::kBattery))};
                });
  return text;
}

std::string failure_word(chart::Runaway runaway) {
  if (runaway == chart::Runaway::kNone) return "without a fire of its own";
  if (runaway == chart::Runaway::kNotKnown) return "not known";
  return "of " + std::string(chart::name_of(runaway)) + " severity";
}

std::string safety_text(const chart::Chart& chart, std::size_t width) {
  std::string text = "\nSafety\n";
  std::vector<std::string> notes;
  for (const chart::Row& row : chart.rows) {
    const chart::Safety& said = row.kind->safety;
    if (!row.safety_known) {
      text += wrapped(row.kind->short_name + ": no statement of this year or before.", width, "  ");
      continue;
    }
    std::string line = row.kind->short_name + ": failure " + failure_word(said.runaway);
    if (const Fact* onset = row.figure(Quantity::kOnset, Level::kCell)) {
      line += ", onset " + figure(onset->value.typical) + " degC" + year_of(*onset);
    } else if (!said.stated.empty()) {
      line += "; " + said.stated;
    }
    line += (line.ends_with('.') ? " Gas: " : ". Gas: ") + said.gas + ". What it looks like: " + said.failure;
    text += wrapped(line, width, "  ");
    std::size_t number = 0;
    while (number < notes.size() && notes[number] != said.note) ++number;
    if (number == notes.size()) notes.push_back(said.note);
  }
  for (const std::string& note : notes) text += wrapped("Note: " + note, width, "  ");
  return text;
}

std::string weighting_text(const app::ChartResponse& response, std::size_t width) {
  const chart::Weighting& w = response.weighting;
  std::string text = "\nScores: " + w.name + "\n";
  text += wrapped("Weights: " + to_text(w) + ".", width, "  ");
  if (!w.why.empty()) text += wrapped(w.why, width, "  ");
  text += wrapped(
      "Points from 1 (first place) to 0 (last); a missing figure counts 0 in the lower and 1 in the upper "
      "end. "
      "The lower end decides the order.",
      width, "  ");
  std::vector<Column> columns = {{"Rank", Align::kRight}, {"", Align::kLeft}, {"Points", Align::kLeft}};
  for (const chart::Weight& weight : w.weights) {
    if (weight.weight > 0.0) columns.push_back({std::string(chart::name_of(weight.matter)), Align::kRight});
  }
  Rows rows;
  for (const chart::Score& s : response.scores) {
    std::vector<std::string> row = {
        std::to_string(s.rank), s.row->kind->short_name,
        s.least == s.most ? figure(s.least) : figure(s.least) + " to " + figure(s.most)};
    for (const chart::Weight& weight : w.weights) {
      if (weight.weight <= 0.0) continue;
      const auto& place = s.place(weight.matter);
      row.push_back(place ? figure(place->place) + (place->standing.soft ? " ~" : "") : kNone);
    }
    rows.push_back(std::move(row));
  }
  text += table(columns, rows);
  for (const chart::Weight& weight : w.weights) {
    if (weight.weight <= 0.0) continue;
    text += wrapped(
        std::string(chart::name_of(weight.matter)) + ": " + std::string(chart::rule_of(weight.matter)), width,
        "  ");
  }
  return text;
}

double shown_factor(Quantity quantity) {
  return quantity == Quantity::kEfficiency || quantity == Quantity::kSelfDischarge ? kPercent : 1.0;
}

std::string unit_text(Quantity quantity) {
  if (quantity == Quantity::kEfficiency) return "%";
  if (quantity == Quantity::kSelfDischarge) return "% a month";
  return std::string(chart::unit_of(quantity));
}

/// Figures of cells and batteries stand apart.
bool level_matters(Quantity quantity) {
  return quantity == Quantity::kEnergyPerMass || quantity == Quantity::kEnergyPerVolume ||
         quantity == Quantity::kPrice;
}

std::string changed_text(const Fact& fact) {
  std::string text = text_of(&fact, shown_factor(fact.quantity));
  if (fact.quantity != Quantity::kCycles) return text;
  return std::move(text) + " at " + figure(kPercent * fact.depth) + " %";
}

std::string changes_text(const chart::Chart& chart, std::size_t width) {
  if (!chart.since) return "";
  std::string text = "\nWhat is another figure than as of " + std::to_string(*chart.since) + "\n";
  if (chart.changes.empty()) return text + "Nothing: no figure of the years between is known.\n";
  Rows rows;
  std::string fresh;
  const chart::Kind* last = nullptr;
  for (const chart::Change& change : chart.changes) {
    const Quantity quantity = change.now.quantity;
    const std::string name = level_matters(quantity) ? std::string(chart::name_of(quantity)) + " of the " +
                                                           std::string(chart::name_of(change.now.level))
                                                     : std::string(chart::name_of(quantity));
    if (!change.before) {
      fresh += change.kind == last ? ", " : (last == nullptr ? "" : "\n") + change.kind->short_name + ": ";
      fresh += name;
      last = change.kind;
      continue;
    }
    rows.push_back({change.kind->short_name, name, changed_text(*change.before), changed_text(change.now),
                    unit_text(quantity)});
  }
  if (!rows.empty()) {
    text += table({{"", Align::kLeft},
                   {"Figure", Align::kLeft},
                   {"As of " + std::to_string(*chart.since), Align::kLeft},
                   {"As of " + std::to_string(chart.year), Align::kLeft},
                   {"", Align::kLeft}},
                  rows);
  }
  if (fresh.empty()) return text;
  text += "Figures where none of " + std::to_string(*chart.since) + " or before was found\n";
  for (std::size_t from = 0; from < fresh.size();) {
    const std::size_t end = std::min(fresh.find('\n', from), fresh.size());
    text += wrapped(fresh.substr(from, end - from), width, "  ");
    from = end + 1;
  }
  return text;
}

void add_branches(const std::vector<chart::Branch>& branches, std::size_t depth,
                  const app::ChartResponse& response, std::string& text) {
  for (const chart::Branch& branch : branches) {
    text += std::string(2 * depth, ' ') + branch.name;
    for (const chart::Kind& kind : response.kinds) {
      if (kind.id == branch.chemistry) text += " = " + kind.short_name;
    }
    if (!branch.note.empty()) text += " (" + branch.note + ")";
    text += "\n";
    add_branches(branch.branches, depth + 1, response, text);
  }
}

}  // namespace

std::string chart_text(const app::ChartResponse& response, std::size_t width) {
  const chart::Chart& chart = response.chart;
  std::string text = "Battery chemistries as of " + std::to_string(chart.year) + "\n";
  text += wrapped(
      "Typical (least to most) 'year of the source. ~ assumed or partly from memory; - no figure of this "
      "year or "
      "before. Lead-acid is sold as blocks: its figures stand under battery. Sources: --csv and --json.",
      width, "");
  text += tables(chart);
  text += safety_text(chart, width);
  text += changes_text(chart, width);
  text += weighting_text(response, width);
  text += "\n" +
          wrapped(
              "Makers' pack prices are averages of large contracts, shop prices are what one battery costs: "
              "they are not compared. A planning aid: local codes, the makers' instructions and a licensed "
              "person decide.",
              width, "");
  return text;
}

std::string tree_text(const app::ChartResponse& response) {
  std::string text = response.tree.name + "\n";
  std::string steps;
  for (const std::string& step : response.tree.steps) steps += (steps.empty() ? "" : " -> ") + step;
  text += steps + "\n\n";
  add_branches(response.tree.branches, 0, response, text);
  return text;
}

}  // namespace voltwright::cli
