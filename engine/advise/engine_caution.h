#pragma once
// Cautions about alternators, towing plugs, generator sets and wind turbines.
#include <vector>

#include "engine/advise/caution.h"

namespace voltwright::advise {

/// What every installation with these sources needs.
std::vector<Caution> engine_side_cautions(const Plan& plan);

/// A towing plug whose fuse or pin this bank asks too much of.
std::vector<Caution> towing_plug_cautions(const Plan& plan, const Trial& trial);

}  // namespace voltwright::advise
