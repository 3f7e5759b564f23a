#include <fmt/format.h>

#include <cmath>

#include "engine/advise/wording.h"
#include "files/report/charts.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

constexpr std::size_t kRowsShown = 12;

bool misses(const advise::Ranked& r, advise::Matter matter) {
  for (const advise::Verdict& v : r.verdicts) {
    if (v.matter == matter) return v.holding == advise::Holding::kFallsShort;
  }
  return false;
}

std::string small(const std::string& text) { return "<small>" + text + "</small>"; }

std::string range_text(const units::Ranged& range) {
  return escaped(advise::figure(range.min)) + " to " + escaped(advise::figure(range.max));
}

std::string number_cell(const std::string& label, double value, const std::string& below, bool over,
                        bool assumed) {
  const std::string css = over ? " class=\"over\"" : (assumed ? " class=\"pencil\"" : "");
  return fmt::format(R"(<td class="r" data-l="{}"><span{}>{}</span>{}</td>)", escaped(label), css,
                     escaped(advise::figure(value)), small(below));
}

std::string row(const ReportInput& input, const advise::Ranked& r, bool best) {
  const advise::Plan& plan = *input.plan;
  const advise::Candidate& c = r.trial.candidate;
  const advise::Chance chance = r.trial.chance();
  const std::string css = std::string(best ? "best" : "") + (c.fitted_now ? " had" : "");
  std::string about = escaped((c.fitted_now ? "fitted now, " : "") +
                              (c.chemistry != nullptr ? c.chemistry->plain_name + ", " : "") +
                              advise::figure(c.figures.capacity_Ah, "Ah"));
  std::string out =
      fmt::format("<tr class=\"{}\"><td class=\"name\">{}{}</td>", css, escaped(c.name()), small(about));
  out += "<td class=\"chance\">" +
         interval_chart(chance, units::as_fraction(plan.limits.chance_of_shortfall)) + "</td>";
  const std::string interval = chance.events == 0 ? "under " + advise::percent(chance.high)
                               : chance.events == chance.seasons
                                   ? "over " + advise::percent(chance.low)
                                   : advise::percent(chance.low) + " to " + advise::percent(chance.high);
  out += fmt::format(R"(<td data-l="short"><span>{} of {}</span>{}</td>)", chance.events,
                     advise::figure(chance.seasons), small(escaped(interval)));
  out += number_cell("kg", c.figures.mass_kg.typical, range_text(c.figures.mass_kg),
                     misses(r, advise::Matter::kMass), false);
  const bool assumed = c.battery != nullptr && c.battery->price_is_assumption && !r.price.from_plan;
  const bool one_currency = !advise::price_currency_of(*input.answer).empty();
  out += number_cell(r.price.currency, r.price.amount.typical,
                     range_text(r.price.amount) + (one_currency ? "" : " " + escaped(r.price.currency)),
                     misses(r, advise::Matter::kPrice), assumed);
  const units::Ranged life = r.trial.life_years();
  const units::Ranged whole{std::round(life.min), std::round(life.typical), std::round(life.max)};
  out += number_cell("years", whole.typical, range_text(whole), misses(r, advise::Matter::kLife), false);
  out += "<td class=\"why\">" + verdict_mark(r.holding) +
         small(escaped(r.brief.empty() ? r.reason : r.brief)) + "</td></tr>";
  return out;
}

std::string head(const ReportInput& input) {
  const advise::Plan& plan = *input.plan;
  return "<thead><tr><th>Bank</th><th class=\"chance\">Seasons that ran short" +
         interval_scale(units::as_fraction(plan.limits.chance_of_shortfall)) +
         "</th><th>Of seasons</th><th class=\"r\">Mass<br/>kg</th><th class=\"r\">Price<br/>" +
         escaped(advise::price_currency_of(*input.answer)) +
         "</th><th class=\"r\">Life<br/>years</th><th>Verdict and reason</th></tr></thead>";
}

std::string needs(const advise::Recommendation& answer) {
  if (answer.would_need.empty()) return {};
  std::string out =
      "<table class=\"needs\"><thead><tr><th>Chemistry</th><th>Nearest bank</th>"
      "<th>What it would need</th></tr></thead><tbody>";
  for (const advise::WouldNeed& need : answer.would_need) {
    out += "<tr><td>" + escaped(need.chemistry) + "</td><td>" + escaped(need.bank) + "</td><td>" +
           escaped(need.sentence) + "</td></tr>";
  }
  return section("What each other chemistry would need",
                 "The nearest bank of each chemistry that has none that holds, and what would change that.",
                 out + "</tbody></table>");
}

}  // namespace

std::string ranking(const ReportInput& input) {
  const std::vector<advise::Ranked>& all = input.answer->ranking;
  if (all.empty()) return {};
  std::string shown, folded;
  std::size_t count = 0, more = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool now = static_cast<int>(i) == input.answer->fitted_now;
    const std::string text = row(input, all[i], static_cast<int>(i) == input.answer->best);
    if (now || count < kRowsShown) {
      shown += text;
      ++count;
    } else {
      folded += text;
      ++more;
    }
  }
  const std::string open = "<table class=\"rank\">" + head(input) + "<tbody>";
  std::string body = open + shown + "</tbody></table>";
  if (more > 0) {
    body += fold(fmt::format("{} more {}", more, more == 1 ? "bank" : "banks"),
                 open + folded + "</tbody></table>");
  }
  return section(
             "What else was tried",
             "Same weather, same use, same sources for every bank. Dot and bar are the share of seasons that "
             "ran short with its 95\u202F% interval, by decades; a hollow dot is none; the upright line is "
             "the " +
                 advise::percent(units::as_fraction(input.plan->limits.chance_of_shortfall)) +
                 " accepted. Best first; what is fitted now stands last. Italic prices are assumptions.",
             body) +
         needs(*input.answer);
}

std::string requirements(const ReportInput& input) {
  const advise::Ranked* shown = shown_bank(input);
  if (shown == nullptr || shown->verdicts.empty()) return {};
  std::string out =
      "<table class=\"needs\"><thead><tr><th>Requirement</th><th>Verdict</th>"
      "<th>Reason</th></tr></thead><tbody>";
  for (const advise::Verdict& v : shown->verdicts) {
    out += "<tr><td>" + escaped(advise::name_of(v.matter)) + "</td><td>" + verdict_mark(v.holding) +
           "</td><td>" + escaped(v.reason) + (v.remedy.empty() ? "" : " " + escaped(v.remedy)) + "</td></tr>";
  }
  return section("Every requirement",
                 "What was asked of " + shown->trial.candidate.name() + ", and whether it holds.",
                 out + "</tbody></table>");
}

}  // namespace voltwright::files::report
