#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/charts.h"
#include "files/report/local_day.h"
#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

constexpr std::int64_t kDay_s = 86400;

struct BookDay {
  LocalDay date;
  double low = 1.0, high = 1.0;
  bool ran_short = false;
};

std::vector<BookDay> days_of(const ReportSeason& season, const advise::Plan& plan) {
  std::vector<BookDay> days;
  const std::int64_t start = season.trace.start_utc_s;
  for (std::size_t i = 0; i < season.fared.daily_low.size() && i < season.fared.daily_high.size(); ++i) {
    const std::int64_t from = start + static_cast<std::int64_t>(i) * kDay_s;
    BookDay day{local_day(plan.legs, from + kDay_s / 2), static_cast<double>(season.fared.daily_low[i]),
                static_cast<double>(season.fared.daily_high[i]), false};
    for (const season::Event& e : season.fared.events) {
      const std::int64_t end = e.start_utc_s + static_cast<std::int64_t>(e.minutes * 60.0);
      if (e.kind == season::EventKind::kShort && e.start_utc_s < from + kDay_s && end > from)
        day.ran_short = true;
    }
    days.push_back(day);
  }
  return days;
}

const char* tone_of(const BookDay& day) {
  if (day.ran_short) return "tone-short";
  if (day.low > 0.6) return "tone1";
  return day.low > 0.3 ? "tone2" : "tone3";
}

std::string drawn(const std::vector<BookDay>& days, bool narrow, const std::string& summary) {
  const double left = narrow ? 26.0 : 52.0;
  const double pitch = narrow ? 10.7 : 21.4;
  const double row = narrow ? 34.0 : 36.0;
  const double cell = row - 10.0;
  std::map<int, std::size_t> rows;  // year * 12 + month
  for (const BookDay& d : days)
    rows.emplace(d.date.year * 12 + static_cast<int>(d.date.month) - 1, std::size_t{0});
  std::size_t count = 0;
  for (auto& [month, index] : rows) index = count++;
  Drawing d(narrow ? 358.0 : 720.0, 22.0 + row * static_cast<double>(count), narrow ? "narrow" : "wide",
            summary);
  for (unsigned day = 1; day <= 31; ++day) {
    if (narrow && day != 1 && day % 5 != 0) continue;
    d.text(left + pitch * (day - 0.5), 12, std::to_string(day), "middle", "small second");
  }
  for (const auto& [month, index] : rows) {
    const double y = 20.0 + row * static_cast<double>(index);
    d.text(0, y + 16, month_text(static_cast<unsigned>(month % 12) + 1));
  }
  for (const BookDay& day : days) {
    const int month = day.date.year * 12 + static_cast<int>(day.date.month) - 1;
    const double y = 20.0 + row * static_cast<double>(rows.at(month));
    const double x = left + pitch * (day.date.day - 1.0);
    if (day.date.weekend()) d.box(x, y, pitch, cell, "weekend");
    const Scale level{1.0, 0.0, y, y + cell};
    const double top = level.clamped(day.high);
    const double bottom = std::max(level.clamped(day.low), top + 1.2);
    d.box(x + 0.2 * pitch, top, 0.6 * pitch, bottom - top, tone_of(day));
    d.line(x, y + cell, x + pitch, y + cell, "rule");
    if (day.ran_short) d.box(x + 0.6, y - 2.0, pitch - 1.2, cell + 4.0, "boxed");
  }
  return d.finish();
}

}  // namespace

std::string day_book(const ReportSeason& season, const advise::Plan& plan) {
  const std::vector<BookDay> days = days_of(season, plan);
  if (days.empty()) return {};
  const auto lowest = std::min_element(days.begin(), days.end(),
                                       [](const BookDay& a, const BookDay& b) { return a.low < b.low; });
  const auto shorts = std::count_if(days.begin(), days.end(), [](const BookDay& b) { return b.ran_short; });
  const std::string summary =
      fmt::format("Day-book of {} days: emptiest on {} at {}, {} days ran short", days.size(),
                  day_text(lowest->date), advise::percent(lowest->low), shorts);
  const std::string key =
      R"(<p class="key"><span class="k1"></span>lowest above 60 % <span class="k2"></span>30 to 60 % <span class="k3"></span>below 30 % <span class="k4"></span>ran short, boxed <i>shaded: weekend</i></p>)";
  std::string rows =
      R"(<table><thead><tr><th>Day</th><th class="r">Lowest, %</th><th class="r">Highest, %</th><th>Ran short</th></tr></thead><tbody>)";
  for (const BookDay& d : days) {
    rows += fmt::format("<tr><td>{}</td><td class=\"r\">{}</td><td class=\"r\">{}</td><td>{}</td></tr>",
                        day_text(d.date), fixed(d.low * 100.0, 0), fixed(d.high * 100.0, 0),
                        d.ran_short ? "short" : "");
  }
  rows += "</tbody></table>";
  return key + "<figure>" + drawn(days, false, summary) + drawn(days, true, summary) + "</figure>" +
         data_fold(fmt::format("Table of {} days", days.size()), rows);
}

}  // namespace voltwright::files::report
