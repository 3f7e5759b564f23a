#include "engine/advise/search.h"

#include <algorithm>

namespace voltwright::advise {

namespace {

constexpr int kFirst = 4;    // seasons that every candidate goes through
constexpr int kEnough = 12;  // seasons after which a miss of another limit, or the fitted bank, is settled
constexpr int kBatch = 16;
constexpr int kFavourites =
    3;  // most preferred banks that go the whole way besides the best of each chemistry

bool misses_another_limit(const Plan& plan, const Trial& trial) {
  const std::vector<Verdict> verdicts = verdicts_on(plan, trial);
  return std::any_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) {
    return v.matter != Matter::kShortfall && v.holding == Holding::kFallsShort;
  });
}

/// Holds in all that seasons can tell: no number of them makes a price known in another currency.
bool holds_by_seasons(const Plan& plan, const Trial& trial) {
  const std::vector<Verdict> verdicts = verdicts_on(plan, trial);
  return std::all_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) {
    return v.holding == Holding::kHolds || (v.matter == Matter::kPrice && v.holding == Holding::kNotKnown);
  });
}

class Race {
 public:
  Race(const Plan& plan, const std::vector<Candidate>& candidates) : plan_(&plan) {
    trials_.reserve(candidates.size());
    for (const Candidate& candidate : candidates) {
      trials_.emplace_back();
      trials_.back().candidate = candidate;
    }
  }

  /// Candidates to run next, all with the same number of seasons done; empty when the race is over.
  std::vector<std::size_t> next() const {
    std::vector<std::size_t> wanted = below(kFirst, [](std::size_t) { return true; });
    if (wanted.empty()) wanted = below(kEnough, [this](std::size_t i) { return open(i); });
    if (wanted.empty())
      wanted = below(plan_->seasons, [chosen = favourites()](std::size_t i) {
        return std::find(chosen.begin(), chosen.end(), i) != chosen.end();
      });
    if (wanted.empty() && !anything_holds())
      wanted = below(plan_->seasons, [this](std::size_t i) { return open(i); });
    if (wanted.empty()) return wanted;
    const int fewest =
        trials_[*std::min_element(wanted.begin(), wanted.end(), [this](std::size_t a, std::size_t b) {
          return trials_[a].count() < trials_[b].count();
        })].count();
    std::erase_if(wanted, [&](std::size_t i) { return trials_[i].count() != fewest; });
    return wanted;
  }

  /// Season count at which the next batch from `done` ends.
  int stop_after(int done) const {
    const int stop = done < kFirst ? kFirst : (done < kEnough ? kEnough : done + kBatch);
    return std::min(plan_->seasons, stop);
  }

  std::vector<Trial>& trials() { return trials_; }
  int open_count() const { return static_cast<int>(open_ones().size()); }

 private:
  /// Those chosen that have not yet done `seasons`, or all of the plan's where it asks for fewer.
  template <class Choose>
  std::vector<std::size_t> below(int seasons, Choose choose) const {
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < trials_.size(); ++i) {
      if (trials_[i].count() < std::min(seasons, plan_->seasons) && choose(i)) chosen.push_back(i);
    }
    return chosen;
  }

  std::vector<std::size_t> open_ones() const {
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < trials_.size(); ++i) {
      if (open(i)) chosen.push_back(i);
    }
    return chosen;
  }

  bool smaller_is_enough(const Trial& trial) const {
    return std::any_of(trials_.begin(), trials_.end(), [&](const Trial& other) {
      return other.candidate.battery == trial.candidate.battery && !other.candidate.fitted_now &&
             other.candidate.count() < trial.candidate.count() - trial.candidate.layout.in_series &&
             other.count() >= kFirst && other.chance().events == 0 && !misses_another_limit(*plan_, other);
    });
  }

  bool open(std::size_t i) const {
    const Trial& trial = trials_[i];
    if (trial.candidate.fitted_now) return trial.count() < kEnough;
    if (trial.chance().low > units::as_fraction(plan_->limits.chance_of_shortfall)) return false;
    if (trial.count() >= kEnough && misses_another_limit(*plan_, trial)) return false;
    return !smaller_is_enough(trial);
  }

  bool anything_holds() const {
    return std::any_of(trials_.begin(), trials_.end(), [this](const Trial& t) {
      return !t.candidate.fitted_now && holds_by_seasons(*plan_, t);
    });
  }

  /// The most preferred open bank of each chemistry and the few most preferred of all.
  std::vector<std::size_t> favourites() const {
    std::vector<std::size_t> order = open_ones();
    std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
      return preference_of(*plan_, trials_[a]) < preference_of(*plan_, trials_[b]);
    });
    std::vector<std::size_t> chosen;
    std::vector<const cell::Chemistry*> seen;
    for (const std::size_t i : order) {
      const cell::Chemistry* chemistry = trials_[i].candidate.chemistry;
      const bool first = std::find(seen.begin(), seen.end(), chemistry) == seen.end();
      if (first) seen.push_back(chemistry);
      if (first || chosen.size() < kFavourites) chosen.push_back(i);
    }
    return chosen;
  }

  const Plan* plan_;
  std::vector<Trial> trials_;
};

}  // namespace

std::vector<Trial> prove(const Plan& plan, const Proving& proving, const std::vector<Candidate>& candidates,
                         const Executor& executor, const Progress& progress) {
  Race race(plan, candidates);
  for (std::vector<std::size_t> running = race.next(); !running.empty(); running = race.next()) {
    const int done = race.trials()[running.front()].count();
    const int stop = race.stop_after(done);
    std::vector<const Candidate*> banks;
    for (const std::size_t i : running) banks.push_back(&race.trials()[i].candidate);
    std::vector<std::vector<season::Fared>> results(static_cast<std::size_t>(stop - done));
    executor(results.size(), [&](std::size_t k) {
      results[k] = proving.run_season(banks, static_cast<std::uint64_t>(done) + k);
    });
    for (std::size_t k = 0; k < results.size(); ++k) {
      for (std::size_t j = 0; j < running.size(); ++j) {
        race.trials()[running[j]].add(static_cast<std::uint64_t>(done) + k, results[k][j]);
      }
    }
    if (progress) progress(stop, plan.seasons, race.open_count());
  }
  return std::move(race.trials());
}

}  // namespace voltwright::advise
