#pragma once
// The pictures of the report. Each returns its wide and its narrow drawing; the style sheet shows one.
#include <string>

#include "files/report/report.h"

namespace voltwright::files::report {

/// Seasons that ran short on a scale of decades, one bank: dot, whiskers of the interval, accepted chance as
/// a wall. Zero of n is a hollow dot at the left end.
std::string interval_chart(const advise::Chance& chance, double accepted);
/// The scale above a column of interval charts.
std::string interval_scale(double accepted);

/// Two upright columns to scale, In and Out, of the mean season, with the table.
std::string ledger_chart(const advise::Trial& trial);

/// What one bank costs for each delivered kWh when one input after another is moved to its ends: one bar an
/// input, with the table behind it. The likely band lies behind the bars.
std::string tornado_chart(const std::string& bank, const cost::Tornado& tornado, const std::string& currency);

/// State of charge, power and temperatures of the minutes [from, to).
struct Stretch {
  const ReportSeason* season = nullptr;
  const advise::Plan* plan = nullptr;
  double usable_depth = 1.0;  // 1 = loads run until the battery's own protection
  std::size_t from = 0, to = 0;
};
std::string stretch_chart(const Stretch& stretch);

/// Lowest and highest state of charge of each day of a season.
std::string band_chart(const ReportSeason& season, const advise::Plan& plan, double usable_depth);

/// Months as rows, days as columns, one stroke a day from lowest to highest state of charge.
std::string day_book(const ReportSeason& season, const advise::Plan& plan);

}  // namespace voltwright::files::report
