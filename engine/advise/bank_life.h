#pragma once
// How long a bank lasts at a plan's use: seasons at one share of capacity after another, ageing between them
// by every law that speaks for its chemistry. Method: docs/method/life_at_use.md.
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/advise/level_use.h"
#include "engine/advise/stated_life.h"
#include "engine/ageing/end_of_life.h"
#include "engine/ageing/life_map.h"
#include "engine/ageing/making_spread.h"
#include "engine/ageing/opinion.h"

namespace voltwright::advise {

/// What the laws know of a chemistry.
struct Speaking {
  std::vector<ageing::Opinion> opinions;              // the first leads where it can
  std::string gap;                                    // which law is missing; empty if none
  double life_spread = ageing::kLifeSpreadIfUnknown;  // coefficient of variation of the lives of like cells
  std::string spread_source;                          // or the assumption, in words
};

/// One law's account of the bank.
struct LawLife {
  std::string id, name, source, caution;
  ageing::Basis basis = ageing::Basis::kLaw;
  ageing::Reach reach = ageing::Reach::kInside;  // the worst on the way to 80 %, or 70 % if worn so far
  bool counted =
      false;  // in the spread between laws: it speaks of rest and swings, inside its data or beyond
  bool leads = false;
  std::vector<ageing::LifeMoment> course;  // of the bank as a whole, from now on
  ageing::LifeEnds ends;                   // years from now; none = not within kLongestLookedFor_years
};

/// A source of doubt: the ends of the life over the typical one, least <= 1 <= most.
struct Doubt {
  std::string of;  // "between laws", "between cells", "between years"
  double least = 1.0, most = 1.0;
};

struct BankLife {
  double present = 1.0;  // share of the new capacity
  double season_years = 0.0;
  double cycles_per_year = 0.0;  // full cycles, at the present capacity
  std::vector<Level> levels;
  std::vector<LawLife> laws;
  std::string gap, spread_source;
  double life_spread = 0.0;
  double weakest_life = 1.0;  // median life of the bank over that of its mean cell
  /// Years from now, all doubt together. kLongestLookedFor_years = that or longer.
  units::Ranged at_80, at_70, plan;
  bool plan_ends = false;   // the plan's end was found above the lowest level of capacity
  bool carries_now = true;  // within the accepted chance
  std::vector<Doubt> doubts;
  std::vector<ageing::Gain> gains;  // by the leading law
  const LawLife* leading() const;   // null without laws
  /// The doubt with the widest ends, which moves the dates most; null without laws.
  const Doubt* widest() const;
};

struct LifeQuestion {
  const Plan* plan = nullptr;
  std::span<const season::LegSky> skies;
  const Proving* proving = nullptr;
  Candidate candidate;
  Speaking speaking;
  int draws = 400;         // of cells
  int weather_lives = 32;  // lives with years drawn from the seasons
};

/// @pre plan, proving and the candidate's battery and chemistry are not null, the chemistry is simulated, and
/// the plan has a leg. Depends on the plan's seed alone, not on the executor.
BankLife bank_life(const LifeQuestion& question, const Executor& executor, const LevelProgress& progress);

/// The use of a year at a level between others: `levels` falling, `rest` once a year. `season`: one of the
/// level's seasons all the time; none: all of them in turn.
ageing::YearOfUse year_at(std::span<const Level> levels, double capacity, double per_year,
                          const ageing::Exposure& rest, std::optional<std::size_t> season = std::nullopt);

}  // namespace voltwright::advise
