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

/// Takes candidates through seasons until the plan's number is reached or more would not change the answer.
/// All run 4 seasons; then up to 12 those whose shortfall interval does not lie wholly above the accepted
/// chance and of whose battery no smaller bank ran without a shortfall; then the whole number the most
/// preferred of each chemistry and the three most preferred of all, if they miss no other limit. If none of
/// these holds, all that are still open go on. What left early keeps its fewer seasons.
std::vector<Trial> prove(const Plan& plan, const Proving& proving, const std::vector<Candidate>& candidates,
                         const Executor& executor, const Progress& progress);

}  // namespace voltwright::advise
