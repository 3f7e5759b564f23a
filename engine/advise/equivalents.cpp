#include "engine/advise/equivalents.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "engine/ageing/life.h"
#include "engine/bank/group.h"

namespace voltwright::advise {

namespace {

constexpr double kRated_C = 25.0;
constexpr double kKilo = 1e-3;
/// Typical figures are known to a few percent: 1 % short still counts as equal.
constexpr double kEqual = 0.01;

const cell::Chemistry* chemistry_of(const bank::Battery& battery,
                                    std::span<const cell::Chemistry> chemistries) {
  const auto found = std::find_if(chemistries.begin(), chemistries.end(),
                                  [&](const cell::Chemistry& c) { return c.id == battery.chemistry; });
  return found == chemistries.end() ? nullptr : &*found;
}

double short_circuit_of(const BankOnHand& bank) {
  const cell::Tables tables = cell::make_tables(*bank.chemistry);
  const auto parameters = bank::assemble(*bank.battery, *bank.chemistry, tables, bank.layout, 0.0, 1.0, 1.0);
  return bank::prospective_short_circuit_A(parameters, kRated_C, 0.0);
}

units::Ranged cycles_of(const cell::LifeFigures& life, double depth) {
  return {ageing::cycles_at_depth(life, depth, ageing::Spread::kShortest),
          ageing::cycles_at_depth(life, depth, ageing::Spread::kTypical),
          ageing::cycles_at_depth(life, depth, ageing::Spread::kLongest)};
}

/// The voltage of the house system a bank stands in.
double system_V(const BankOnHand& bank) { return bank.battery->system_V * bank.layout.in_series; }

/// The same batteries in the same number, neither worn: nothing to tell of.
bool same_bank(const BankOnHand& a, const BankOnHand& b) {
  return a.battery->id == b.battery->id && a.layout.in_parallel == b.layout.in_parallel &&
         a.layout.lost_capacity == b.layout.lost_capacity;
}

/// The number side by side that equals the target, or why there is none.
struct Choice {
  bool found = false;
  Compared compared;
  std::string why;
};

std::string amount(double value, Measure measure) { return figure(value, std::string(unit_of(measure))); }

Choice choose(const SwapQuestion& question, BankOnHand bank, double target) {
  Choice choice;
  const Measure measure = question.measure;
  for (int count = 1; count <= question.most_in_parallel; ++count) {
    bank.layout.in_parallel = count;
    Compared compared = compare(question, bank, question.new_depth);
    compared.value = value_of(compared, measure);
    compared.share = compared.value / target;
    if (must_reach(measure)) {
      if (compared.share < 1.0 - kEqual) {
        choice.why = std::to_string(count) + " side by side reach " + amount(compared.value, measure) +
                     " of " + amount(target, measure);
        continue;
      }
      choice.found = true;
      choice.compared = compared;
      return choice;
    }
    if (compared.share > 1.0 + kEqual) {
      if (count == 1) {
        choice.why = "one takes " + amount(compared.value, measure) + " of " + amount(target, measure);
      }
      break;
    }
    choice.found = true;
    choice.compared = compared;
  }
  return choice;
}

void put_in_order(std::vector<Compared>& found, Measure measure) {
  std::stable_sort(found.begin(), found.end(), [measure](const Compared& a, const Compared& b) {
    return must_reach(measure) ? a.share < b.share : a.run.load_Wh > b.run.load_Wh;
  });
}

}  // namespace

std::string_view name_of(Measure measure) {
  switch (measure) {
    case Measure::kUsableEnergy:
      return "usable energy";
    case Measure::kMass:
      return "mass";
    case Measure::kVolume:
      return "room";
    case Measure::kPrice:
      return "price";
    case Measure::kLifeEnergy:
      return "energy over its life";
    case Measure::kStartingCurrent:
      break;
  }
  return "starting current";
}

std::string_view unit_of(Measure measure) {
  switch (measure) {
    case Measure::kUsableEnergy:
      return "Wh";
    case Measure::kMass:
      return "kg";
    case Measure::kVolume:
      return "L";
    case Measure::kPrice:
      return "USD";
    case Measure::kLifeEnergy:
      return "kWh";
    case Measure::kStartingCurrent:
      break;
  }
  return "A";
}

bool must_reach(Measure measure) {
  return measure == Measure::kUsableEnergy || measure == Measure::kLifeEnergy ||
         measure == Measure::kStartingCurrent;
}

double value_of(const Compared& compared, Measure measure) {
  switch (measure) {
    case Measure::kUsableEnergy:
      return compared.run.bank_Wh;
    case Measure::kMass:
      return compared.figures.mass_kg.typical;
    case Measure::kVolume:
      return compared.figures.volume_L.typical;
    case Measure::kPrice:
      return compared.figures.price.typical;
    case Measure::kLifeEnergy:
      return compared.life_Wh.typical * kKilo;
    case Measure::kStartingCurrent:
      break;
  }
  return compared.figures.peak_A;
}

Compared compare(const SwapQuestion& question, const BankOnHand& bank, std::optional<double> depth) {
  Compared compared;
  compared.bank = bank;
  compared.figures = bank::bank_figures(*bank.battery, bank.layout);
  compared.depth = depth.value_or(bank.chemistry->usable_depth);
  RuntimeConditions conditions;
  conditions.temperature_C = question.temperature_C;
  conditions.depth = compared.depth;
  conditions.cut_off_V = question.cut_off_V;
  compared.run = run_down(bank, question.load, conditions);
  compared.used_depth = std::clamp(1.0 - compared.run.end_charge, 0.0, compared.depth);
  // Worn-out is where 80 % of the capacity is left: a bank that is there already has no cycles to come.
  constexpr double kWornBy = 0.2;
  const double left = std::max(1.0 - bank.layout.lost_capacity / kWornBy, 0.0);
  const units::Ranged cycles = cycles_of(bank.chemistry->life, compared.used_depth);
  compared.cycles = {cycles.min * left, cycles.typical * left, cycles.max * left};
  const double usable_Wh = compared.run.bank_Wh;
  compared.life_Wh = {compared.cycles.min * usable_Wh, compared.cycles.typical * usable_Wh,
                      compared.cycles.max * usable_Wh};
  compared.short_circuit_A = short_circuit_of(bank);
  return compared;
}

Equivalents equivalents_of(const SwapQuestion& question, std::span<const cell::Chemistry> chemistries,
                           std::span<const bank::Battery> batteries) {
  Equivalents answer;
  const Measure measure = question.measure;
  answer.incumbent = compare(question, question.incumbent, question.incumbent_depth);
  answer.incumbent.value = value_of(answer.incumbent, measure);
  answer.target = answer.incumbent.value;
  if (measure == Measure::kVolume && question.tray_L > 0.0) answer.target = question.tray_L;
  if (answer.target > 0.0) answer.incumbent.share = answer.incumbent.value / answer.target;
  if (answer.target <= 0.0) return answer;
  const double wanted_V = system_V(question.incumbent);
  for (const bank::Battery& battery : batteries) {
    const cell::Chemistry* chemistry = chemistry_of(battery, chemistries);
    if (chemistry == nullptr || !chemistry->simulated || battery.system_V > wanted_V) continue;
    const int in_series = static_cast<int>(std::lround(wanted_V / battery.system_V));
    if (in_series > battery.max_in_series) {
      answer.left_out.push_back({battery.id, std::to_string(in_series) + " in series where " +
                                                 std::to_string(battery.max_in_series) + " are permitted"});
      continue;
    }
    BankOnHand bank{&battery, chemistry, {}};
    bank.layout.in_series = in_series;
    const Choice choice = choose(question, bank, answer.target);
    if (!choice.found) {
      answer.left_out.push_back({battery.id, choice.why});
    } else if (!same_bank(choice.compared.bank, question.incumbent)) {
      answer.found.push_back(choice.compared);
    }
  }
  put_in_order(answer.found, measure);
  return answer;
}

std::vector<Compared> best_of_each_chemistry(const std::vector<Compared>& found) {
  std::vector<Compared> best;
  for (const Compared& one : found) {
    const bool known = std::any_of(best.begin(), best.end(), [&](const Compared& other) {
      return other.bank.chemistry->id == one.bank.chemistry->id;
    });
    if (!known) best.push_back(one);
  }
  return best;
}

}  // namespace voltwright::advise
