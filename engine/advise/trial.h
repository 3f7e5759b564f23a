#pragma once
// A candidate taken through many seasons: counts, means, the worst and the median season.
#include <memory>
#include <span>
#include <vector>

#include "engine/advise/candidate.h"
#include "engine/advise/interval.h"
#include "engine/ageing/life.h"
#include "engine/season/run.h"
#include "engine/season/series.h"

namespace voltwright::advise {

/// What is kept of one season.
struct SeasonNote {
  std::uint64_t season = 0;
  double unmet_essential_Wh = 0.0;
  double unmet_Wh = 0.0;
  double short_h = 0.0;
  double longest_short_min = 0.0;
  double lowest_charge = 1.0;
  double charge_blocked_h = 0.0;
  double discharged_Wh = 0.0;  // out of the bank, at the bus
  bool ran_short = false;
  bool failed_start = false;
};

struct Trial {
  Candidate candidate;
  std::vector<SeasonNote> seasons;  // in order of the season number
  season::Ledger<double> ledger;    // sums over the seasons
  double minutes = 0.0;             // of one season
  double lowest_V = 1e9, highest_V = 0.0;
  double coldest_C = 1e9, hottest_C = -1e9, mean_C = 0.0;
  double highest_discharge_A = 0.0, highest_charge_A = 0.0;
  double highest_surge_A = 0.0, lowest_surge_V = 1e9;
  double highest_load_dump_A = 0.0;
  double failed_starts = 0.0;
  double locked_out_h = 0.0;
  double deepest_charge = 1.0;
  ageing::Wear wear_shortest, wear_typical, wear_longest;  // sums over the seasons

  int count() const { return static_cast<int>(seasons.size()); }
  Chance chance() const;
  /// Seasons in which a start failed.
  Chance start_chance() const;
  /// Years to 80 % of capacity if such seasons follow each other; shortest, typical, longest figures.
  units::Ranged life_years() const;
  double mean_lowest_charge() const;
  /// Season number of the one with most unmet essential energy, then the lowest state of charge.
  std::uint64_t worst_season() const;
  std::uint64_t median_season() const;

  void add(std::uint64_t season, const season::Fared& fared);
};

/// Everything shared by the trials of one plan.
class Proving {
 public:
  /// The plan, chemistries and tables must outlive this.
  Proving(const Plan& plan, std::span<const season::LegSky> skies, const sky::ClearnessMatrices& matrices);

  /// Takes candidates through one season; the results are in the order of the candidates.
  std::vector<season::Fared> run_season(std::span<const Candidate* const> candidates,
                                        std::uint64_t season) const;

  /// One candidate's minutes of one season.
  season::Fared trace(const Candidate& candidate, std::uint64_t season, season::Trace& trace,
                      season::Series* series = nullptr) const;

  double minutes() const { return static_cast<double>(maker_.minutes()); }
  season::Series draw(std::uint64_t season) const { return maker_.draw(season); }

 private:
  season::System<double> system_of(const Candidate& candidate, const cell::Tables& tables) const;

  const Plan* plan_;
  season::SeriesMaker maker_;
};

}  // namespace voltwright::advise
