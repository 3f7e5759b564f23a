#pragma once
// The parts of the report in their order on the page.
#include <string>
#include <string_view>

#include "files/report/report.h"

namespace voltwright::files::report {

/// The style sheet of the page.
std::string_view style_sheet();
/// What pages with slides and tables to compare have beyond it.
std::string_view teaching_style();

/// Head, the answer as sentences, and the strip of key figures.
std::string opening(const ReportInput& input);
/// Every bank that was tried, best first, and what each other chemistry would need.
std::string ranking(const ReportInput& input);
/// Every requirement on the shown bank with its verdict.
std::string requirements(const ReportInput& input);
/// What the shown bank and those it is held against cost over the years, and what that hangs on.
std::string cost_part(const ReportInput& input);
/// Mean ledger, worst season, median season.
std::string ledger_part(const ReportInput& input);
std::string worst_part(const ReportInput& input);
std::string median_part(const ReportInput& input);
/// Boxed warnings that the bank and its surroundings call for.
std::string cautions(const ReportInput& input);
/// Assumptions, method, origin of the climate, sources.
std::string notes(const ReportInput& input);
std::string title_block(const ReportInput& input);

/// The bank that the pictures show: the best, or the nearest if none holds; null without a ranking.
const advise::Ranked* shown_bank(const ReportInput& input);

/// The depth to which loads may draw the shown bank, 1 = down to the battery's own protection.
double usable_depth(const ReportInput& input);

}  // namespace voltwright::files::report
