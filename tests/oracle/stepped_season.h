#pragma once
// The engine's season under the same outside as the continuous one, and when in it something switched.
#include <string>
#include <vector>

#include "engine/season/ledger.h"
#include "engine/season/system.h"
#include "tests/oracle/continuous_season.h"

namespace voltwright::oracle {

/// Minutes of that outside: solar power as its mean over the minute, the air as in its middle.
std::vector<season::Minute> minutes_of(const Outside& outside, double end_s);

/// What the engine made of them.
struct SteppedCourse {
  season::Ledger<double> ledger;
  std::vector<double> charge;  // at the end of each minute
  std::vector<double> temperature_C;
  std::vector<Change> changes;  // to the second: a minute in which something switched is gone through again
  season::SystemState<double> state;  // at the end
};

SteppedCourse step_through(const season::System<double>& system, const std::vector<season::Minute>& minutes,
                           season::SystemState<double> state);

/// The times of one change, in order [s].
std::vector<double> times_of(const std::vector<Change>& changes, const std::string& what);

/// The names of all changes, each once.
std::vector<std::string> kinds_of(const std::vector<Change>& changes);

}  // namespace voltwright::oracle
