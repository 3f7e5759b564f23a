#pragma once
// What a plan asks of a bank, and whether the bank carries it, at one share of its capacity after another.
#include <functional>
#include <vector>

#include "engine/advise/interval.h"
#include "engine/advise/search.h"
#include "engine/advise/trial.h"
#include "engine/ageing/year_of_use.h"

namespace voltwright::advise {

/// The bank with so much of its capacity left, through some seasons.
struct Level {
  double capacity = 1.0;                  // share of new
  double resistance_factor = 1.0;         // of the cells against new
  std::vector<ageing::Exposure> seasons;  // what the first few asked of the bank, in order of their number
  Chance chance;                          // of a shortfall, over all that were run
};

/// How the life's seasons are shared out. All levels run `first`; then those whose interval does not lie
/// wholly above the accepted chance run on to `most`, but for those above a level without a shortfall.
struct LevelEffort {
  int first = 4;
  int most = 16;
};

/// Seasons that fit a life into seconds: first 4, most 8 to 64, by the length of a season, at most those of
/// the plan.
LevelEffort effort_for(const Plan& plan, double season_years);

/// The shares at which the seasons are run: from the present one down by 5 % to 60 %, or to 20 % below the
/// present, at least 10 %; falling.
std::vector<double> level_shares(double present);

/// Resistance against new of the bank at a share of its capacity.
using ResistanceAt = std::function<double(double capacity)>;

/// Told as seasons are done: how many of how many.
using LevelProgress = std::function<void(int done, int planned)>;

/// A bank on its way down. The candidate is as it is now; its layout's loss is replaced.
class LevelRunner {
 public:
  /// The plan, the proving and the candidate must outlive this.
  LevelRunner(const Plan& plan, const Proving& proving, const Candidate& candidate, const LevelEffort& effort,
              Executor executor, LevelProgress progress);

  /// The present level alone, `first` seasons.
  Level present() const;

  /// All levels, beginning with `top`, which came from present(), falling.
  std::vector<Level> all(const Level& top, const ResistanceAt& resistance) const;

 private:
  void run(std::vector<Level>& levels, const std::vector<std::size_t>& which, int from, int to) const;
  /// Those of the open levels that have run the fewest seasons; empty when all is decided or run.
  std::vector<std::size_t> undecided(const std::vector<Level>& levels) const;
  Candidate at(const Level& level) const;

  const Plan* plan_;
  const Proving* proving_;
  const Candidate* candidate_;
  LevelEffort effort_;
  Executor executor_;
  LevelProgress progress_;
};

/// Share of new that the bank can give now: what is lost and the weakest cell.
double present_share(const Candidate& candidate);

}  // namespace voltwright::advise
