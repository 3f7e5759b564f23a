#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "engine/advise/wording.h"
#include "files/report/chemistry_marks.h"
#include "files/report/equivalents_page.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using advise::Compared;
using advise::figure;
using advise::Measure;

constexpr double kLeft = 40.0;
constexpr double kRight = kSlideWidth - 40.0;
constexpr double kRowsFrom = 196.0;
constexpr double kRowsTo = 826.0;
constexpr double kTallestRow = 112.0;
constexpr double kFirstColumn = 400.0;
constexpr double kPitch = 294.0;
constexpr double kBar = 134.0;
constexpr std::size_t kMostRows = 8;  // besides the incumbent
constexpr double kPerKilo = 1e-3;

struct Column {
  std::string title, unit;
  Measure measure;
  double scale;
  units::Ranged (*of)(const Compared&);
};

units::Ranged energy_of(const Compared& c) { return {c.run.bank_Wh, c.run.bank_Wh, c.run.bank_Wh}; }
units::Ranged mass_of(const Compared& c) { return c.figures.mass_kg; }
units::Ranged room_of(const Compared& c) { return c.figures.volume_L; }
units::Ranged peak_of(const Compared& c) { return {c.figures.peak_A, c.figures.peak_A, c.figures.peak_A}; }
units::Ranged price_of(const Compared& c) { return c.figures.price; }
units::Ranged life_of(const Compared& c) { return c.life_Wh; }

std::array<Column, 4> columns_of(Measure asked) {
  Column second = {"Mass", "kg", Measure::kMass, 1.0, mass_of};
  if (asked == Measure::kVolume) second = {"Room", "L", Measure::kVolume, 1.0, room_of};
  if (asked == Measure::kStartingCurrent)
    second = {"Peak current", "A", Measure::kStartingCurrent, 1.0, peak_of};
  return {Column{"Usable energy", "Wh", Measure::kUsableEnergy, 1.0, energy_of}, second,
          Column{"Price", "USD", Measure::kPrice, 1.0, price_of},
          Column{"Energy over its life", "kWh", Measure::kLifeEnergy, kPerKilo, life_of}};
}

double left_of(std::size_t column) { return kFirstColumn + kPitch * static_cast<double>(column); }

struct Place {
  double top, height;
  double middle() const { return top + 0.5 * height; }
};

void draw_cell(Drawing& d, const Column& column, double x, double greatest, const Compared& c, bool now,
               const Place& row) {
  const units::Ranged r = column.of(c);
  const double typical = r.typical * column.scale;
  const double y = row.middle();
  constexpr double kThick = 24.0;
  const double length = greatest > 0.0 ? kBar * std::clamp(r.typical / greatest, 0.0, 1.0) : 0.0;
  d.box(x, y - 0.5 * kThick, length, kThick, now ? "bar-now" : "bar");
  const bool spread = r.min != r.max;
  d.text(x + kBar + 14.0, y + (spread ? 3.0 : 10.0), figure(typical), "start", "big");
  if (!spread) return;
  d.text(x + kBar + 14.0, y + 23.0, figure(r.min * column.scale) + " to " + figure(r.max * column.scale),
         "start", "plain");
}

void draw_row(Drawing& d, const EquivalentRow& row, bool now, const Place& place,
              const std::array<Column, 4>& columns, const std::array<double, 4>& greatest) {
  const Compared& c = *row.compared;
  if (now) d.box(kLeft - 12.0, place.top, kRight - kLeft + 24.0, place.height, "wash");
  draw_chemistry_mark(d, c.bank.chemistry->id, kLeft + 12.0, place.middle() - 8.0, 11.0, "mark");
  const double room = kFirstColumn - kLeft - 52.0;
  d.text(kLeft + 36.0, place.middle() - 1.0, broken_lines(row.name, letters_in(room, 22.0), 1).front(),
         "start", "name");
  const std::string below = now ? "fitted now" : c.bank.chemistry->plain_name;
  d.text(kLeft + 36.0, place.middle() + 21.0, broken_lines(below, letters_in(room, 16.0), 1).front(), "start",
         "plain");
  for (std::size_t i = 0; i < columns.size(); ++i)
    draw_cell(d, columns[i], left_of(i), greatest[i], c, now, place);
}

}  // namespace

std::string equal_words(const EquivalentsInput& input) {
  const advise::SwapQuestion& q = *input.question;
  const std::string load =
      q.load.current_A > 0.0 ? figure(q.load.current_A, "A") : figure(q.load.power_W, "W");
  std::string text = "Equal by " + std::string(advise::name_of(q.measure)) + ": " +
                     (advise::must_reach(q.measure) ? "at least " : "at most ") +
                     figure(input.target, std::string(advise::unit_of(q.measure))) +
                     ", with a steady load of " + load + " at " + figure(q.temperature_C, "°C");
  if (q.cut_off_V > 0.0) text += " and a cut-off at " + figure(q.cut_off_V, "V");
  return text + ". What is fitted now is used to " + advise::percent(input.incumbent.compared->depth) + ".";
}

std::string equivalents_slide(const EquivalentsInput& input) {
  const std::size_t count = std::min(input.rows.size(), kMostRows);
  const std::array<Column, 4> columns = columns_of(input.question->measure);
  std::vector<const EquivalentRow*> rows = {&input.incumbent};
  for (std::size_t i = 0; i < count; ++i) rows.push_back(&input.rows[i]);
  std::array<double, 4> greatest{};
  for (std::size_t i = 0; i < columns.size(); ++i) {
    for (const EquivalentRow* row : rows)
      greatest[i] = std::max(greatest[i], columns[i].of(*row->compared).typical);
  }
  Drawing d = begin_slide(
      fmt::format("{} and {} that equal it, compared by usable energy, mass, price and energy over life. {}",
                  input.incumbent.name, count, equal_words(input)));
  d.text(kLeft, 62.0,
         broken_lines("In place of " + input.incumbent.name, letters_in(kRight - kLeft, 38.0), 1).front(),
         "start", "title");
  double y = 96.0;
  for (const std::string& line : broken_lines(equal_words(input), letters_in(kRight - kLeft, 18.0), 2)) {
    d.text(kLeft, y, line, "start", "how");
    y += 24.0;
  }
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const bool asked = columns[i].measure == input.question->measure;
    d.text(left_of(i), 160.0, columns[i].title + ", " + columns[i].unit, "start", "head");
    if (asked) d.text(left_of(i), 182.0, "equal by this", "start", "plain");
  }
  d.line(kLeft - 12.0, kRowsFrom, kRight + 12.0, kRowsFrom, "strong-rule");
  const double pitch = std::min(kTallestRow, (kRowsTo - kRowsFrom) / static_cast<double>(rows.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Place place = {kRowsFrom + pitch * static_cast<double>(i), pitch};
    draw_row(d, *rows[i], i == 0, place, columns, greatest);
    d.line(kLeft - 12.0, place.top + pitch, kRight + 12.0, place.top + pitch,
           i == 0 ? "strong-rule" : "rule");
  }
  // A dotted line carries what is fitted now through all that would take its place.
  const double bottom = kRowsFrom + pitch * static_cast<double>(rows.size());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (greatest[i] <= 0.0) continue;
    const double x = left_of(i) + kBar * columns[i].of(*input.incumbent.compared).typical / greatest[i];
    d.line(x, kRowsFrom + pitch, x, bottom, "now");
  }
  if (input.rows.empty())
    d.text(kLeft, kRowsFrom + pitch + 44.0, "No battery of the catalogue equals it so.", "start", "name");
  std::string more = "Bars from zero, typical figures; below a figure stands its spread. Dotted: fitted now.";
  if (input.rows.size() > count) more += fmt::format(" {} more are not shown.", input.rows.size() - count);
  d.text(kLeft, 856.0, more, "start", "how");
  d.text(
      kLeft, 882.0,
      "Size classes: a data sheet goes first. What else must change stands in the handout. A licensed person "
      "decides.",
      "start", "how");
  return finish_slide(std::move(d));
}

}  // namespace voltwright::files::report
