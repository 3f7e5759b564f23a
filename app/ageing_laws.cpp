#include "app/ageing_laws.h"

#include <memory>

#include "engine/ageing/depth_law.h"
#include "engine/ageing/schiffer.h"
#include "engine/ageing/storage_error.h"

namespace voltwright::app {

namespace {

using ageing::Opinion;
using ageing::Spread;

constexpr const char* kSpreadAssumed =
    "assumption: 30 % between like cells or blocks, as no measured spread was found for this chemistry";

Opinion depth_opinion(const cell::Chemistry& chemistry, Spread spread) {
  Opinion opinion;
  const bool is_typical = spread == Spread::kTypical;
  const char* const which = is_typical ? "typical" : (spread == Spread::kShortest ? "shortest" : "longest");
  opinion.id = chemistry.id + "-depth-" + which;
  opinion.name = std::string("Cycles against depth and a shelf life, ") + which + " figures";
  opinion.source = "catalogue: chemistries/" + chemistry.id + ".json, cycle_life and calendar_life";
  opinion.caution = chemistry.plate_wear
                        ? std::string(ageing::kDepthLawCaution)
                        : "Handbook figures of cycles and a shelf life, added; no test was seen behind them.";
  opinion.basis = ageing::Basis::kHandbook;
  opinion.law = std::make_shared<ageing::DepthLaw>(chemistry.life, spread);
  return opinion;
}

Opinion weighted_opinion(const cell::Chemistry& chemistry, const cell::PlateWear& wear) {
  Opinion opinion;
  opinion.id = chemistry.id + "-weighted";
  opinion.name = "Weighted throughput and grid corrosion, Schiffer and others 2007";
  opinion.source = "bib:schiffer2007";
  opinion.caution =
      "Its authors missed two banks that lasted 6.2 and 5.1 years by -6 and -14 %. Knows nothing of drying "
      "out, of a bank left discharged, or of shorted cells.";
  opinion.knows_resistance = true;
  const double full_V = base::curve_at(chemistry.ocv_V, 1.0, 0.0);
  opinion.law = std::make_shared<ageing::WeightedThroughput>(wear, full_V);
  return opinion;
}

}  // namespace

advise::Speaking speaking_for(const cell::Chemistry& chemistry, const files::AgeingCatalogue& laws) {
  advise::Speaking speaking;
  speaking.spread_source = kSpreadAssumed;
  if (chemistry.plate_wear) {
    speaking.opinions = {
        weighted_opinion(chemistry, *chemistry.plate_wear), depth_opinion(chemistry, Spread::kTypical),
        depth_opinion(chemistry, Spread::kShortest), depth_opinion(chemistry, Spread::kLongest)};
    return speaking;
  }
  if (const ageing::Opinions* found = ageing::opinions_on(laws.opinions, chemistry.id)) {
    speaking.opinions = found->opinions;
    speaking.gap = found->gap;
    if (!found->life_spread_source.empty()) {
      speaking.life_spread = found->life_spread;
      speaking.spread_source = found->life_spread_source;
    }
  }
  if (!speaking.opinions.empty()) return speaking;
  if (speaking.gap.empty()) speaking.gap = "No ageing law and no life point was found for this chemistry.";
  for (const Spread spread : {Spread::kTypical, Spread::kShortest, Spread::kLongest})
    speaking.opinions.push_back(depth_opinion(chemistry, spread));
  return speaking;
}

double over_measured_first_year(const std::string& chemistry, const ageing::Opinion& opinion,
                                const files::AgeingCatalogue& laws) {
  constexpr double kYear_days = 365.0;
  constexpr double kRoom_C = 25.0;
  constexpr double kHalf = 0.5;
  if (chemistry != "lfp" || !opinion.knows_rest || laws.storage.empty()) return 0.0;
  return ageing::over_measured(*opinion.law, laws.storage.front().table, kRoom_C, kHalf, kYear_days);
}

}  // namespace voltwright::app
