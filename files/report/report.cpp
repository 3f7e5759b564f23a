#include "files/report/report.h"

#include "files/report/page.h"
#include "files/report/parts.h"

namespace voltwright::files {

namespace report {

const advise::Ranked* shown_bank(const ReportInput& input) {
  const std::vector<advise::Ranked>& all = input.answer->ranking;
  if (all.empty()) return nullptr;
  const int best = input.answer->best;
  return best >= 0 && static_cast<std::size_t>(best) < all.size() ? &all[static_cast<std::size_t>(best)]
                                                                  : &all.front();
}

double usable_depth(const ReportInput& input) {
  const advise::Ranked* shown = shown_bank(input);
  if (shown == nullptr || shown->trial.candidate.chemistry == nullptr) return 1.0;
  return input.plan->depth_rule == advise::DepthRule::kPractice
             ? shown->trial.candidate.chemistry->usable_depth
             : 1.0;
}

}  // namespace report

std::string report_html(const ReportInput& input) {
  std::string out;
  out += report::opening(input);
  out += report::ranking(input);
  out += report::requirements(input);
  out += report::cost_part(input);
  out += report::ledger_part(input);
  out += report::worst_part(input);
  out += report::median_part(input);
  out += report::cautions(input);
  out += report::notes(input);
  out += report::title_block(input);
  return report::page("Recommendation, " + input.plan->name, out);
}

}  // namespace voltwright::files
