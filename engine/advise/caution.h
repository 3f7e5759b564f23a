#pragma once
// Statements about safety: the usual ones, and what the simulated seasons of a bank showed.
#include <string>
#include <vector>

#include "engine/advise/plan.h"
#include "engine/advise/trial.h"

namespace voltwright::advise {

struct Caution {
  std::string title;
  std::string text;
};

/// The cautions that every installation of this plan needs.
std::vector<Caution> usual_cautions(const Plan& plan);

/// The same for a bank that went through seasons, with what happened in them: cold, frost, protection that
/// opened while an alternator charged, a bank locked out, chargers set for another chemistry, a starved DC-DC
/// converter.
std::vector<Caution> cautions_of(const Plan& plan, const Trial& trial);

}  // namespace voltwright::advise
