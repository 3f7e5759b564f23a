#include "files/report/chemistry_page.h"

#include <fmt/format.h>

#include "engine/advise/wording.h"
#include "files/report/chemistry_slide.h"
#include "files/report/chemistry_words.h"
#include "files/report/markup.h"
#include "files/report/page.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using advise::figure;
using chart::Branch;

std::string firsts(const std::vector<chart::Score>& scores) {
  std::string names;
  for (const chart::Score& score : scores) {
    if (score.rank != 1) continue;
    names += (names.empty() ? "" : " and ") + score.row->kind->short_name;
  }
  return names;
}

std::string answer(const ChemistryInput& input) {
  std::string out =
      "<b>" +
      escaped(fmt::format("{} kinds of batteries as of {}.", input.chart->rows.size(), input.chart->year)) +
      "</b>";
  if (input.weighed)
    out += escaped(" For " + input.weighting->name + ", " + firsts(*input.scores) + " comes first.");
  return out + escaped(" No kind is best in everything; weigh what this use needs.");
}

/// The figure that decided a place, in the units of the tables.
std::string standing_words(const chart::Standing& s, chart::Matter matter) {
  if (!s.in_words.empty()) return s.in_words;
  if (matter == chart::Matter::kEfficiency) return advise::percent(s.value);
  if (matter == chart::Matter::kStanding) return advise::percent(s.value) + " a month";
  if (s.unit == "1/h") return figure(s.value) + "C";
  return cited(figure(s.value, s.unit));
}

std::string score_cell(const chart::Score& score, chart::Matter matter) {
  const auto& place = score.place(matter);
  std::string inside = "<em class=\"pencil\">no figure</em>";
  if (place) {
    const chart::Standing& s = place->standing;
    const std::string value = standing_words(s, matter);
    inside = escaped(fmt::format("{} of {}", figure(place->place), place->among)) + "<small" +
             (s.soft ? " class=\"soft\"" : "") + ">" + escaped(value) + "</small>";
  }
  return "<td data-l=\"" + escaped(chart::name_of(matter)) + "\">" + inside + "</td>";
}

std::string scores(const ChemistryInput& input) {
  std::string head = "<thead><tr><th>Chemistry</th><th>Points</th>";
  std::vector<std::string> rules;
  for (const chart::Weight& weight : input.weighting->weights) {
    if (weight.weight <= 0.0) continue;
    head += "<th>" + escaped(chart::name_of(weight.matter)) + "</th>";
    rules.push_back(std::string(chart::name_of(weight.matter)) + ", weight " + figure(weight.weight) + ": " +
                    std::string(chart::rule_of(weight.matter)));
  }
  std::string rows;
  for (const chart::Score& score : *input.scores) {
    rows += "<tr><td>" + kind_markup(*score.row->kind) + "</td><td data-l=\"Points\">" +
            escaped(figure(score.least)) +
            (score.least == score.most ? "" : escaped(" to " + figure(score.most))) + "<small>place " +
            std::to_string(score.rank) + "</small></td>";
    for (const chart::Weight& weight : input.weighting->weights) {
      if (weight.weight > 0.0) rows += score_cell(score, weight.matter);
    }
    rows += "</tr>";
  }
  return section(
      "Places, " + input.weighting->name,
      "In each matter the place among those with a figure, and the figure that decided it. Points run "
      "from 1 for the first place to 0 for the last, weighed; a missing figure counts 0 in the lower and "
      "1 in the upper end. Weights: " +
          to_text(*input.weighting) + ". " + input.weighting->why,
      "<table class=\"figures places\">" + head + "</tr></thead><tbody>" + rows + "</tbody></table>" +
          fold("The rule of each matter", list_of(rules, "plain")));
}

std::string branches(const std::vector<Branch>& below, const chart::Chart& chart,
                     std::string_view css_class) {
  if (below.empty()) return {};
  std::string out = css_class.empty() ? "<ul>" : "<ul class=\"" + std::string(css_class) + "\">";
  for (const Branch& branch : below) {
    out += "<li>" + escaped(cited(branch.name));
    for (const chart::Row& row : chart.rows) {
      if (row.kind->id == branch.chemistry) out += " <b>" + escaped(row.kind->short_name) + "</b>";
    }
    if (!branch.note.empty()) out += " <small>" + escaped(cited(branch.note)) + "</small>";
    out += branches(branch.branches, chart, "") + "</li>";
  }
  return out + "</ul>";
}

std::string tree(const ChemistryInput& input) {
  std::string steps;
  for (const std::string& step : input.tree->steps) steps += (steps.empty() ? "" : ", then ") + step;
  return section(
      input.tree->name,
      "Divided by " + steps +
          ". Bold: a kind of the tables. Lithium-ion names how it works, iron-phosphate what one of its "
          "electrodes is made of: an iron-phosphate battery is a lithium-ion battery.",
      branches(input.tree->branches, *input.chart, "tree"));
}

std::vector<std::string> cautions() {
  return {"Most lithium cells must not be charged below 0 °C. It harms them inside, and nobody sees it.",
          "An onset temperature is no safe limit. The gas of every lithium kind is poisonous and burns; "
          "lead-acid gives "
          "off hydrogen.",
          "A planning aid. Local codes, the makers' instructions and a licensed person decide."};
}

}  // namespace

std::string chemistry_page(const ChemistryInput& input) {
  const chart::Chart& chart = *input.chart;
  NumberedSources sources;
  std::string body = "<div class=\"slide-head\">" +
                     page_head("Chemistries", "What kinds are there, and how do they compare?",
                               fmt::format("as of {}", chart.year));
  body += "<p class=\"say\">" + answer(input) + "</p></div>\n";
  body += "<section class=\"wide slide\"><div class=\"main\"><h2>Side by side</h2>" +
          slide_figure(chemistry_slide(chart, *input.scores, input.weighed ? input.weighting : nullptr),
                       "The same picture as the slide. On a narrow screen it moves sideways.") +
          "</div></section>\n";
  body += chemistry_tables(chart, sources);
  body += chemistry_safety(chart, sources);
  body += scores(input);
  body += chemistry_changes(chart, sources);
  body += tree(input);
  body += caution_section(cautions());
  body += sources.section(input.works);
  body += block_of({{"Chart", fmt::format("as of {}", chart.year)},
                    {"Sheet", "Chemistries"},
                    {"Since", chart.since ? std::to_string(*chart.since) : std::string("not asked")},
                    {"Catalogue", input.catalogue_mark},
                    {"Engine", input.engine_version},
                    {"Issue", input.issue}});
  return slide_page(fmt::format("Chemistries as of {}", chart.year), body);
}

}  // namespace voltwright::files::report
