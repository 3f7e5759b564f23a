#include "files/report/life_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "engine/advise/wording.h"
#include "files/report/markup.h"
#include "files/report/page.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using advise::figure;
using advise::percent;

std::string small(const std::string& text) { return "<small>" + escaped(text) + "</small>"; }

/// A law's own date, as coarse as any.
std::string date_words(const std::optional<double>& years) {
  const double found = years.value_or(ageing::kLongestLookedFor_years);
  return advise::years_words(advise::stated({found, found, found}));
}

std::string law_row(const LifeRow& row, NumberedSources& sources) {
  const advise::LawLife& law = *row.law;
  std::string out = law.leads ? "<tr class=\"now\"><td>" : "<tr><td>";
  out += escaped(law.name) + sources.mark(law.source) + small(law.caution) + "</td>";
  out += fmt::format(R"(<td class="r" data-l="80 %">{}</td><td class="r" data-l="70 %">{}</td>)",
                     escaped(date_words(law.ends.at_80)), escaped(date_words(law.ends.at_70)));
  out += "<td data-l=\"Basis\">" + escaped(row.basis) + "</td><td data-l=\"Reach\">" + escaped(row.reach) +
         (law.counted ? "" : small("not counted")) + "</td>";
  out += "<td class=\"r\" data-l=\"Against measured\">" +
         (row.over_measured > 0.0 ? escaped(figure(row.over_measured) + " times") : "") + "</td></tr>";
  return out;
}

std::string laws_part(const LifeInput& input, NumberedSources& sources) {
  std::string rows;
  for (const LifeRow& row : input.rows) rows += law_row(row, sources);
  return section(
      "What the laws say",
      "Years from now of the whole bank. The first counted law leads. Against measured: loss of a first year "
      "at rest, 25 °C and half charge, over the measured one.",
      "<table class=\"fair\"><thead><tr><th>Law</th><th class=\"r\">80 %<br/>years</th><th class=\"r\">70 "
      "%<br/>years</th><th>Basis</th><th>Reach</th><th class=\"r\">Against<br/>measured</th></tr></thead>"
      "<tbody>" +
          rows + "</tbody></table>");
}

std::string gains_part(const advise::BankLife& life) {
  if (life.gains.empty()) return {};
  std::string rows;
  for (const ageing::Gain& gain : life.gains) {
    rows += "<tr><td>" + escaped(gain.habit) + "</td><td class=\"r\">" + escaped(figure(gain.times)) +
            "</td><td>" + escaped(gain.note) + "</td></tr>";
  }
  return section(
      "What makes it last",
      "Life to 80 % after the change over life before it, by the leading law, the loss not fed back.",
      "<table><thead><tr><th>Habit</th><th class=\"r\">times</th><th>Mind</th></tr></thead><tbody>" + rows +
          "</tbody></table>");
}

std::string doubts_part(const advise::BankLife& life) {
  std::string rows;
  for (const advise::Doubt& doubt : life.doubts) {
    rows += "<tr><td>" + escaped(doubt.of) + "</td><td class=\"r\">" + escaped(percent(doubt.least)) +
            "</td><td class=\"r\">" + escaped(percent(doubt.most)) + "</td></tr>";
  }
  return section("Where the doubt comes from",
                 "Ends of the life over the typical one; between cells and years nine of ten lie within.",
                 "<table><thead><tr><th>Doubt</th><th class=\"r\">shortest</th><th "
                 "class=\"r\">longest</th></tr></thead><tbody>" +
                     rows + "</tbody></table>");
}

std::string levels_part(const advise::BankLife& life) {
  std::string rows;
  for (const advise::Level& level : life.levels) {
    const advise::Chance& c = level.chance;
    rows += "<tr><td>" + escaped(percent(level.capacity)) + "</td><td class=\"r\">" +
            escaped(figure(level.resistance_factor)) + "</td><td>" +
            escaped(advise::chance_text(c.events, c.seasons, c.low, c.high)) + "</td></tr>";
  }
  return section("As it wears",
                 "Seasons that ran short at a share of the new capacity, with the resistance against new.",
                 "<table><thead><tr><th>Capacity</th><th class=\"r\">resistance, times</th><th>Ran "
                 "short in</th></tr></thead><tbody>" +
                     rows + "</tbody></table>");
}

}  // namespace

std::string life_page(const LifeInput& input) {
  NumberedSources sources;
  const advise::BankLife& life = *input.life;
  std::string body = page_head("Life", "How long " + input.bank + " lasts", input.plan);
  body += "<p class=\"say\">" + escaped(input.sentence) + "</p>\n";
  body += "<section class=\"wide slide\"><div class=\"main\"><h2>As a picture</h2>" +
          slide_figure(life_slide(input),
                       "The same picture as the slide. On a narrow screen it moves sideways.") +
          "</div></section>\n";
  body += laws_part(input, sources);
  body += gains_part(life);
  body += doubts_part(life);
  body += levels_part(life);
  body += caution_section(input.cautions);
  body += section("Assumptions", "Taken as stated; not measured and not asked.",
                  list_of(input.assumptions, "pencil"));
  body += sources.section(input.works);
  body += block_of({{"Plan", input.plan},
                    {"Sheet", "Life"},
                    {"Plan mark", input.plan_mark},
                    {"Catalogue", input.catalogue_mark},
                    {"Engine", input.engine_version},
                    {"Issue", input.issue}});
  return slide_page("Life, " + input.bank, body);
}

}  // namespace voltwright::files::report
