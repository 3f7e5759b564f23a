#pragma once
// Plans as texts, proven season by season on banks of the built-in catalogue.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "engine/advise/candidate.h"
#include "engine/advise/search.h"
#include "engine/advise/trial.h"
#include "files/catalogue.h"

namespace voltwright::whole {

/// The catalogue packed into the program; read once.
const files::Catalogue& catalogue();

/// One bank in one season: how it fared, minute by minute.
struct Told {
  season::Fared fared;
  season::Trace trace;
  season::Series series;
};

/// A plan with the climate of its places.
class Practice {
 public:
  /// Reads the plan text with the built-in catalogue, places and climates. Problems fail the test, and the
  /// plan is then empty.
  explicit Practice(const std::string& text);

  advise::Plan& plan() { return plan_; }
  const advise::Plan& plan() const { return plan_; }
  const std::vector<season::LegSky>& skies() const { return skies_; }

  /// A catalogue battery, as many in series as the system voltage asks for.
  advise::Candidate bank(const std::string& battery, int in_parallel = 1) const;

  /// Takes the bank through a season. Fails the test unless its energy closes.
  Told tell(const std::string& battery, int in_parallel = 1, std::uint64_t season = 0) const;

  /// The same for any bank.
  Told tell(const advise::Candidate& bank, std::uint64_t season = 0) const;

  /// Text of the caution of this title that the answer gives for a bank after a season; empty if none.
  std::string caution(const std::string& title, const advise::Candidate& bank, const Told& told) const;

  /// All these banks through as many seasons as the plan asks for.
  std::vector<advise::Trial> race(const std::vector<advise::Candidate>& banks,
                                  const advise::Executor& executor) const;

  /// The shared minutes of a season.
  season::Series draw(std::uint64_t season) const;

 private:
  advise::Plan plan_;
  std::vector<season::LegSky> skies_;
};

/// Fails the test unless inputs, outputs and store agree to 1e-9 of what went through, and the bus left less
/// than 1e-9 of it unbalanced.
void expect_closed(const season::Ledger<double>& ledger);

/// A bank of batteries that need not be in the catalogue; both records must outlive it.
advise::Candidate bank_of(const bank::Battery& battery, const cell::Chemistry& chemistry, int in_series,
                          int in_parallel);

/// How often an event of a kind began.
int times(const Told& told, season::EventKind kind);

/// Ampere-hours that left the bank in the minutes [from, to), charging counted against them.
double drawn_Ah(const season::Trace& trace, std::size_t from, std::size_t to);

/// What goes into the bank at the end of a minute [A]; below 0 while it is drawn from.
double charging_A(const Told& told, std::size_t minute);

/// Hours until the loads were first switched off, or the length of the season if they never were.
double hours_until_loads_off(const Told& told);

/// Top of a plan for 12 V with short, thick cables and a cabin at 25 degC, where capacity is rated.
std::string warm_cabin(const std::string& top_keys = "");

/// A stay of some days near the 60th parallel in January, colder outside than any cabin.
std::string winter_stay(int days, const std::string& more_keys = "");

/// A night load takes half of 200 Ah at 12 V; two hours of driving with this `[engine]` follow from nine
/// o'clock.
Practice half_empty_and_driven(const std::string& engine);

/// A load from midnight to five that mains fills up again, day after day, in a warm cabin.
Practice nightly_on_mains(const std::string& power, int days);

}  // namespace voltwright::whole
