#include "engine/advise/verdict.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/advise/price.h"
#include "engine/advise/wording.h"

namespace voltwright::advise {

namespace {

Holding at_most(double value, double limit) {
  return value <= limit ? Holding::kHolds : Holding::kFallsShort;
}

Verdict shortfall(const Plan& plan, const Trial& trial) {
  const Chance chance = trial.chance();
  const double limit = units::as_fraction(plan.limits.chance_of_shortfall);
  Verdict v{Matter::kShortfall, Holding::kNotKnown, chance.share, limit, "of seasons", "", "", ""};
  const std::string counted = chance_text(chance.events, chance.seasons, chance.low, chance.high);
  if (chance.high <= limit) {
    v.holding = Holding::kHolds;
    v.reason = "Ran short in " + counted + "; accepted are " + percent(limit) + ".";
    v.brief = "carries the plan";
    return v;
  }
  double longest_min = 0.0;
  double blocked_h = 0.0;
  for (const SeasonNote& s : trial.seasons) {
    longest_min = std::max(longest_min, s.longest_short_min);
    blocked_h += s.charge_blocked_h / static_cast<double>(trial.seasons.size());
  }
  if (chance.low > limit) {
    v.holding = Holding::kFallsShort;
    v.reason = "Ran short in " + counted + ", for up to " + duration_text(longest_min) + " at a stretch.";
    v.brief = "short for up to " + duration_text(longest_min);
    if (blocked_h > 1.0) {
      v.brief += ", charging blocked " + duration_text(blocked_h * 60.0);
      v.reason +=
          " Charging was blocked by temperature for " + figure(std::round(blocked_h), "h") + " a season.";
      v.remedy = "A place where the bank stays above " +
                 figure(trial.candidate.chemistry->limits.charge_min_C, "°C") + ", or a heated box.";
    } else {
      v.remedy = "More capacity, more charging, or fewer loads.";
    }
  } else {
    v.reason = "Ran short in " + counted + "; the accepted " + percent(limit) + " lies inside the interval.";
    v.brief = "more seasons would decide";
    v.remedy =
        "About " + figure(static_cast<double>(seasons_to_decide(chance, limit))) + " seasons would decide.";
  }
  return v;
}

Verdict voltage(const Plan& plan, const Trial& trial) {
  // Lead-acid equipment for 12 V is commonly made for 10.5 to 15.5 V; common practice, no source.
  const double scale = units::as_volts(plan.system_voltage) / 12.0;
  const double highest = 15.5 * scale;
  Verdict v{Matter::kVoltage, at_most(trial.highest_V, highest), trial.highest_V, highest, "V", "", "", ""};
  v.reason =
      "The bus stayed between " + figure(trial.lowest_V, "V") + " and " + figure(trial.highest_V, "V") + ".";
  v.brief = figure(trial.highest_V, "V") + " of " + figure(highest, "V");
  if (v.holding == Holding::kFallsShort) {
    v.reason += " Equipment for this system is made for up to " + figure(highest, "V") + ".";
    v.remedy = "Another number of cells in series, or equipment for the wider voltage.";
  }
  return v;
}

Verdict discharge_current(const Trial& trial) {
  const double limit = trial.candidate.figures.continuous_A;
  Verdict v{Matter::kDischargeCurrent,
            at_most(trial.highest_discharge_A, limit),
            trial.highest_discharge_A,
            limit,
            "A",
            "",
            "",
            ""};
  v.reason = "Highest one-minute current " + figure(trial.highest_discharge_A, "A") + " against " +
             figure(limit, "A") + " continuous.";
  v.brief = figure(trial.highest_discharge_A, "A") + " of " + figure(limit, "A");
  if (v.holding == Holding::kFallsShort)
    v.remedy = "More batteries in parallel, or a type for higher current.";
  return v;
}

Verdict start(const Plan& plan, const Trial& trial) {
  const double limit_A = trial.candidate.figures.peak_A;
  const double accepted = units::as_fraction(plan.limits.chance_of_shortfall);
  const Chance failed = trial.start_chance();
  Verdict v{Matter::kStart, Holding::kHolds, trial.highest_surge_A, limit_A, "A", "", "", ""};
  v.reason = "Highest starting current " + figure(trial.highest_surge_A, "A") + " against " +
             figure(limit_A, "A") + " for seconds.";
  v.brief = figure(trial.highest_surge_A, "A") + " at a start";
  if (failed.events == 0) return v;
  v.reason = "A start failed in " + chance_text(failed.events, failed.seasons, failed.low, failed.high) +
             ": " + figure(trial.highest_surge_A, "A") + " drawn, down to " +
             figure(trial.lowest_surge_V, "V") + " at the load or inverter.";
  v.brief = "a start fails, " + figure(trial.lowest_surge_V, "V");
  if (failed.high <= accepted) return v;
  v.holding = failed.low > accepted ? Holding::kFallsShort : Holding::kNotKnown;
  v.remedy = "Thicker or shorter cable, more batteries in parallel, or a soft start.";
  return v;
}

Verdict temperature(const Trial& trial) {
  const cell::CellLimits& limits = trial.candidate.chemistry->limits;
  Verdict v{Matter::kTemperature, Holding::kHolds, trial.coldest_C, limits.discharge_min_C, "°C", "", "", ""};
  v.reason = "The bank was between " + figure(std::round(trial.coldest_C), "°C") + " and " +
             figure(std::round(trial.hottest_C), "°C") + ".";
  v.brief = figure(std::round(trial.coldest_C)) + " to " + figure(std::round(trial.hottest_C), "°C");
  // Where electronics open the circuit, what that costs shows in the shortfall.
  if (trial.candidate.battery->has_protection) return v;
  if (trial.hottest_C > limits.discharge_max_C) {
    v.holding = Holding::kFallsShort;
    v.value = trial.hottest_C;
    v.limit = limits.discharge_max_C;
    v.reason += " Above " + figure(limits.discharge_max_C, "°C") + " it must not be used.";
    v.remedy = "A cooler place.";
  } else if (trial.coldest_C < limits.discharge_min_C) {
    v.holding = Holding::kFallsShort;
    v.reason += " Below " + figure(limits.discharge_min_C, "°C") + " it must not be used.";
    v.remedy = "A warmer place or a heated box.";
  }
  return v;
}

Verdict limited(Matter matter, const units::Ranged& range, double limit, const std::string& unit,
                const std::string& raised) {
  Verdict v{matter, at_most(range.typical, limit), range.typical, limit, unit, "", "", ""};
  if (v.holding == Holding::kHolds) {
    v.reason = figure(range.typical, unit) + " of " + figure(limit, unit) + " allowed.";
    v.brief = figure(range.typical, unit);
  } else {
    v.brief = figure(range.typical - limit, unit) + " over";
    v.reason = figure(range.typical, unit) + " is " + figure(range.typical - limit, unit) + " over.";
    v.remedy = raised + " of " + figure(range.typical, unit) + ".";
  }
  return v;
}

Verdict price(const Plan& plan, const Trial& trial, double limit) {
  const cost::Sum sum = price_of(plan, trial.candidate);
  if (counts_in(plan, sum)) return limited(Matter::kPrice, sum.amount, limit, plan.currency, "A budget");
  Verdict v{Matter::kPrice,
            Holding::kNotKnown,
            std::numeric_limits<double>::quiet_NaN(),
            limit,
            plan.currency,
            "",
            "",
            ""};
  v.reason = "The price is known as " + price_text(plan, sum) + " alone, and " +
             figure(limit, plan.currency) + " are allowed.";
  v.brief = "price not known in " + plan.currency;
  v.remedy = price_remedy(plan, sum, trial.candidate.battery->id);
  return v;
}

Verdict life(const Trial& trial, double limit) {
  const units::Ranged years = trial.life_years();
  Verdict v{Matter::kLife,
            years.typical >= limit ? Holding::kHolds : Holding::kFallsShort,
            years.typical,
            limit,
            "years",
            "",
            "",
            ""};
  const auto whole = [](double y) {
    return y < 2.0 ? figure(std::round(y * 2.0) / 2.0) : figure(std::round(y));
  };
  v.reason = "About " + whole(years.typical) + "\u202Fyears (" + whole(years.min) + " to " +
             whole(years.max) + ") to 80\u202F% of capacity.";
  v.brief = "about " + whole(years.typical) + " of " + figure(limit, "years");
  if (v.holding == Holding::kFallsShort) {
    v.reason += " Asked are " + figure(limit) + ".";
    v.remedy = "Shallower use of a larger bank, a cooler place, or a replacement on the way.";
  }
  return v;
}

}  // namespace

std::vector<Verdict> verdicts_on(const Plan& plan, const Trial& trial) {
  std::vector<Verdict> all;
  all.push_back(shortfall(plan, trial));
  all.push_back(voltage(plan, trial));
  // Lead-acid has no electronic limit: what it can give shows in its voltage and in what it runs short of.
  if (trial.candidate.battery->has_protection) all.push_back(discharge_current(trial));
  if (trial.highest_surge_A > 0.0) all.push_back(start(plan, trial));
  all.push_back(temperature(trial));
  const bank::BankFigures& figures = trial.candidate.figures;
  if (plan.limits.mass) {
    all.push_back(limited(Matter::kMass, figures.mass_kg, units::as_kilograms(*plan.limits.mass), "kg",
                          "A mass limit"));
  }
  if (plan.limits.volume) {
    all.push_back(
        limited(Matter::kSpace, figures.volume_L, units::as_litres(*plan.limits.volume), "L", "A space"));
  }
  if (plan.limits.price && !trial.candidate.fitted_now) {
    all.push_back(price(plan, trial, units::as_money(*plan.limits.price)));
  }
  if (plan.limits.life && !trial.candidate.fitted_now) {
    all.push_back(life(trial, units::as_years(*plan.limits.life)));
  }
  return all;
}

Holding overall(const std::vector<Verdict>& verdicts) {
  Holding result = Holding::kHolds;
  for (const Verdict& v : verdicts) {
    if (v.holding == Holding::kFallsShort) return Holding::kFallsShort;
    if (v.holding == Holding::kNotKnown) result = Holding::kNotKnown;
  }
  return result;
}

const Verdict* decisive(const std::vector<Verdict>& verdicts) {
  for (const Holding wanted : {Holding::kFallsShort, Holding::kNotKnown}) {
    const auto found =
        std::find_if(verdicts.begin(), verdicts.end(), [&](const Verdict& v) { return v.holding == wanted; });
    if (found != verdicts.end()) return &*found;
  }
  return nullptr;
}

std::string name_of(Matter matter) {
  switch (matter) {
    case Matter::kShortfall:
      return "shortfall";
    case Matter::kVoltage:
      return "voltage";
    case Matter::kDischargeCurrent:
      return "discharge current";
    case Matter::kStart:
      return "start";
    case Matter::kTemperature:
      return "temperature";
    case Matter::kMass:
      return "mass";
    case Matter::kSpace:
      return "space";
    case Matter::kPrice:
      return "price";
    case Matter::kLife:
      return "life";
  }
  return "";
}

std::string name_of(Holding holding) {
  switch (holding) {
    case Holding::kHolds:
      return "holds";
    case Holding::kFallsShort:
      return "falls short";
    case Holding::kNotKnown:
      return "not known";
  }
  return "";
}

}  // namespace voltwright::advise
