#include "engine/advise/stated_life.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/advise/wording.h"

namespace voltwright::advise {

namespace {

constexpr std::array<double, 19> kSteps = {0.25,
                                           0.5,
                                           0.75,
                                           1.0,
                                           1.5,
                                           2.0,
                                           2.5,
                                           3.0,
                                           4.0,
                                           5.0,
                                           6.0,
                                           7.0,
                                           8.0,
                                           9.0,
                                           10.0,
                                           12.0,
                                           15.0,
                                           20.0,
                                           kLongestTold_years};

double nearest_step(double years) {
  return *std::min_element(kSteps.begin(), kSteps.end(), [years](double a, double b) {
    return std::fabs(a - years) < std::fabs(b - years);
  });
}

/// 0 if there is no step below.
double step_down(double years) {
  double found = 0.0;
  for (const double step : kSteps) {
    if (step <= years) found = step;
  }
  return found;
}

double step_up(double years) {
  const auto found = std::find_if(kSteps.begin(), kSteps.end(), [years](double s) { return s >= years; });
  return found != kSteps.end() ? *found : kLongestTold_years;
}

/// In months below two years.
std::string number(double years, bool in_months) {
  constexpr double kMonths = 12.0;
  return figure(in_months ? years * kMonths : years);
}

std::string most_words(const StatedLife& life, bool in_months) {
  return life.most_longer ? "over " + figure(kLongestTold_years) : number(life.years.max, in_months);
}

}  // namespace

StatedLife stated(const units::Ranged& years) {
  StatedLife life;
  life.past = years.typical <= 0.0;
  life.longer = years.typical > kLongestTold_years;
  const double typical = nearest_step(std::min(years.typical, kLongestTold_years));
  const double least = std::min(years.min, (1.0 - kLeastDoubt) * std::min(years.typical, typical));
  const double most = std::max(years.max, (1.0 + kLeastDoubt) * std::max(years.typical, typical));
  life.most_longer = most > kLongestTold_years;
  life.years = {step_down(std::min(least, kLongestTold_years)), typical, step_up(most)};
  return life;
}

std::string life_words(const StatedLife& life) {
  if (life.past) return "already now";
  if (life.longer) {
    const bool known = life.years.min >= kSteps.front();
    return "more than " + figure(kLongestTold_years) + " years" +
           (known ? " (at least " + figure(life.years.min) + ")" : std::string());
  }
  constexpr double kInMonthsBelow_years = 2.0;
  const bool in_months = life.years.typical < kInMonthsBelow_years && !life.most_longer;
  return "about " + number(life.years.typical, in_months) + (in_months ? " months (" : " years (") +
         number(life.years.min, in_months) + " to " + most_words(life, in_months) + ")";
}

std::string years_words(const StatedLife& life) {
  if (life.past) return "past";
  return life.longer ? "over " + figure(kLongestTold_years) : figure(life.years.typical);
}

std::string spread_words(const StatedLife& life) {
  if (life.past) return {};
  return figure(life.years.min) + " to " + most_words(life, false);
}

}  // namespace voltwright::advise
