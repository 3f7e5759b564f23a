#pragma once
// Everything that speaks for the ageing of a chemistry, lithium and lead-acid alike.
#include "engine/advise/bank_life.h"
#include "engine/cell/chemistry.h"
#include "files/ageing_record.h"

namespace voltwright::app {

/// The laws of the catalogue for a lithium chemistry; weighted throughput, then cycles against depth at the
/// typical, the shortest and the longest of its published figures for lead-acid. A chemistry of which the
/// catalogue has neither law nor life points gets its cycle and shelf figures, and says so.
advise::Speaking speaking_for(const cell::Chemistry& chemistry, const files::AgeingCatalogue& laws);

/// Loss by the law over the loss that was measured on iron-phosphate cells at rest: 25 degC, half charge, a
/// year. 0 for a law that was not made for them or knows nothing of rest.
double over_measured_first_year(const std::string& chemistry, const ageing::Opinion& opinion,
                                const files::AgeingCatalogue& laws);

}  // namespace voltwright::app
