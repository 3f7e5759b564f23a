#include "files/report/chemistry_slide.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/advise/wording.h"
#include "files/report/chemistry_marks.h"
#include "files/report/markup.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using chart::Fact;
using chart::Level;
using chart::Quantity;

constexpr double kLeft = 40.0;
constexpr double kRight = kSlideWidth - 16.0;
constexpr double kRowsFrom = 196.0;
constexpr double kRowsTo = 806.0;
constexpr double kMark = 9.0;
constexpr double kLabelGap = 14.0;
constexpr double kRankRoom = 34.0;  // for the rank before the mark

/// One column of the picture: a scale with its room for labels.
struct Column {
  double from, to;  // values
  double left, right;
  double room;  // labels end here
  bool decades = false;

  double at(double value) const {
    const double share =
        decades ? std::log(value / from) / std::log(to / from) : (value - from) / (to - from);
    return left + std::clamp(share, 0.0, 1.0) * (right - left);
  }
};

constexpr Column kEnergy = {0.0, 450.0, 364.0, 685.0, 790.0};
constexpr Column kCycles = {50.0, 50000.0, 800.0, 1000.0, 1110.0, true};
constexpr Column kWindow = {-40.0, 65.0, 1130.0, 1270.0, 1370.0};
constexpr Column kPrice = {0.0, 450.0, 1390.0, 1475.0, kRight};

void head(Drawing& d, const Column& column, std::string_view title, std::string_view unit,
          const std::vector<double>& ticks) {
  d.text(column.left, 136.0, title, "start", "head");
  d.text(column.left, 158.0, unit, "start", "tick");
  for (const double tick : ticks) {
    d.line(column.at(tick), kRowsFrom - 4.0, column.at(tick), kRowsTo, "grid");
    d.text(column.at(tick), kRowsFrom - 12.0, fixed(tick, 0), "middle", "tick");
  }
}

std::string label_of(const Fact& fact) {
  return fmt::format("{} ({})", advise::figure(fact.value.typical), fact.year);
}

void range(Drawing& d, const Column& column, const chart::Row& row, const Fact& fact, double y,
           const std::string& label) {
  const bool soft = chart::is_soft(fact);
  const double from = column.at(fact.value.min);
  const double to = column.at(fact.value.max);
  const double typical = column.at(fact.value.typical);
  d.line(from, y, to, y, soft ? "guess" : "span");
  draw_chemistry_mark(d, row.kind->id, typical, y, kMark, "mark");
  // Wide for any of the fonts; a label without room on the right goes to the left of the line.
  constexpr double kLetter = 10.5;
  const double label_from = std::max(to, typical + kMark) + kLabelGap;
  const bool fits = label_from + kLetter * static_cast<double>(label.size()) <= column.room;
  d.text(fits ? label_from : std::min(from, typical - kMark) - kLabelGap, y + 6.0, label,
         fits ? "start" : "end", soft ? "value soft" : "value");
}

void missing(Drawing& d, const Column& column, double y) {
  d.text(column.left, y + 6.0, "no figure", "start", "none");
}

/// The earlier figure, where it was another.
void earlier(Drawing& d, const Column& column, const chart::Chart& chart, const chart::Row& row,
             const Fact* now, double y) {
  if (!chart.since || now == nullptr) return;
  const Fact* then = chart::as_of(*row.kind, now->quantity, now->level, *chart.since);
  if (then == nullptr || then->year == now->year) return;
  constexpr double kBelow = 16.0;
  constexpr double kTick = 4.0;
  const double typical = column.at(then->value.typical);
  d.line(column.at(then->value.min), y + kBelow, column.at(then->value.max), y + kBelow, "then");
  d.line(typical, y + kBelow - kTick, typical, y + kBelow + kTick, "then");
}

void window(Drawing& d, const chart::Row& row, double y) {
  const Fact* from = row.cell_or_block(Quantity::kChargeFrom);
  const Fact* to = row.cell_or_block(Quantity::kChargeTo);
  if (from == nullptr || to == nullptr) return missing(d, kWindow, y);
  const bool soft = chart::is_soft(*from);
  const double x1 = kWindow.at(from->value.typical);
  const double x2 = kWindow.at(to->value.typical);
  constexpr double kCap = 8.0;
  d.line(x1, y, x2, y, soft ? "guess" : "span");
  d.line(x1, y - kCap, x1, y + kCap, "span");
  d.line(x2, y - kCap, x2, y + kCap, "span");
  d.text(kWindow.right + 4.0, y + 6.0,
         advise::figure(from->value.typical) + " to " + advise::figure(to->value.typical), "start",
         soft ? "value soft" : "value");
}

void draw_row(Drawing& d, const chart::Chart& chart, const chart::Score& score, bool ranked, double y) {
  const chart::Row& row = *score.row;
  const double shift = ranked ? kRankRoom : 0.0;
  if (ranked) {
    d.text(kLeft + 26.0, y + 6.0, std::to_string(score.rank), "end", "head");
    const bool one = fmt::format("{:.2f}", score.least) == fmt::format("{:.2f}", score.most);
    d.text(
        kEnergy.left - 14.0, y - 1.0,
        one ? fmt::format("{:.2f}", score.least) : fmt::format("{:.2f} to {:.2f}", score.least, score.most),
        "end", "points");
  }
  draw_chemistry_mark(d, row.kind->id, kLeft + 14.0 + shift, y, kMark + 2.0, "mark");
  d.text(kLeft + 40.0 + shift, y - 1.0, row.kind->short_name, "start", "name");
  d.text(kLeft + 40.0 + shift, y + 18.0, row.kind->plain_name, "start", "plain");
  const auto figure = [&](const Column& column, const Fact* fact, const std::string& label) {
    if (fact == nullptr) return missing(d, column, y);
    range(d, column, row, *fact, y, label);
    earlier(d, column, chart, row, fact, y);
  };
  const Fact* energy = row.cell_or_block(Quantity::kEnergyPerMass);
  figure(kEnergy, energy, energy == nullptr ? "" : label_of(*energy));
  const Fact* cycles = row.cell_or_block(Quantity::kCycles);
  figure(kCycles, cycles,
         cycles == nullptr
             ? ""
             : fmt::format("{} at {:.0f} %", advise::figure(cycles->value.typical), 100.0 * cycles->depth));
  window(d, row, y);
  const Fact* price = row.figure(Quantity::kPrice, Level::kBattery);
  figure(kPrice, price, price == nullptr ? "" : label_of(*price));
}

std::string summary_of(const chart::Chart& chart) {
  return fmt::format(
      "{} battery chemistries as of {}: energy per mass, cycles, window for charging and price.",
      chart.rows.size(), chart.year);
}

void notes(Drawing& d, const chart::Weighting* weighting) {
  if (weighting == nullptr) {
    d.text(kLeft, 840.0, "Order: energy per mass.", "start", "how");
  } else {
    d.text(kLeft, 832.0, "Order: " + weighting->name + ", weighed " + to_text(*weighting) + ".", "start",
           "how");
    d.text(kLeft, 856.0,
           "Points: 1 for the first place in a matter, 0 for the last, weighed. A span is what missing "
           "figures leave "
           "open.",
           "start", "how");
  }
  d.text(kLeft, 882.0,
         "Lead-acid: figures of the block. Cycles: at the depth stated, 25 °C. A maker's sheet goes first; "
         "most "
         "lithium cells must not be charged below 0 °C.",
         "start", "how");
}

}  // namespace

std::string chemistry_slide(const chart::Chart& chart, const std::vector<chart::Score>& scores,
                            const chart::Weighting* weighting) {
  Drawing d = begin_slide(summary_of(chart));
  d.text(kLeft, 58.0, fmt::format("Battery chemistries as of {}", chart.year), "start", "title");
  std::string how =
      "Line: least to most found. Mark and number: typical, with its year. Dashed and slanted: assumed or "
      "from "
      "memory.";
  if (chart.since) how += fmt::format(" Grey line below: as of {}.", *chart.since);
  d.text(kLeft, 92.0, how, "start", "how");
  head(d, kEnergy, "Energy per mass of the cell", "Wh/kg", {0.0, 100.0, 200.0, 300.0, 400.0});
  head(d, kCycles, "Cycles at depth", "to the end of life", {100.0, 1000.0, 10000.0});
  head(d, kWindow, "Charging", "°C of the cell", {-30.0, 0.0, 30.0, 60.0});
  head(d, kPrice, "Shop price", "USD per kWh", {0.0, 200.0, 400.0});
  std::vector<const chart::Score*> order;
  for (const chart::Score& score : scores) order.push_back(&score);
  if (weighting == nullptr) {
    const auto energy = [](const chart::Score* s) {
      const Fact* fact = s->row->cell_or_block(Quantity::kEnergyPerMass);
      return fact == nullptr ? 0.0 : fact->value.typical;
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](const chart::Score* a, const chart::Score* b) { return energy(a) > energy(b); });
  }
  const double pitch = (kRowsTo - kRowsFrom) / static_cast<double>(std::max<std::size_t>(1, order.size()));
  d.line(kLeft, kRowsFrom, kRight, kRowsFrom, "rule");
  d.line(kWindow.at(0.0), kRowsFrom - 4.0, kWindow.at(0.0), kRowsTo, "wall");
  for (std::size_t i = 0; i < order.size(); ++i) {
    const double top = kRowsFrom + pitch * static_cast<double>(i);
    constexpr double kMiddle = 0.46;
    draw_row(d, chart, *order[i], weighting != nullptr, top + kMiddle * pitch);
    d.line(kLeft, top + pitch, kRight, top + pitch, "rule");
  }
  notes(d, weighting);
  return finish_slide(std::move(d));
}

}  // namespace voltwright::files::report
