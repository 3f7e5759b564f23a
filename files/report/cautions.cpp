#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

std::string cautions(const ReportInput& input) {
  const advise::Ranked* shown = shown_bank(input);
  int number = 0;
  std::string out = caution(++number, "Short circuit and fusing",
                            "A bank drives many times its working current into a short circuit. Fit a fuse "
                            "beside the positive pole "
                            "that can break that current, fuse each conductor for its own cross-section, and "
                            "cover bare terminals.");
  const cell::Chemistry* chemistry = shown != nullptr ? shown->trial.candidate.chemistry : nullptr;
  if (chemistry != nullptr && chemistry->family == cell::Family::kLeadAcid) {
    out += caution(++number, "Hydrogen",
                   "Lead-acid batteries give off hydrogen while charging, sealed ones when overcharged. Vent "
                   "their space to the outside and keep flames and switches that spark out of it.");
  }
  if (chemistry != nullptr && shown->trial.coldest_C < std::max(0.0, chemistry->limits.charge_min_C)) {
    const std::string coldest = advise::figure(std::round(shown->trial.coldest_C), "°C");
    out +=
        chemistry->family == cell::Family::kLeadAcid
            ? caution(++number, "Frost",
                      "The bank gets down to " + coldest +
                          ". A discharged lead-acid battery freezes and bursts; keep it charged in the cold.")
            : caution(++number, "Cold charging",
                      "The bank gets down to " + coldest + ". Below " +
                          advise::figure(chemistry->limits.charge_min_C, "°C") +
                          " it must not be charged; the block that prevents it, or a heater, belongs to the "
                          "bank.");
  }
  if (input.plan->mains || input.plan->inverter) {
    out +=
        caution(++number, "Mains voltage",
                "Shore power, chargers and inverters carry voltages that kill. Their connection, protective "
                "earth and residual-current device are the work of a licensed person.");
  }
  out += caution(
      ++number, "Mixing chemistries",
      "Do not join batteries of different chemistry, age or size in one bank. Chargers must be set to "
      "the voltages of the kind that is fitted.");
  out +=
      "<p class=\"sub\">A planning aid. Local codes, the makers' instructions and a licensed person "
      "decide.</p>";
  return section("Cautions", "", "<div class=\"cautions\">" + out + "</div>");
}

}  // namespace voltwright::files::report
