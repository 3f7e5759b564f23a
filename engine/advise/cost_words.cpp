#include "engine/advise/cost_words.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"

namespace voltwright::advise {

namespace {

std::string rate_text(double rate) {
  return (rate < 0.0 ? "\u2212" : "") + percent(std::fabs(rate)) + " a year";
}

/// Two significant digits: no cost is known better.
double rough(double value) {
  if (value == 0.0 || !std::isfinite(value)) return value;
  constexpr double kTen = 10.0;
  const double decade = std::pow(kTen, std::floor(std::log10(std::fabs(value))) - 1.0);
  return std::round(value / decade) * decade;
}

std::string rough_text(double value) { return figure(rough(value)); }
std::string rough_text(double value, const std::string& unit) { return figure(rough(value), unit); }

std::string years_text(double years) { return rough_text(years, years == 1.0 ? "year" : "years"); }

/// "saves 310 USD", "costs 120 USD more".
std::string worth_text(double worth, const std::string& currency) {
  return worth < 0.0 ? "costs " + rough_text(-worth, currency) + " more"
                     : "saves " + rough_text(worth, currency);
}

const BankCost* fitted_now(const Recommendation& answer, const LifeCost& costs) {
  if (answer.fitted_now < 0) return nullptr;
  const auto i = static_cast<std::size_t>(answer.fitted_now);
  return i < costs.banks.size() && i != costs.shown ? &costs.banks[i] : nullptr;
}

/// "X costs 0.42 USD for each delivered kWh (0.31 to 0.6 is likely). Most hangs on ...".
std::string cost_sentence(const std::string& subject, const BankCost& bank, const cost::Terms& terms) {
  const std::string& currency = terms.currency;
  const units::Ranged& likely = bank.tornado.likely;
  if (likely.min == 0.0 && likely.max == 0.0) {
    return subject + " costs nothing within " + years_text(terms.horizon_years) +
           ": it is paid and outlasts them.";
  }
  const std::string decisive = decisive_sentence(bank.tornado, currency);
  return subject + " costs " + rough_text(bank.tornado.typical, currency) + " for each delivered kWh (" +
         rough_text(likely.min) + " to " + rough_text(likely.max) + " is likely)." +
         (decisive.empty() ? "" : " " + decisive);
}

std::string end_text(const cost::Payback& payback) {
  if (!payback.year) return "never";
  if (*payback.year == 0.0) return "at once";
  return "after " + years_text(*payback.year) + (payback.lasts ? "" : " for a while");
}

std::string payback_sentence(const cost::Comparison& c, const cost::Terms& terms) {
  const cost::Payback& typical = c.typical.discounted;
  std::string text = "Against what is fitted now ";
  if (!typical.year) {
    text += "it does not pay back within " + years_text(terms.horizon_years);
  } else if (*typical.year == 0.0 && typical.lasts) {
    text += "it is never behind";
  } else {
    text += "the extra cost is back after " + years_text(*typical.year);
    if (!typical.lasts) text += ", until a later replacement";
  }
  if (typical.year || c.optimistic.discounted.year) {
    text += " (at best " + end_text(c.optimistic.discounted) + ", at worst " +
            end_text(c.pessimistic.discounted) + ")";
  } else {
    text += ", not even at best";
  }
  const units::Ranged& worth = c.net_present_value;
  return text + "; in the end it " + worth_text(worth.typical, terms.currency) + " (at best it " +
         worth_text(worth.max, terms.currency) + ", at worst it " + worth_text(worth.min, terms.currency) +
         ").";
}

std::string whose_text(const cost::Turn& turn, const std::string& first, const std::string& second) {
  switch (turn.whose) {
    case cost::Whose::kFirst:
      return "the " + turn.assumption.name + " of " + first;
    case cost::Whose::kSecond:
      return "the " + turn.assumption.name + " of " + second;
    case cost::Whose::kBoth:
      break;
  }
  return "the " + turn.assumption.name;
}

std::string turn_sentence(const LifeCost& costs, const Against& against) {
  const std::string& first = costs.banks[costs.shown].bank.name;
  const std::string& second = costs.banks[against.other].bank.name;
  const double gap = against.ranking.gap();
  const double size = std::max(std::fabs(against.ranking.first), std::fabs(against.ranking.second));
  constexpr double kAlike = 0.01;
  std::string text = "A delivered kWh of " + first;
  if (std::fabs(gap) < kAlike * size) return text + " costs about the same as that of " + second + ".";
  text += std::string(" is ") + (gap > 0.0 ? "cheaper" : "dearer") + " than that of " + second + " by " +
          rough_text(std::fabs(gap), costs.terms.currency);
  const cost::Turn* decisive = against.ranking.decisive();
  if (decisive == nullptr) return text + ".";
  for (const cost::Turn& turn : against.ranking.turns) {
    if (!turn.even_at) continue;
    return text + "; that turns if " + whose_text(turn, first, second) + " is " +
           value_of(turn.assumption, rough(*turn.even_at)) + " instead of " +
           value_of(turn.assumption, turn.assumption.value.typical) + ".";
  }
  return text + "; no single assumption turns that, and " + whose_text(*decisive, first, second) +
         " moves it most.";
}

}  // namespace

std::string band_text(const units::Ranged& range, const std::string& unit) {
  return rough_text(range.typical, unit) + " (" + rough_text(range.min) + " to " + rough_text(range.max) +
         ")";
}

std::string value_of(const cost::Assumption& assumption, double value) {
  if (assumption.input == cost::Input::kDiscountRate) return rate_text(value);
  if (assumption.unit == "years") return years_text(value);
  return figure(value, assumption.unit);
}

std::string decisive_sentence(const cost::Tornado& tornado, const std::string& currency) {
  const cost::Bar* bar = tornado.decisive();
  if (bar == nullptr) return {};
  const cost::Assumption& a = bar->assumption;
  return "Most hangs on the " + a.name + ": " + rough_text(bar->cost_at_least, currency) + " at " +
         value_of(a, a.value.min) + ", " + rough_text(bar->cost_at_greatest, currency) + " at " +
         value_of(a, a.value.max) + ".";
}

std::string unknown_sentence(const BankCost& bank) {
  if (bank.known()) return {};
  std::string text = "What a delivered kWh of " + bank.bank.name + " costs is not known.";
  for (const base::Problem& problem : bank.problems) {
    text += " " + problem.what;
    if (!problem.remedy.empty()) text += " " + problem.remedy;
  }
  return text;
}

std::vector<std::string> cost_sentences(const Recommendation& answer, const LifeCost& costs) {
  std::vector<std::string> all;
  if (costs.banks.empty()) return all;
  const BankCost& shown = costs.banks[costs.shown];
  all.push_back(shown.known() ? cost_sentence(shown.bank.name, shown, costs.terms) : unknown_sentence(shown));
  const BankCost* now = fitted_now(answer, costs);
  if (now != nullptr) {
    all.push_back(now->known() ? cost_sentence("What is fitted now", *now, costs.terms)
                               : unknown_sentence(*now));
  }
  for (const Against& against : costs.against) {
    if (costs.banks[against.other].bank.fitted_now)
      all.push_back(payback_sentence(against.comparison, costs.terms));
    all.push_back(turn_sentence(costs, against));
  }
  return all;
}

std::string cost_heading(const cost::Terms& terms) {
  return "Cost over " + years_text(terms.horizon_years) + " at " + rate_text(terms.discount_rate.typical) +
         ", money of today";
}

}  // namespace voltwright::advise
