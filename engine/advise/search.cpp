#include "engine/advise/search.h"

#include <algorithm>

namespace voltwright::advise {

namespace {

constexpr int kFirstBatch = 4;
constexpr int kEnoughForDisplay = 20;
constexpr int kBatch = 16;

bool misses_a_hard_limit(const Plan& plan, const Trial& trial) {
  for (const Verdict& v : verdicts_on(plan, trial)) {
    if (v.matter != Matter::kShortfall && v.holding == Holding::kFallsShort) return true;
  }
  return false;
}

bool smaller_is_enough(const Trial& trial, const std::vector<Trial>& trials, const Plan& plan) {
  return std::any_of(trials.begin(), trials.end(), [&](const Trial& other) {
    return other.candidate.battery == trial.candidate.battery && !other.candidate.fitted_now &&
           other.candidate.count() + 1 < trial.candidate.count() && other.count() >= kEnoughForDisplay &&
           other.chance().events == 0 && !misses_a_hard_limit(plan, other);
  });
}

bool stays(const Plan& plan, const Trial& trial, const std::vector<Trial>& trials) {
  const Chance chance = trial.chance();
  if (chance.low > units::as_fraction(plan.limits.chance_of_shortfall)) return false;
  if (chance.seasons < kEnoughForDisplay) return true;
  return !trial.candidate.fitted_now && !misses_a_hard_limit(plan, trial) &&
         !smaller_is_enough(trial, trials, plan);
}

}  // namespace

std::vector<Trial> prove(const Plan& plan, const Proving& proving, const std::vector<Candidate>& candidates,
                         const Executor& executor, const Progress& progress) {
  std::vector<Trial> trials;
  trials.reserve(candidates.size());
  for (const Candidate& candidate : candidates) {
    trials.emplace_back();
    trials.back().candidate = candidate;
  }
  std::vector<std::size_t> race(trials.size());
  for (std::size_t i = 0; i < race.size(); ++i) race[i] = i;
  int done = 0;
  while (done < plan.seasons && !race.empty()) {
    const int next_stop =
        done == 0 ? kFirstBatch : (done < kEnoughForDisplay ? kEnoughForDisplay : done + kBatch);
    const int count = std::min(plan.seasons, next_stop) - done;
    std::vector<const Candidate*> running;
    for (const std::size_t i : race) running.push_back(&trials[i].candidate);
    std::vector<std::vector<season::Fared>> results(static_cast<std::size_t>(count));
    executor(results.size(), [&](std::size_t k) {
      results[k] = proving.run_season(running, static_cast<std::uint64_t>(done) + k);
    });
    for (std::size_t k = 0; k < results.size(); ++k) {
      for (std::size_t j = 0; j < race.size(); ++j) {
        trials[race[j]].add(static_cast<std::uint64_t>(done) + k, results[k][j]);
      }
    }
    done += count;
    std::vector<std::size_t> left;
    for (const std::size_t i : race) {
      if (stays(plan, trials[i], trials)) left.push_back(i);
    }
    race = std::move(left);
    if (progress) progress(done, plan.seasons, static_cast<int>(race.size()));
  }
  return trials;
}

}  // namespace voltwright::advise
