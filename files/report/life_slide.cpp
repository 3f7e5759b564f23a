#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/life_page.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using advise::figure;
using advise::percent;
using ageing::LifeMoment;

constexpr double kLeft = 40.0;
constexpr double kChartLeft = 110.0, kChartRight = 1010.0;
constexpr double kChartTop = 150.0, kChartBottom = 770.0;
constexpr double kBeside = 1070.0, kRight = 1560.0;
constexpr double kLeast = 0.5;  // capacity at the foot of the chart
constexpr double kMostYears = 30.0;

struct Chart {
  Scale x, y;
};

/// Years that the chart shows: what the counted laws and the band need, rounded up to fives.
double years_shown(const LifeInput& input) {
  double most = std::max(input.life->at_80.max, input.life->at_70.typical);
  for (const LifeRow& row : input.rows) {
    if (row.law->counted && !row.law->course.empty()) most = std::max(most, row.law->course.back().years);
  }
  constexpr double kRound = 5.0;
  return std::clamp(std::ceil(most / kRound) * kRound, kRound, kMostYears);
}

void draw_axes(Drawing& d, const Chart& c) {
  for (int percents = 50; percents <= 100; percents += 10) {
    const double share = 0.01 * percents;
    d.line(c.x.at_from, c.y(share), c.x.at_to, c.y(share), "grid");
    d.text(c.x.at_from - 12.0, c.y(share) + 6.0, percent(share), "end", "tick");
  }
  constexpr int kTicks = 6;
  for (const double years : round_ticks(0.0, c.x.to, kTicks)) {
    d.line(c.x(years), c.y.at_from, c.x(years), c.y.at_from + 8.0, "axis");
    d.text(c.x(years), c.y.at_from + 30.0, figure(years), "middle", "tick");
  }
  d.line(c.x.at_from, c.y.at_from, c.x.at_to, c.y.at_from, "axis");
  d.text(c.x.at_to, c.y.at_from + 54.0, "years from now", "end", "tick");
  d.text(c.x.at_from, c.y.at_to - 14.0, "capacity, share of new", "start", "tick");
  for (const double limit : {0.8, 0.7}) {
    d.line(c.x.at_from, c.y(limit), c.x.at_to, c.y(limit), limit > 0.75 ? "wall" : "forbidden");
  }
}

/// The part of a straight piece that lies on the chart.
void draw_piece(Drawing& d, const Chart& c, LifeMoment a, LifeMoment b, const char* css_class) {
  if (a.years >= c.x.to || a.capacity < kLeast) return;
  if (b.years > c.x.to) {
    b.capacity = a.capacity + (b.capacity - a.capacity) * (c.x.to - a.years) / (b.years - a.years);
    b.years = c.x.to;
  }
  d.line(c.x(a.years), c.y.clamped(a.capacity), c.x(b.years), c.y.clamped(b.capacity), css_class);
}

void draw_course(Drawing& d, const Chart& c, const std::vector<LifeMoment>& course, const char* css_class) {
  for (std::size_t i = 1; i < course.size(); ++i) draw_piece(d, c, course[i - 1], course[i], css_class);
}

/// The band of all doubt: the leading course, its years stretched to either side as at the 80 % date.
void draw_band(Drawing& d, const Chart& c, const std::vector<LifeMoment>& course, const units::Ranged& end) {
  if (end.typical <= 0.0 || course.size() < 2) return;
  const double quick = end.min / end.typical;
  const double slow = end.max / end.typical;
  // Each side ends where it leaves the chart.
  const auto side = [&](double stretch) {
    std::vector<LifeMoment> points;
    for (LifeMoment p : course) {
      p.years *= stretch;
      if (p.years >= c.x.to && !points.empty()) {
        const LifeMoment& last = points.back();
        p.capacity =
            last.capacity + (p.capacity - last.capacity) * (c.x.to - last.years) / (p.years - last.years);
        p.years = c.x.to;
        points.push_back(p);
        break;
      }
      points.push_back(p);
    }
    return points;
  };
  std::vector<LifeMoment> around = side(quick);
  const std::vector<LifeMoment> back = side(slow);
  around.insert(around.end(), back.rbegin(), back.rend());
  std::string outline;
  for (const LifeMoment& p : around)
    outline +=
        fmt::format("{}{} {}", outline.empty() ? "M" : "L", px(c.x(p.years)), px(c.y.clamped(p.capacity)));
  d.path(outline + "Z", "band");
}

double say(Drawing& d, double y, const std::string& head, const std::string& text) {
  d.text(kBeside, y, head, "start", "head");
  for (const std::string& line : broken_lines(text, letters_in(kRight - kBeside, 18.0), 3)) {
    y += 26.0;
    d.text(kBeside, y, line, "start", "value");
  }
  return y + 40.0;
}

}  // namespace

std::string gain_words(const ageing::Gain& gain) { return figure(gain.times) + " times: " + gain.habit; }

std::string plan_end_words(const LifeInput& input) {
  const advise::BankLife& life = *input.life;
  if (!life.carries_now) return "not carried as it is now";
  if (!life.plan_ends) return "still carried down to " + percent(life.levels.back().capacity);
  return advise::life_words(input.plan_end);
}

std::string life_slide(const LifeInput& input) {
  Drawing d = begin_slide(input.sentence);
  d.text(kLeft, 62.0,
         broken_lines("How long " + input.bank + " lasts", letters_in(kRight - kLeft, 38.0), 1).front(),
         "start", "title");
  d.text(kLeft, 98.0, broken_lines(input.plan, letters_in(kRight - kLeft, 18.0), 1).front(), "start", "how");
  const Chart chart{{0.0, years_shown(input), kChartLeft, kChartRight},
                    {kLeast, 1.0, kChartBottom, kChartTop}};
  const advise::LawLife* leading = input.life->leading();
  if (leading != nullptr) {
    const bool has_80 = input.life->at_80.typical > 0.0;
    draw_band(d, chart, leading->course, has_80 ? input.life->at_80 : input.life->at_70);
  }
  draw_axes(d, chart);
  for (const LifeRow& row : input.rows)
    draw_course(d, chart, row.law->course, row.law->leads ? "span" : (row.law->counted ? "then" : "now"));
  double y = say(d, 170.0, "80 % of the capacity", advise::life_words(input.at_80));
  y = say(d, y, "70 % of the capacity", advise::life_words(input.at_70));
  y = say(d, y, "The plan is carried", plan_end_words(input));
  d.text(kBeside, y, "What makes it last", "start", "head");
  for (const ageing::Gain& gain : input.life->gains) {
    y += 26.0;
    d.text(kBeside, y, gain_words(gain), "start", "value");
  }
  d.text(kLeft, 856.0,
         "Thick: the leading account, with the band of all doubt; grey: other laws; dotted: not counted, as "
         "they know nothing of time at rest.",
         "start", "how");
  d.text(kLeft, 882.0, "No law has a knee: measure the capacity once a year.", "start", "how");
  return finish_slide(std::move(d));
}

}  // namespace voltwright::files::report
