#pragma once
// Life by cycles against depth and by temperature, as an ageing law.
#include <string_view>

#include "engine/ageing/law.h"
#include "engine/ageing/life.h"

namespace voltwright::ageing {

/// What goes with every figure of this law. Banks that lasted 6.2 and 5.1 years were given more than 15 and
/// more than 9 by such counting (Schiffer et al. 2007).
inline constexpr std::string_view kDepthLawCaution =
    "Optimistic: cycles counted by depth know nothing of recharges that stop short, layered acid or weeks "
    "half "
    "empty. Banks that lasted 6.2 and 5.1 years were promised more than 15 and 9 by such counting.";

/// Miner's sum over cycles(depth) [Miner 1945] and a calendar rate that doubles with each `halving_K`, added;
/// wear 1 is a loss of 20 % of the capacity. The loss grows in proportion to wear (assumption: sources state
/// only its end). Constants of a kind: the cycle_life and calendar_life blocks of its catalogue record.
class DepthLaw : public Law {
 public:
  explicit DepthLaw(const cell::LifeFigures& life, Spread spread = Spread::kTypical)
      : life_(life), spread_(spread) {}

  void age(Aged& aged, const Exposure& exposure, double times) const override;

  /// Outside above 40 degC, extrapolated below 15 degC (the published rules are quoted from 15 to 40 degC;
  /// below 10 degC the rate of 10 degC is kept, the safe side) and beyond the longest life on record.
  Reach reach(const Exposure& exposure, const Aged& aged) const override;

 private:
  cell::LifeFigures life_;
  Spread spread_;
};

}  // namespace voltwright::ageing
