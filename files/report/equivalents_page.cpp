#include "files/report/equivalents_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "engine/advise/wording.h"
#include "files/report/chemistry_marks.h"
#include "files/report/claim_lines.h"
#include "files/report/markup.h"
#include "files/report/page.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using advise::Change;
using advise::Compared;
using advise::figure;
using advise::Urgency;

constexpr double kPerKilo = 1e-3;

std::string small(const std::string& text) { return "<small>" + escaped(text) + "</small>"; }

std::string kind_picture(const Compared& c) {
  constexpr double kBox = 20.0;
  Drawing d(kBox, kBox, "kind", c.bank.chemistry->plain_name);
  draw_chemistry_mark(d, c.bank.chemistry->id, 0.5 * kBox, 0.5 * kBox, 7.5, "mark");
  return d.finish();
}

/// A figure with its unit, which the head of the column does not repeat, so that no figure stands without.
std::string cell(std::string_view label, double value, const std::string& unit, const std::string& below,
                 bool soft = false) {
  return fmt::format(R"(<td class="r" data-l="{}"><span{}>{}</span>{}</td>)", escaped(label),
                     soft ? " class=\"pencil\"" : "", value_text(value, unit),
                     below.empty() ? "" : small(below));
}

std::string spread(const units::Ranged& r, double scale = 1.0) {
  return r.min == r.max ? "" : figure(r.min * scale) + " to " + figure(r.max * scale);
}

std::string fair_row(const EquivalentRow& row, bool now, advise::Measure measure) {
  const Compared& c = *row.compared;
  const bank::Battery& battery = *c.bank.battery;
  std::string out = now ? "<tr class=\"now\"><td>" : "<tr><td>";
  out += kind_picture(c) + escaped(row.name) +
         small((now ? "fitted now, " : "") + c.bank.chemistry->plain_name + ", " +
               figure(c.figures.nominal_V, "V") + ", " + figure(c.figures.capacity_Ah, "Ah")) +
         (now ? "" : small(advise::percent(c.share) + " of it by " + std::string(advise::name_of(measure)))) +
         "</td>";
  out += cell("Usable", c.run.bank_Wh, "Wh", "");
  out += cell("Runs", c.run.hours, "h", "");
  out += cell("Mass", c.figures.mass_kg.typical, "kg", spread(c.figures.mass_kg));
  out += cell("Room", c.figures.volume_L.typical, "L", spread(c.figures.volume_L));
  std::string price = cell("Price", c.figures.price.typical, battery.price_currency, spread(c.figures.price),
                           battery.price_is_assumption);
  const std::string year =
      std::to_string(battery.price_year) + (battery.price_is_assumption ? ", assumed" : "");
  price.insert(price.rfind("</td>"), small(year));
  out += price;
  out += cell("Over its life", c.life_Wh.typical * kPerKilo, "kWh", spread(c.life_Wh, kPerKilo));
  out += cell("Current", c.figures.continuous_A, "A", "peak " + figure(c.figures.peak_A, "A"));
  return out + "</tr>";
}

std::string fair_table(const EquivalentsInput& input) {
  std::string rows = fair_row(input.incumbent, true, input.question->measure);
  for (const EquivalentRow& row : input.rows) rows += fair_row(row, false, input.question->measure);
  return section(
      "Side by side",
      "What is fitted now stands first. Usable energy and hours are at the load and temperature above; "
      "below a figure stands its spread. Italic prices are assumptions.",
      "<table class=\"fair\"><thead><tr><th>Bank</th><th class=\"r\">Usable<br/>energy</th><th "
      "class=\"r\">Runs</th><th class=\"r\">Mass</th><th class=\"r\">Room</th><th "
      "class=\"r\">Price</th><th class=\"r\">Energy over<br/>its life</th><th class=\"r\">Current "
      "for<br/>long</th></tr></thead><tbody>" +
          rows + "</tbody></table>");
}

std::string working_row(const EquivalentRow& row, bool now) {
  const Compared& c = *row.compared;
  std::string out = now ? "<tr class=\"now\"><td>" : "<tr><td>";
  out += escaped(row.name) + "</td>";
  out += "<td data-l=\"Rated\">" +
         escaped(figure(c.figures.capacity_Ah, "Ah") + " × " + figure(c.figures.nominal_V, "V") + " = " +
                 figure(c.figures.nominal_Wh, "Wh")) +
         "</td>";
  out += "<td data-l=\"Drawn\">" +
         escaped(figure(c.run.drawn_Ah, "Ah") + " × " + figure(c.run.mean_V, "V") + " = " +
                 figure(c.run.bank_Wh, "Wh")) +
         small("depth rule " + advise::percent(c.depth) +
               "; ended: " + std::string(advise::text_of(c.run.ending))) +
         "</td>";
  out += "<td data-l=\"Runs\">" +
         escaped(figure(c.run.drawn_Ah, "Ah") + " / " + figure(c.run.mean_A, "A") + " = " +
                 figure(c.run.hours, "h")) +
         "</td>";
  out += "<td data-l=\"Over its life\">" +
         escaped(figure(c.run.bank_Wh, "Wh") + " × " + figure(c.cycles.typical) +
                 " cycles = " + figure(c.life_Wh.typical * kPerKilo, "kWh")) +
         small(spread(c.cycles) + " cycles at " + advise::percent(c.used_depth) +
               " of the capacity; on the shelf " + spread(c.bank.chemistry->life.calendar_years) + " years") +
         "</td>";
  return out + "</tr>";
}

std::string working(const EquivalentsInput& input) {
  std::string rows = working_row(input.incumbent, true);
  for (const EquivalentRow& row : input.rows) rows += working_row(row, false);
  return section(
      "The working",
      "The run is simulated from full to its end at the load; mean voltage and mean current are those of "
      "the run. Rated energy is what is printed on it, not what it gives.",
      "<table class=\"fair figures\"><thead><tr><th>Bank</th><th>Rated</th><th>Drawn until the end</th>"
      "<th>Runs</th><th>Energy over its life</th></tr></thead><tbody>" +
          rows + "</tbody></table>");
}

/// "must" and "check" by sign and word, as verdicts are.
std::string urgency_mark(Urgency urgency) {
  const claims::Severity shape = urgency == Urgency::kMust    ? claims::Severity::kDoubt
                                 : urgency == Urgency::kCheck ? claims::Severity::kNote
                                                              : claims::Severity::kHolds;
  return fmt::format(
      R"(<span class="word {}"><svg class="sign" viewBox="0 0 22 12" aria-hidden="true"><path d="{}"/></svg>{}</span>)",
      urgency == Urgency::kMust ? "bad" : "full", sign_of(shape), advise::name_of(urgency));
}

/// What else must change; what was said of an earlier bank is not said again.
std::string changes(const EquivalentsInput& input) {
  std::map<std::string, std::string> said;
  std::string out;
  for (const EquivalentRow& row : input.rows) {
    std::string rows;
    std::size_t musts = 0;
    for (const Change& change : row.changes) {
      musts += change.urgency == Urgency::kMust ? 1U : 0U;
      const auto [known, is_new] = said.try_emplace(change.text, row.name);
      rows += "<tr><td>" + urgency_mark(change.urgency) + "</td><td>" +
              escaped(advise::name_of(change.topic)) + "</td><td>" +
              escaped(is_new ? change.text : "As for " + known->second + ".") + "</td></tr>";
    }
    const std::string table =
        "<table class=\"changes\"><thead><tr><th>Urgency</th><th>Matter</th><th>What to "
        "say</th></tr></thead><tbody>" +
        rows + "</tbody></table>";
    const std::string title = fmt::format("{} in its place: {} must, {} to check or to know", row.name, musts,
                                          row.changes.size() - musts);
    const std::string part = "<details" + std::string(&row == &input.rows.front() ? " open=\"open\"" : "") +
                             "><summary>" + escaped(title) + "</summary>" + table + "</details>\n";
    out += part;
  }
  if (out.empty()) return {};
  return section(
      "What else must change",
      "Must: unsafe or not working without it. Check: may be right already, so look. Know: nothing to do.",
      out);
}

const EquivalentRow* least_of(const EquivalentsInput& input, double (*key)(const Compared&)) {
  const auto found = std::min_element(
      input.rows.begin(), input.rows.end(),
      [&](const EquivalentRow& a, const EquivalentRow& b) { return key(*a.compared) < key(*b.compared); });
  return &*found;
}

std::string answer(const EquivalentsInput& input) {
  if (input.rows.empty()) return "<b>No battery of the catalogue equals it so.</b>";
  const EquivalentRow* light = least_of(input, [](const Compared& c) { return c.figures.mass_kg.typical; });
  const EquivalentRow* cheap = least_of(input, [](const Compared& c) { return c.figures.price.typical; });
  const EquivalentRow* lasting = least_of(input, [](const Compared& c) { return -c.life_Wh.typical; });
  const bank::BankFigures& now = input.incumbent.compared->figures;
  const std::string currency = cheap->compared->bank.battery->price_currency;
  std::string out = "<b>" +
                    escaped(fmt::format("{} {} by {}.", input.rows.size(),
                                        input.rows.size() == 1 ? "bank equals it" : "banks equal it",
                                        advise::name_of(input.question->measure))) +
                    "</b> ";
  out += escaped("The lightest is " + light->name + ", " +
                 figure(light->compared->figures.mass_kg.typical, "kg") + " instead of " +
                 figure(now.mass_kg.typical, "kg") + "; the cheapest is " + cheap->name + ", " +
                 figure(cheap->compared->figures.price.typical, currency) + " instead of " +
                 figure(now.price.typical, currency) + "; the most energy over its life comes from " +
                 lasting->name + ", " + figure(lasting->compared->life_Wh.typical * kPerKilo, "kWh") +
                 " instead of " + figure(input.incumbent.compared->life_Wh.typical * kPerKilo, "kWh") + ".");
  return out;
}

std::string leftovers(const EquivalentsInput& input) {
  std::string out;
  if (!input.left_out.empty()) {
    std::vector<std::string> lines;
    for (const advise::LeftOut& one : input.left_out) lines.push_back(one.battery + ": " + one.why);
    out += section("Left out", "Batteries of the catalogue that do not equal it, and why.",
                   list_of(lines, "plain"));
  }
  if (!input.assumed.empty())
    out += section("Assumptions", "Taken as stated; not measured and not asked.",
                   list_of(input.assumed, "pencil"));
  return out;
}

}  // namespace

std::string equivalents_page(const EquivalentsInput& input) {
  std::string body = page_head("Swap", "What equals " + input.incumbent.name + "?", "fitted now first");
  body += "<p class=\"say\">" + answer(input) + "</p>\n";
  body += "<p class=\"sub strong\">" + escaped(equal_words(input)) + "</p>\n";
  body += fair_table(input);
  body += "<section class=\"wide slide\"><div class=\"main\"><h2>As a picture</h2>" +
          slide_figure(equivalents_slide(input),
                       "The same picture as the slide. On a narrow screen it moves "
                       "sideways.") +
          "</div></section>\n";
  body += changes(input);
  body += working(input);
  body += caution_section(input.cautions);
  body += leftovers(input);
  if (!input.works.empty())
    body += section("Sources", "Works that the records of these batteries and chemistries name.",
                    fold(fmt::format("{} works", input.works.size()), works_list(input.works)));
  body += block_of({{"Fitted now", input.incumbent.name},
                    {"Sheet", "Swap"},
                    {"Equal by", std::string(advise::name_of(input.question->measure))},
                    {"Catalogue", input.catalogue_mark},
                    {"Engine", input.engine_version},
                    {"Issue", input.issue}});
  return slide_page("Swap, " + input.incumbent.name, body);
}

}  // namespace voltwright::files::report
