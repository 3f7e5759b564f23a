#pragma once
// What a bank must hold, and whether it does.
#include <string>
#include <vector>

#include "engine/advise/trial.h"

namespace voltwright::advise {

enum class Holding { kHolds, kFallsShort, kNotKnown };

enum class Matter {
  kShortfall,
  kVoltage,
  kDischargeCurrent,
  kStart,
  kTemperature,
  kMass,
  kSpace,
  kPrice,
  kLife,
};

/// One requirement with its value and limit, in the unit named.
struct Verdict {
  Matter matter = Matter::kShortfall;
  Holding holding = Holding::kHolds;
  double value = 0.0;  // not a number: a price that cannot be turned into the plan's currency
  double limit = 0.0;
  std::string unit;
  std::string reason;  // a sentence
  std::string remedy;  // what would mend or decide it; empty if it holds
  std::string brief;   // the reason in a few words, for a table
};

/// Every verdict on a trial; requirements that the plan does not limit are left out.
std::vector<Verdict> verdicts_on(const Plan& plan, const Trial& trial);

/// Falls short if any does, else not known if any is not, else holds.
Holding overall(const std::vector<Verdict>& verdicts);

/// The verdict to name first: the first that falls short, else the first not known, else none.
const Verdict* decisive(const std::vector<Verdict>& verdicts);

/// Plain name of a requirement: "shortfall", "mass" ...
std::string name_of(Matter matter);
std::string name_of(Holding holding);

}  // namespace voltwright::advise
