// Rank among what others state of batteries of the same chemistry.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;
using units::percent;

constexpr std::size_t kLeastRows = 8;   // fewer do not make a rank
constexpr double kRounding = 1.02;      // of the outermost figure that others state
constexpr double kCommon = 0.95;        // share of the rows that counts as common
constexpr double kCyclesBeyond = 1.25;  // times the 95th percentile: 10,000 for iron-phosphate
constexpr double kPriceSpread = 1.25;   // prices move within a year
constexpr int kPriceYears = 1;          // rows of other years do not tell a price
constexpr double kWattHoursPerKilowattHour = 1e3;
constexpr double kClassSpread = 0.25;  // 12 and 12.8 V are one class of voltage

/// What lies outside says something only on some sides.
enum class Beyond { kNothing, kNote, kDoubt };

struct RankRule {
  const char* id;
  const char* words;
  const char* unit;
  StatedFigure figure_of;
  std::optional<double> claimed;
  std::string working;
  Beyond below;
  Beyond above;
  const char* say_below;
  const char* say_above;
};

bool same_class(const StatedBattery& stated, const Subject& s) {
  return s.sheet.nominal_V && std::fabs(stated.nominal_V / *s.sheet.nominal_V - 1.0) < kClassSpread;
}

struct Peers {
  Sample all;
  Sample ranked;  // of the same voltage where those are enough, else all
  bool by_voltage = false;
};

Peers peers_of(const Subject& s, StatedFigure figure_of) {
  std::vector<double> all;
  std::vector<double> near;
  for (const StatedBattery& stated : s.evidence.stated) {
    if (s.kind == nullptr || stated.kind != s.kind->chemistry.id) continue;
    const std::optional<double> value = figure_of(stated);
    if (!value) continue;
    all.push_back(*value);
    if (same_class(stated, s)) near.push_back(*value);
  }
  const bool by_voltage = near.size() >= kLeastRows;
  Sample whole(all);
  return {whole, by_voltage ? Sample(std::move(near)) : whole, by_voltage};
}

std::string rank_words(const Peers& peers, double claimed) {
  const double share = peers.ranked.share_below(claimed);
  return percent(share) + " of " + std::to_string(peers.ranked.size()) + " stated batteries" +
         (peers.by_voltage ? " of this voltage" : "") + " lie below";
}

/// A C-rate is written 0.5C, without a space.
std::string with_unit(double value, const std::string& unit) {
  if (unit.empty()) return figure(value);
  return unit == "C" ? figure(value) + unit : figure(value, unit);
}

void judge(const RankRule& rule, double claimed, const Peers& peers, double upper, Finding& f) {
  const double lower = peers.all.quantile(0.0) / kRounding;
  f.least = peers.all.quantile(0.0);
  f.most = upper;
  const auto outside = [&](Beyond kind, const char* say) {
    f.severity = kind == Beyond::kDoubt ? Severity::kDoubt : Severity::kNote;
    f.say = say;
  };
  if (claimed < lower && rule.below != Beyond::kNothing) {
    outside(rule.below, rule.say_below);
  } else if (claimed > upper && rule.above != Beyond::kNothing) {
    outside(rule.above, rule.say_above);
  } else if (claimed > peers.all.quantile(kCommon) && rule.above != Beyond::kNothing) {
    f.severity = Severity::kNote;
    f.say = "Only few state that much. It can be true; ask for the test behind it.";
  } else {
    f.severity = Severity::kHolds;
    f.say = "Others state the like.";
  }
}

void rank(const Subject& s, const RankRule& rule, double upper_factor, double upper_quantile,
          Findings& findings) {
  if (!rule.claimed || s.kind == nullptr) return;
  const double claimed = *rule.claimed;
  const Peers peers = peers_of(s, rule.figure_of);
  if (peers.all.size() < kLeastRows) return;
  const double upper = upper_factor * peers.all.quantile(upper_quantile);
  if (claimed > upper && rule.above == Beyond::kNothing) return;  // judged by another rule
  Finding f;
  f.id = rule.id;
  f.unit = rule.unit;
  f.claim = std::string(rule.words) + " " + with_unit(claimed, rule.unit);
  f.number = claimed;
  f.source = s.evidence.stated_source;
  f.working = rule.working + (rule.working.empty() ? "" : "; ") + rank_words(peers, claimed);
  judge(rule, claimed, peers, upper, f);
  findings.push_back(std::move(f));
}

std::optional<double> rate_of(const Subject& s, const std::optional<double>& current_A,
                              const std::optional<double>& per_h) {
  if (current_A && s.sheet.capacity_Ah) return *current_A / *s.sheet.capacity_Ah;
  return per_h;
}

std::string rate_working(const Subject& s, const std::optional<double>& current_A) {
  if (!current_A || !s.sheet.capacity_Ah) return {};
  return figure(*current_A, "A") + " / " + figure(*s.sheet.capacity_Ah, "Ah") + " = " +
         figure(*current_A / *s.sheet.capacity_Ah) + "C";
}

/// Too heavy or too large for what it is said to hold; too much is judged with the density of cells.
void rank_densities(const Subject& s, Findings& findings) {
  constexpr const char* kHeavy =
      "It is heavier for its energy than any other on record. The case may be large, or there may be fewer "
      "or other cells inside than you think: ask for their number and kind, and have the capacity tested.";
  constexpr const char* kLarge =
      "It takes more room for its energy than any other on record. Ask what is inside.";
  const bool heavy_measured = s.energy_Wh && s.sheet.mass_kg;
  if (heavy_measured) {
    rank(s,
         {"usual.energy_per_mass", "Energy per mass", "Wh/kg", stated_Wh_per_kg, s.Wh_per_kg, "",
          Beyond::kDoubt, Beyond::kNothing, kHeavy, ""},
         kRounding, 1.0, findings);
  }
  if (s.energy_Wh && s.volume_L) {
    rank(s,
         {"usual.energy_per_volume", "Energy per volume", "Wh/L", stated_Wh_per_L, s.Wh_per_L, "",
          Beyond::kNote, Beyond::kNothing, kLarge, ""},
         kRounding, 1.0, findings);
  }
  if (s.sheet.mass_kg && s.volume_L) {
    const double density = *s.sheet.mass_kg / *s.volume_L;
    rank(s,
         {"usual.density", "Density", "kg/L", stated_kg_per_L, density,
          figure(*s.sheet.mass_kg, "kg") + " / " + figure(*s.volume_L, "L") + " = " + figure(density, "kg/L"),
          Beyond::kNote, Beyond::kDoubt,
          "It is light for its size: much of the case is empty. That is no fault, only room to pay for.",
          "It is heavier for its size than any other on record: mass or size cannot both be right for such "
          "cells. Ask, and weigh one."},
         1.1, 1.0, findings);
  }
}

void rank_currents(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  constexpr const char* kMuch =
      "Nobody else states so much current for the capacity. Ask for how long it may flow, at what "
      "temperature, and what the protection and the terminals are rated for.";
  rank(s,
       {"usual.continuous", "Continuous", "C", stated_continuous_per_h,
        rate_of(s, sheet.continuous_A, sheet.continuous_per_h), rate_working(s, sheet.continuous_A),
        Beyond::kNothing, Beyond::kDoubt, "", kMuch},
       kRounding, 1.0, findings);
  rank(s,
       {"usual.peak", "Peak", "C", stated_peak_per_h, rate_of(s, sheet.peak_A, sheet.peak_per_h),
        rate_working(s, sheet.peak_A), Beyond::kNothing, Beyond::kDoubt, "", kMuch},
       kRounding, 1.0, findings);
  rank(s,
       {"usual.charge", "Charge", "C", stated_charge_per_h, rate_of(s, sheet.charge_A, sheet.charge_per_h),
        rate_working(s, sheet.charge_A), Beyond::kNothing, Beyond::kDoubt, "",
        "Nobody else states so much charge current for the capacity. Ask for the temperature it holds at; "
        "fast charging costs life and, in the cold, does harm."},
       kRounding, 1.0, findings);
}

void rank_cycles(const Subject& s, Findings& findings) {
  rank(s,
       {"usual.cycles", "Cycles", "", stated_cycles, s.sheet.cycles, "", Beyond::kNothing, Beyond::kDoubt, "",
        "Hardly anybody states so many. A test of so many cycles takes years: ask for the report, with "
        "depth, temperature, rate and end of life."},
       kCyclesBeyond, kCommon, findings);
}

void rank_price(const Subject& s, Findings& findings) {
  if (!s.sheet.price || s.sheet.currency != "USD" || !s.energy_Wh || s.kind == nullptr) return;
  int newest = 0;
  for (const StatedBattery& stated : s.evidence.stated) {
    if (stated.kind == s.kind->chemistry.id && stated.price_USD) newest = std::max(newest, stated.year);
  }
  const int year = s.sheet.year.value_or(newest);
  std::vector<double> prices;
  for (const StatedBattery& stated : s.evidence.stated) {
    if (stated.kind != s.kind->chemistry.id || std::abs(stated.year - year) > kPriceYears) continue;
    if (const auto price = stated_USD_per_kWh(stated)) prices.push_back(*price);
  }
  if (prices.size() < kLeastRows) return;
  const Sample sample(std::move(prices));
  const double energy_kWh = *s.energy_Wh / kWattHoursPerKilowattHour;
  const double claimed = *s.sheet.price / energy_kWh;
  Finding f;
  f.id = "usual.price";
  f.claim = "Price " + figure(*s.sheet.price, "USD");
  f.number = claimed;
  f.unit = "USD/kWh";
  f.least = sample.quantile(0.0) / kPriceSpread;
  f.most = sample.quantile(1.0) * kPriceSpread;
  f.source = s.evidence.stated_source + ", offers of " + std::to_string(year - kPriceYears) + " to " +
             std::to_string(year + kPriceYears);
  f.working = figure(*s.sheet.price, "USD") + " / " + figure(energy_kWh, "kWh") + " = " +
              figure(claimed, "USD/kWh") + "; " + percent(sample.share_below(claimed)) + " of " +
              std::to_string(sample.size()) + " offers lie below";
  if (claimed < *f.least) {
    f.severity = Severity::kDoubt;
    f.say = "It costs less than any offer on record, " + figure(sample.quantile(0.0), "USD/kWh") +
            ". Ask which cells are inside, new or used, and have the capacity tested before you pay.";
  } else if (claimed > *f.most) {
    f.severity = Severity::kNote;
    f.say =
        "It costs more than any offer on record. Ask what is given for it: warranty, heater, certificates.";
  } else {
    f.severity = Severity::kHolds;
    f.say = "Others ask the like.";
  }
  findings.push_back(std::move(f));
}

}  // namespace

void check_usual(const Subject& subject, Findings& findings) {
  if (subject.sheet.level == Level::kCell) return;  // the rows are finished batteries
  rank_densities(subject, findings);
  rank_currents(subject, findings);
  rank_cycles(subject, findings);
  rank_price(subject, findings);
}

}  // namespace voltwright::claims
