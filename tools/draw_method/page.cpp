#include "tools/draw_method/page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw_method/pictures.h"

namespace voltwright::tools {

namespace {

constexpr const char* kPictures = "docs/pictures/method/";

bool is_voltage(const Residual& row) { return std::string_view(row.unit) == "V"; }

/// Four figures of a value, three decimals of a voltage.
std::string figure(const Residual& row, double value) {
  if (is_voltage(row)) return fmt::format("{:.3f}", value);
  const double magnitude = std::fabs(value);
  const int decimals = magnitude >= 100.0 ? 0 : magnitude >= 10.0 ? 1 : magnitude >= 1.0 ? 2 : 3;
  return fmt::format("{:.{}f}", value, decimals);
}

std::string with_sign(double value, int decimals, const char* unit) {
  std::string digits = fmt::format("{:.{}f}", std::fabs(value), decimals);
  const bool zero = digits.find_first_of("123456789") == std::string::npos;
  return (zero ? "" : value < 0.0 ? "\u2212" : "+") + digits + unit;
}

double relative_percent(const Residual& row) {
  return 100.0 * (row.computed - row.published) / row.published;
}
double off_mV(const Residual& row) { return 1e3 * (row.computed - row.published); }

std::string off_text(const Residual& row) {
  return is_voltage(row) ? with_sign(off_mV(row), 0, " mV") : with_sign(relative_percent(row), 1, " %");
}

std::string allowed_text(const Residual& row) {
  return is_voltage(row) ? fmt::format("{:.0f} mV", 1e3 * row.tolerance)
                         : fmt::format("{:.0f} %", 100.0 * row.tolerance / row.published);
}

std::string keys_text(const std::vector<std::string>& keys) {
  std::string text;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (std::find(keys.begin(), keys.begin() + static_cast<std::ptrdiff_t>(i), keys[i]) !=
        keys.begin() + static_cast<std::ptrdiff_t>(i))
      continue;
    text += (text.empty() ? "[" : ", ") + keys[i];
  }
  return text.empty() ? "" : text + "]";
}

std::string table_of(const PublishedSet& set, const std::vector<Residual>& rows) {
  std::string text = fmt::format("\n{}:\n\n", set.title);
  text +=
      "| Point | Published | Computed | Residual | Allowed | Fitted | Source "
      "|\n|---|--:|--:|--:|--:|---|---|\n";
  for (const Residual& row : rows) {
    text += fmt::format("| {} | {} {} | {} {} | {} | {} | {} | {} |\n", row.condition,
                        figure(row, row.published), row.unit, figure(row, row.computed), row.unit,
                        off_text(row), allowed_text(row), row.fitted ? "yes" : "no", keys_text(row.keys));
  }
  return text;
}

/// Mean and largest size of the residuals of one sort.
struct Spread {
  int count = 0;
  double sum = 0.0;
  double most = 0.0;

  void add(double value) {
    ++count;
    sum += std::fabs(value);
    most = std::max(most, std::fabs(value));
  }
  std::string text(const char* unit, int decimals) const {
    if (count == 0) return "– | – | –";
    return fmt::format("{} | {:.{}f}{} | {:.{}f}{}", count, sum / count, decimals, unit, most, decimals,
                       unit);
  }
};

std::string summary_row(const HeldKind& held) {
  Spread volts, others;
  for (const auto& rows : held.rows) {
    for (const Residual& row : rows) {
      if (is_voltage(row)) {
        volts.add(off_mV(row));
      } else {
        others.add(relative_percent(row));
      }
    }
  }
  return fmt::format("| {} | {} | {} |\n", held.kind.record->plain_name, volts.text(" mV", 0),
                     others.text(" %", 1));
}

constexpr const char* kOpening =
    "# Curves\n\n"
    "What the model of a cell says about whole discharges and charges, drawn, and held against every "
    "published point\n"
    "that we have. This page and its pictures are written by the program: change the records, not the page. "
    "To write\n"
    "them again:\n\n"
    "    cmake --build --preset release --target draw_method\n\n"
    "## How to read them\n"
    "The equations are those of [cell](cell.md), [bank](bank.md) and [charging](charging.md). Discharges run "
    "through\n"
    "`engine/bank/laboratory.h`, charges through `engine/season/step.h`, both with the catalogue records as "
    "they are.\n"
    "The cell is held at its temperature: warming by its own losses, which helps in the cold and at high "
    "rates, is\n"
    "left out here and not in a season. A discharge starts full and ends at the end voltage, or where the "
    "record\n"
    "leaves nothing more to draw at that temperature. C is the rated capacity per hour.\n\n"
    "The residual is computed less published, in millivolts or per cent of the published value. *Allowed* is "
    "the\n"
    "tolerance of the test; its reason stands beside the point in `catalogue/published_curves/`. *Fitted* "
    "says that\n"
    "the record was made from this very point: such a residual shows how well the equations can follow, the "
    "others\n"
    "whether they foretell.\n\n"
    "These are cells of one make or medians of several, on a bench. A battery that is bought differs by its "
    "make, its\n"
    "age and its protection: follow its data sheet, above all for charging in the cold and for the largest "
    "currents.\n";

constexpr const char* kChecks =
    "\n## Checks\n"
    "`tests/published/curves/curves_test.cpp`: every point of every table within what is allowed; this page "
    "and each\n"
    "picture as the program draws them now.\n";

void add_picture(std::vector<DrawnFile>& files, std::string& page, const HeldKind& held, const char* what,
                 const Chart& chart) {
  const std::string name = held.kind.record->id + "-" + what + ".svg";
  files.push_back({kPictures + name, svg_of(chart)});
  page += fmt::format("\n![{}. {}](../pictures/method/{})\n", chart.title, chart.summary, name);
}

}  // namespace

std::vector<DrawnFile> draw_method(const std::vector<HeldKind>& kinds) {
  std::vector<DrawnFile> files;
  std::string page = kOpening;
  page +=
      "\n| Kind | Voltages | Mean | Largest | Charge, energy, time | Mean | Largest "
      "|\n|---|--:|--:|--:|--:|--:|--:|\n";
  for (const HeldKind& held : kinds) page += summary_row(held);
  for (const HeldKind& held : kinds) {
    page += fmt::format("\n## {}\n", held.kind.record->name);
    if (!held.kind.record->simulated) {
      page += "\nDescribed and drawn, but in no computed answer: " + held.kind.record->not_simulated_because +
              "\n";
    }
    add_picture(files, page, held, "discharge", discharge_chart(held.kind, held.sets));
    if (const auto rates = rate_chart(held.kind, held.sets)) add_picture(files, page, held, "rate", *rates);
    add_picture(files, page, held, "cold", cold_chart(held.kind, held.sets));
    add_picture(files, page, held, "charge", charge_chart(held.kind, held.sets));
    for (std::size_t i = 0; i < held.sets.size(); ++i) page += table_of(held.sets[i], held.rows[i]);
  }
  page += kChecks;
  files.push_back({"docs/method/curves.md", page});
  return files;
}

}  // namespace voltwright::tools
