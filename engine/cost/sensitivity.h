#pragma once
// Which assumption moves the cost of a delivered kilowatt-hour, and whether it turns a ranking.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/cost/life_cycle.h"

namespace voltwright::cost {

enum class Input {
  kPrice,
  kLife,
  kLifeLeft,
  kDelivered,
  kScrap,
  kUpkeep,
  kDiscountRate,
  kSourcePrice,
  kFuelForMass,
  kFuelPrice,
};

/// True for what belongs to one bank, false for the terms, which move every bank.
bool is_of_one_bank(Input input);

/// An input with its spread.
struct Assumption {
  Input input = Input::kPrice;
  std::size_t source = 0;  // of kSourcePrice: which of Terms::sources
  std::string name;        // "price", "life", "price of mains energy"
  std::string unit;        // "EUR", "years", "EUR/kWh"
  units::Ranged value;
};

/// Every assumption of a bank and its terms, those without a spread included.
std::vector<Assumption> assumptions_of(const PricedBank& bank, const Terms& terms);

/// One bar of the tornado: the cost of a delivered kWh with this input at its ends and all others typical.
struct Bar {
  Assumption assumption;
  double cost_at_least = 0.0;
  double cost_at_greatest = 0.0;
  double swing = 0.0;  // the greater distance from the typical cost, >= 0
};

struct Tornado {
  double typical = 0.0;   // cost per delivered kWh
  std::vector<Bar> bars;  // greatest swing first; inputs without effect have 0
  /// The typical cost and the root of the sum of squares of what each input takes off or adds: the band if
  /// the inputs err independently.
  units::Ranged likely;

  /// The input that moves most, null if none moves anything.
  const Bar* decisive() const { return bars.empty() || bars.front().swing <= 0.0 ? nullptr : &bars.front(); }
};

/// Costs per delivered kWh; the problems of problems_of() otherwise.
base::Result<Tornado> tornado(const PricedBank& bank, const Terms& terms);

enum class Whose { kFirst, kSecond, kBoth };

/// What one input does to the ranking of two banks.
struct Turn {
  Whose whose = Whose::kBoth;
  Assumption assumption;
  double gap_at_least = 0.0;     // cost of the second bank less that of the first
  double gap_at_greatest = 0.0;  // the same
  double swing = 0.0;            // greatest change of the gap
  /// The value at which both cost the same, if that lies within the spread.
  std::optional<double> even_at;
};

struct Ranking {
  double first = 0.0;       // typical cost per delivered kWh
  double second = 0.0;      // the same
  std::vector<Turn> turns;  // greatest swing first

  double gap() const { return second - first; }
  bool flips() const;
  /// The input that moves the gap most, null if none moves it.
  const Turn* decisive() const {
    return turns.empty() || turns.front().swing <= 0.0 ? nullptr : &turns.front();
  }
};

/// Inputs of one bank are moved alone; the terms and the energy delivered, which follows from the same loads,
/// move both banks: the energy by the same share. Problems of both banks otherwise.
base::Result<Ranking> ranking_of(const PricedBank& first, const PricedBank& second, const Terms& terms);

}  // namespace voltwright::cost
