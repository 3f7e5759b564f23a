#include <fmt/format.h>

#include <algorithm>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/charts.h"
#include "files/report/local_day.h"

namespace voltwright::files::report {

namespace {

constexpr std::int64_t kDay_s = 86400;

std::string drawn(const ReportSeason& season, const advise::Plan& plan, double usable_depth, bool narrow,
                  const std::string& summary) {
  const double width = narrow ? 358.0 : 720.0;
  const std::vector<float>& low = season.fared.daily_low;
  const std::size_t count = std::min(low.size(), season.fared.daily_high.size());
  const double days = static_cast<double>(count);
  Drawing d(width, 190.0, narrow ? "narrow" : "wide", summary);
  const Scale x{0.0, days, 46.0, width - 4.0};
  const Scale y{0.0, 1.0, 156.0, 12.0};
  for (int i = 0; i <= 10; ++i) d.line(x(0), y(0.1 * i), x(days), y(0.1 * i), i % 5 == 0 ? "grid5" : "grid");
  d.text(40, y(1.0) + 4, "100\u202F%", "end", "second");
  d.text(40, y(0.5) + 4, "50", "end", "second");
  d.text(40, y(0.0) + 4, "0", "end", "second");
  double last_label = -1e9;
  const std::size_t stride = count > 120 ? 1 : 7;
  for (std::size_t i = 0; i < count; ++i) {
    const LocalDay date =
        local_day(plan.legs, season.trace.start_utc_s + static_cast<std::int64_t>(i) * kDay_s + kDay_s / 2);
    const bool mark = stride == 1 ? date.day == 1 : i % stride == 0;
    if (!mark) continue;
    const double at = x(static_cast<double>(i));
    d.line(at, y(1.0), at, y(0.0), "grid5");
    const std::string words =
        stride == 1 ? month_text(date.month) : std::to_string(date.day) + " " + month_text(date.month);
    const double room = stride == 1 ? 26.0 : 46.0;
    if (at - last_label < room || at + room - 4.0 > width) continue;
    d.text(at + 2.0, 174, words, "start", "second");
    last_label = at;
  }
  std::string upper, lower, edge;
  for (std::size_t i = 0; i < count; ++i) {
    const double at = static_cast<double>(i) + 0.5;
    upper += fmt::format("{}{} {}", i == 0 ? "M" : "L", px(x(at)),
                         px(y.clamped(static_cast<double>(season.fared.daily_high[i]))));
    edge += fmt::format("{}{} {}", i == 0 ? "M" : "L", px(x(at)), px(y.clamped(static_cast<double>(low[i]))));
  }
  for (std::size_t i = count; i-- > 0;) {
    lower += fmt::format("L{} {}", px(x(static_cast<double>(i) + 0.5)),
                         px(y.clamped(static_cast<double>(low[i]))));
  }
  if (count > 0) {
    d.path(upper + lower + "Z", "band");
    d.path(edge, "curve");
  }
  if (usable_depth < 1.0) {
    const double limit = 1.0 - usable_depth;
    d.line(x(0), y(limit), x(days), y(limit), "wall");
    d.text(x(0) + 4, y(limit) + 14, "loads switched off at " + advise::percent(limit), "start",
           "small limit");
  }
  for (const season::Event& e : season.fared.events) {
    if (e.kind != season::EventKind::kShort) continue;
    const double at = static_cast<double>(e.start_utc_s - season.trace.start_utc_s) / 86400.0;
    if (at >= 0.0 && at <= days) d.line(x(at), y(0.0) - 7.0, x(at), y(0.0), "wall");
  }
  return d.finish();
}

}  // namespace

std::string band_chart(const ReportSeason& season, const advise::Plan& plan, double usable_depth) {
  if (season.fared.daily_low.empty()) return {};
  const std::string summary =
      fmt::format("State of charge over {} days; lowest {}", season.fared.daily_low.size(),
                  advise::percent(std::max(0.0, season.fared.lowest_charge)));
  return "<figure>" + drawn(season, plan, usable_depth, false, summary) +
         drawn(season, plan, usable_depth, true, summary) + "</figure>";
}

}  // namespace voltwright::files::report
