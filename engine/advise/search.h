#pragma once
// Which candidates go through how many seasons. The schedule depends on the results alone, never on timing.
#include <functional>
#include <vector>

#include "engine/advise/recommendation.h"

namespace voltwright::advise {

/// Runs work(i) for i in [0, count), in any order and possibly at the same time; returns when all are done.
using Executor = std::function<void(std::size_t count, const std::function<void(std::size_t)>& work)>;

/// Told after each batch: seasons done, seasons planned, candidates still in the race.
using Progress = std::function<void(int done, int planned, int in_race)>;

/// Takes every candidate through seasons in growing batches. After each batch a candidate leaves the race
/// when the interval of its shortfall lies wholly above the accepted chance, when 20 seasons are done and it
/// misses a limit of mass, space, price or voltage anyway, or when a smaller bank of the same battery ran
/// through 20 seasons without a shortfall. The bank fitted now runs at most 20 seasons. What left early keeps
/// its fewer seasons.
std::vector<Trial> prove(const Plan& plan, const Proving& proving, const std::vector<Candidate>& candidates,
                         const Executor& executor, const Progress& progress);

}  // namespace voltwright::advise
