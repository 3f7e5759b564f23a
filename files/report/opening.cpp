#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "files/report/local_day.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

std::string key_figure(const std::string& value, const std::vector<std::string>& notes) {
  std::string out = "<div><b>" + value + "</b>";
  for (const std::string& note : notes) out += "<span>" + note + "</span>";
  return out + "</div>";
}

std::string against(double value, double limit, const std::string& unit) {
  const double gap = std::fabs(limit - value);
  return value <= limit ? value_text(gap, unit) + " under the limit"
                        : "<em class=\"over\">" + value_text(gap, unit) + " over the limit</em>";
}

std::string range_text(const units::Ranged& range) {
  return escaped(advise::figure(range.min)) + " to " + escaped(advise::figure(range.max));
}

std::string price_figure(const advise::Plan& plan, const advise::Ranked& shown) {
  const cost::Sum& sum = shown.price;
  const bank::Battery* battery = shown.trial.candidate.battery;
  const bool assumed = battery != nullptr && battery->price_is_assumption && !sum.from_plan;
  std::vector<std::string> notes = {
      range_text(sum.amount),
      escaped(advise::price_origin(sum)) + (assumed ? ", <em class=\"pencil\">assumption</em>" : "")};
  if (plan.limits.price) {
    const double limit = units::as_money(*plan.limits.price);
    notes.push_back(advise::counts_in(plan, sum)
                        ? against(sum.amount.typical, limit, plan.currency)
                        : "the limit is " + value_text(limit, plan.currency) + ": not compared");
  }
  return key_figure(value_text(sum.amount.typical, sum.currency), notes);
}

std::string strip(const ReportInput& input, const advise::Ranked& shown) {
  const advise::Plan& plan = *input.plan;
  const advise::Trial& trial = shown.trial;
  const bank::BankFigures& f = trial.candidate.figures;
  const advise::Chance chance = trial.chance();
  std::string out = "<div class=\"strip\">";
  const std::string interval = chance.events == 0 ? "under " + advise::percent(chance.high)
                               : chance.events == chance.seasons
                                   ? "over " + advise::percent(chance.low)
                                   : advise::percent(chance.low) + " to " + advise::percent(chance.high);
  out += key_figure(
      escaped(std::to_string(chance.events) + " of " + advise::figure(chance.seasons)),
      {"seasons ran short", escaped(interval) + ", 95\u202F% interval",
       "accepted " + escaped(advise::percent(units::as_fraction(plan.limits.chance_of_shortfall)))});
  std::vector<std::string> mass = {range_text(f.mass_kg), "batteries alone"};
  if (plan.limits.mass)
    mass.push_back(against(f.mass_kg.typical, units::as_kilograms(*plan.limits.mass), "kg"));
  out += key_figure(value_text(f.mass_kg.typical, "kg"), mass);
  out += price_figure(plan, shown);
  const units::Ranged life = trial.life_years();
  out += key_figure(
      value_text(std::round(life.typical), "years"),
      {escaped(advise::figure(std::round(life.min))) + " to " + escaped(advise::figure(std::round(life.max))),
       "until 80\u202F% of its capacity is left"});
  return out + "</div>";
}

std::string journey_line(const advise::Plan& plan) {
  if (plan.legs.empty()) return {};
  const journey::Leg& first = plan.legs.front();
  const journey::Leg& last = plan.legs.back();
  const auto with_year = [&](std::int64_t utc_s) {
    const LocalDay d = local_day(plan.legs, utc_s);
    return fmt::format("{} {} {}", d.day, month_text(d.month), d.year);
  };
  std::string out = first.place.name;
  if (last.place.name != first.place.name) out += " to " + last.place.name;
  if (plan.legs.size() > 2) out += fmt::format(", {} legs", plan.legs.size());
  return out + ", " + with_year(first.start_utc_s + 43200) + " to " + with_year(last.end_utc_s - 43200);
}

}  // namespace

std::string opening(const ReportInput& input) {
  const advise::Plan& plan = *input.plan;
  std::string out = "<header class=\"head\"><div><h1>Recommendation</h1><p>" + escaped(plan.name);
  const std::string journey = journey_line(plan);
  if (!journey.empty()) out += "<br/>" + escaped(journey);
  out += "</p></div><p class=\"run\">" +
         escaped(advise::figure(units::as_volts(plan.system_voltage), "V") + " system, up to " +
                 advise::figure(plan.seasons) + " seasons a bank") +
         "</p></header>\n";
  const std::vector<std::string>& sentences = input.answer->sentences;
  out += "<p class=\"say\">";
  for (std::size_t i = 0; i < sentences.size(); ++i) {
    if (sentences[i].empty()) continue;
    out += i == 0 ? "<b>" + escaped(sentences[i]) + "</b>" : " " + escaped(sentences[i]);
  }
  if (sentences.empty()) out += "<b>No bank was tried.</b>";
  out += "</p>\n";
  if (!plan.note.empty()) out += "<p class=\"sub note\">" + escaped(plan.note) + "</p>\n";
  const advise::Ranked* shown = shown_bank(input);
  if (shown != nullptr) {
    if (input.answer->best < 0)
      out += "<p class=\"sub note\">The figures below are those of the nearest bank.</p>";
    out += strip(input, *shown);
  }
  return out;
}

}  // namespace voltwright::files::report
