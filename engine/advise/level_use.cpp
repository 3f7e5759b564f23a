#include "engine/advise/level_use.h"

#include <algorithm>
#include <cmath>

namespace voltwright::advise {

LevelEffort effort_for(const Plan& plan, double season_years) {
  constexpr double kBudget_years = 16.0;  // of each level
  constexpr int kLeast = 8;
  constexpr int kMost = 64;
  LevelEffort effort;
  const double fit = season_years > 0.0 ? kBudget_years / season_years : kMost;
  const int most = fit < kMost ? static_cast<int>(fit) : kMost;
  effort.most = std::min(plan.seasons, std::clamp(most, kLeast, kMost));
  effort.first = std::min(effort.first, effort.most);
  return effort;
}

std::vector<double> level_shares(double present) {
  constexpr double kStep = 0.05;
  constexpr double kLowest = 0.6;
  constexpr double kAtLeastDown = 0.2;
  constexpr double kFloor = 0.1;
  const double floor = std::max(kFloor, std::min(kLowest, present - kAtLeastDown));
  std::vector<double> shares = {present};
  const int below = static_cast<int>(std::ceil(present / kStep - 1e-9)) - 1;
  for (int i = below; i > 0 && kStep * i > floor - 0.5 * kStep; --i) shares.push_back(kStep * i);
  return shares;
}

double present_share(const Candidate& candidate) {
  return (1.0 - candidate.layout.lost_capacity) * (1.0 - candidate.layout.weakest_below);
}

LevelRunner::LevelRunner(const Plan& plan, const Proving& proving, const Candidate& candidate,
                         const LevelEffort& effort, Executor executor, LevelProgress progress)
    : plan_(&plan),
      proving_(&proving),
      candidate_(&candidate),
      effort_(effort),
      executor_(std::move(executor)),
      progress_(std::move(progress)) {}

Candidate LevelRunner::at(const Level& level) const {
  Candidate candidate = *candidate_;
  candidate.layout.lost_capacity = 1.0 - level.capacity / (1.0 - candidate.layout.weakest_below);
  candidate.layout.resistance_factor = level.resistance_factor;
  candidate.figures = bank::bank_figures(*candidate.battery, candidate.layout);
  return candidate;
}

void LevelRunner::run(std::vector<Level>& levels, const std::vector<std::size_t>& which, int from,
                      int to) const {
  std::vector<Candidate> banks;
  banks.reserve(which.size());
  for (const std::size_t i : which) banks.push_back(at(levels[i]));
  std::vector<const Candidate*> pointers;
  for (const Candidate& bank : banks) pointers.push_back(&bank);
  std::vector<std::vector<season::Fared>> fared(static_cast<std::size_t>(std::max(0, to - from)));
  executor_(fared.size(), [&](std::size_t k) {
    fared[k] = proving_->run_season(pointers, static_cast<std::uint64_t>(from) + k);
  });
  for (std::vector<season::Fared>& season : fared) {
    for (std::size_t j = 0; j < which.size(); ++j) {
      Level& level = levels[which[j]];
      level.chance =
          chance_of(level.chance.events + (season[j].ran_short() ? 1 : 0), level.chance.seasons + 1);
      if (static_cast<int>(level.seasons.size()) < effort_.first)
        level.seasons.push_back(std::move(season[j].exposure));
    }
  }
}

std::vector<std::size_t> LevelRunner::undecided(const std::vector<Level>& levels) const {
  const double accepted = units::as_fraction(plan_->limits.chance_of_shortfall);
  const auto clean = [&](std::size_t i) { return levels[i].chance.events == 0; };
  // What carried the plan with less capacity carries it with more.
  std::size_t from = 0;
  while (from + 1 < levels.size() && clean(from) && clean(from + 1)) ++from;
  std::vector<std::size_t> open;
  int fewest = effort_.most;
  for (std::size_t i = from; i < levels.size(); ++i) {
    if (levels[i].chance.low > accepted || levels[i].chance.seasons >= effort_.most) continue;
    open.push_back(i);
    fewest = std::min(fewest, levels[i].chance.seasons);
  }
  std::erase_if(open, [&](std::size_t i) { return levels[i].chance.seasons != fewest; });
  return open;
}

Level LevelRunner::present() const {
  std::vector<Level> levels(1);
  levels[0].capacity = present_share(*candidate_);
  levels[0].resistance_factor = candidate_->layout.resistance_factor;
  levels[0].chance = chance_of(0, 0);
  run(levels, {0}, 0, effort_.first);
  return levels[0];
}

std::vector<Level> LevelRunner::all(const Level& top, const ResistanceAt& resistance) const {
  std::vector<Level> levels = {top};
  std::vector<std::size_t> lower;
  const std::vector<double> shares = level_shares(top.capacity);
  for (std::size_t i = 1; i < shares.size(); ++i) {
    Level level;
    level.capacity = shares[i];
    level.resistance_factor = resistance(shares[i]);
    level.chance = chance_of(0, 0);
    levels.push_back(level);
    lower.push_back(i);
  }
  if (progress_) progress_(effort_.first, effort_.most);
  run(levels, lower, 0, effort_.first);
  constexpr int kBatch = 8;
  for (std::vector<std::size_t> open = undecided(levels); !open.empty(); open = undecided(levels)) {
    const int done = levels[open.front()].chance.seasons;
    if (progress_) progress_(done, effort_.most);
    run(levels, open, done, std::min(effort_.most, done + kBatch));
  }
  return levels;
}

}  // namespace voltwright::advise
