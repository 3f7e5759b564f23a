#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/charts.h"
#include "files/report/local_day.h"
#include "files/report/markup.h"
#include "files/report/minute_means.h"

namespace voltwright::files::report {

namespace {

constexpr std::size_t kDay_min = 1440;
constexpr double kLeft = 60.0;

struct Frame {
  const Stretch* stretch;
  bool narrow;
  double width;
  Scale x;  // minute index
  std::size_t strips;

  double middle(std::size_t strip, std::size_t count) const {
    return x.at_from +
           (x.at_to - x.at_from) * (static_cast<double>(strip) + 0.5) / static_cast<double>(count);
  }
};

std::string curve_of(const Frame& f, const Scale& y, const std::function<double(std::size_t)>& value) {
  const auto strips = strips_of(f.stretch->from, f.stretch->to, f.strips, value);
  std::string d;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const Strip& s = strips[i];
    const double first = s.low_first ? s.low : s.high;
    const double second = s.low_first ? s.high : s.low;
    const std::string at = px(f.middle(i, strips.size()));
    d += fmt::format("{}{} {}", i == 0 ? "M" : "L", at, px(y.clamped(first)));
    if (std::fabs(y(s.low) - y(s.high)) > 1.0) d += fmt::format("V{}", px(y.clamped(second)));
  }
  return d;
}

void days(Drawing& d, const Frame& f, double top, double bottom) {
  const Stretch& s = *f.stretch;
  const std::size_t count = (s.to - s.from + kDay_min - 1) / kDay_min;
  const double pitch =
      (f.x.at_to - f.x.at_from) * static_cast<double>(kDay_min) / static_cast<double>(s.to - s.from);
  const double room = f.narrow ? 44.0 : 46.0;
  const auto stride = static_cast<std::size_t>(std::max(1.0, std::ceil(room / pitch)));
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t minute = s.from + i * kDay_min;
    const LocalDay day = local_day(
        s.plan->legs, s.season->trace.start_utc_s + static_cast<std::int64_t>(minute + kDay_min / 2) * 60);
    const double x0 = f.x(static_cast<double>(minute));
    const double x1 = std::min(x0 + pitch, f.x.at_to);
    if (day.weekend()) d.box(x0, top, x1 - x0, bottom - top, "weekend");
    d.line(x0, top, x0, bottom, "grid5");
    if (i % stride == 0 && x0 + 0.5 * pitch + 20.0 < f.width) {
      d.text(x0 + 0.5 * pitch, bottom + 17.0, fmt::format("{} {}", weekday_text(day.weekday), day.day),
             "middle", "second");
    }
  }
}

void charge_panel(Drawing& d, const Frame& f, double top, double bottom) {
  const Stretch& s = *f.stretch;
  const Scale y{0.0, 1.0, bottom, top};
  for (int i = 0; i <= 10; ++i) {
    d.line(f.x.at_from, y(0.1 * i), f.x.at_to, y(0.1 * i), i % 5 == 0 ? "grid5" : "grid");
  }
  d.text(kLeft - 6, top + 4, "100\u202F%", "end", "second");
  d.text(kLeft - 6, y(0.5) + 4, "50", "end", "second");
  d.text(kLeft - 6, bottom + 4, "0", "end", "second");
  if (s.usable_depth < 1.0) {
    const double limit = 1.0 - s.usable_depth;
    d.line(f.x.at_from, y(limit), f.x.at_to, y(limit), "wall");
    d.text(f.x.at_from + 5, y(limit) + 14, "loads switched off at " + advise::percent(limit), "start",
           "small limit");
  }
  const std::vector<float>& charge = s.season->trace.charge;
  d.path(curve_of(f, y, [&](std::size_t m) { return static_cast<double>(charge[m]); }), "curve");
}

std::string words_of(const season::Event& e, const advise::Plan& plan, bool narrow) {
  std::string words =
      moment_text(plan.legs, e.start_utc_s) + ", short for " + advise::duration_text(e.minutes);
  if (!narrow) words += ", " + advise::figure(e.energy_Wh, "Wh");
  return words;
}

/// The largest shortfalls with their words above the curve, the others as dots alone.
void events(Drawing& d, const Frame& f, double top, double bottom) {
  const Stretch& s = *f.stretch;
  const Scale y{0.0, 1.0, bottom, top};
  std::vector<const season::Event*> shorts;
  const auto minute_of = [&](const season::Event& e) {
    return static_cast<double>(e.start_utc_s - s.season->trace.start_utc_s) / 60.0;
  };
  for (const season::Event& e : s.season->fared.events) {
    const double m = minute_of(e);
    if (e.kind == season::EventKind::kShort && m >= static_cast<double>(s.from) &&
        m < static_cast<double>(s.to))
      shorts.push_back(&e);
  }
  std::stable_sort(shorts.begin(), shorts.end(), [](const season::Event* a, const season::Event* b) {
    return a->energy_Wh > b->energy_Wh;
  });
  for (std::size_t i = 0; i < shorts.size(); ++i) {
    const double m = minute_of(*shorts[i]);
    const double x = f.x(m);
    const auto index = std::min(static_cast<std::size_t>(m), s.season->trace.charge.size() - 1);
    const double at = y.clamped(static_cast<double>(s.season->trace.charge[index]));
    if (i < 2) {
      const double label = top - 8.0 - 16.0 * static_cast<double>(i);
      const bool to_left = x > 0.5 * (f.x.at_from + f.x.at_to);
      d.line(x, label - 9.0, x, at, "wall thin");
      d.text(to_left ? x - 6.0 : x + 6.0, label, words_of(*shorts[i], *s.plan, f.narrow),
             to_left ? "end" : "start", "limit");
    }
    d.dot(x, at, i < 2 ? 4.5 : 2.5, "madder");
  }
}

double round_up(double value) {
  if (!(value > 0.0)) return 1.0;
  const double decade = std::pow(10.0, std::floor(std::log10(value)));
  for (const double m : {1.0, 2.0, 5.0}) {
    if (m * decade >= value) return m * decade;
  }
  return 10.0 * decade;
}

void power_panel(Drawing& d, const Frame& f, double top, double bottom) {
  const season::Trace& t = f.stretch->season->trace;
  const auto strips = strips_of(f.stretch->from, f.stretch->to, f.strips, [&](std::size_t m) {
    return -static_cast<double>(t.bus_V[m]) * static_cast<double>(t.bank_A[m]);
  });
  double most = 0.0, least = 0.0;
  for (const Strip& s : strips) {
    most = std::max(most, s.mean);
    least = std::min(least, s.mean);
  }
  const double reach = round_up(std::max(most, -least));
  const Scale y{-reach, reach, bottom, top};
  d.line(f.x.at_from, y(reach), f.x.at_to, y(reach), "grid");
  d.line(f.x.at_from, y(-reach), f.x.at_to, y(-reach), "grid");
  std::string up, down;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const double wide = (f.x.at_to - f.x.at_from) / static_cast<double>(strips.size());
    const double x0 = f.x.at_from + wide * static_cast<double>(i);
    const double h = y(0.0) - y.clamped(strips[i].mean);
    if (std::fabs(h) < 0.25) continue;
    std::string& side = h > 0.0 ? up : down;
    side += fmt::format("M{} {}v{}h{}v{}z", px(x0), px(y(0.0)), px(-h), fmt::format("{:.2f}", wide), px(h));
  }
  if (!up.empty()) d.path(up, "charging");
  if (!down.empty()) d.path(down, "discharging");
  d.line(f.x.at_from, y(0.0), f.x.at_to, y(0.0), "axis");
  d.text(f.x.at_from + 5, top + 10, "charging", "start", "small second halo");
  d.text(f.x.at_from + 5, bottom - 3, "discharging", "start", "small second halo");
  d.text(kLeft - 6, top + 4, advise::figure(reach, "W"), "end", "second");
  d.text(kLeft - 6, y(0.0) + 4, "0", "end", "second");
  d.text(kLeft - 6, bottom + 4, advise::figure(reach, "W"), "end", "second");
}

void temperature_panel(Drawing& d, const Frame& f, double top, double bottom) {
  const ReportSeason& season = *f.stretch->season;
  const bool outside = season.outside_C.size() >= f.stretch->to;
  double low = 1e9, high = -1e9;
  for (std::size_t m = f.stretch->from; m < f.stretch->to; ++m) {
    for (const std::vector<float>* series : {&season.trace.bank_C, &season.outside_C}) {
      if (series == &season.outside_C && !outside) continue;
      low = std::min(low, static_cast<double>((*series)[m]));
      high = std::max(high, static_cast<double>((*series)[m]));
    }
  }
  low = std::floor(low / 5.0) * 5.0;
  high = std::max(std::ceil(high / 5.0) * 5.0, low + 5.0);
  const Scale y{low, high, bottom, top};
  const std::vector<double> ticks = round_ticks(low, high, 3);
  for (std::size_t i = 0; i < ticks.size(); ++i) {
    d.line(f.x.at_from, y(ticks[i]), f.x.at_to, y(ticks[i]), ticks[i] == 0.0 ? "axis" : "grid");
    const std::string words = fixed(ticks[i], 0) + (i + 1 == ticks.size() ? "\u202F°C" : "");
    d.text(kLeft - 6, y(ticks[i]) + 4, words, "end", "second");
  }
  if (outside) {
    d.path(curve_of(f, y, [&](std::size_t m) { return static_cast<double>(season.outside_C[m]); }),
           "outside");
  }
  d.path(curve_of(f, y, [&](std::size_t m) { return static_cast<double>(season.trace.bank_C[m]); }), "curve");
}

std::string drawn(const Stretch& s, bool narrow, const std::string& summary) {
  const double width = narrow ? 358.0 : 720.0;
  const Frame f{&s, narrow, width,
                Scale{static_cast<double>(s.from), static_cast<double>(s.to), kLeft, width - 6.0},
                narrow ? std::size_t{300} : std::size_t{640}};
  Drawing d(width, 420.0, narrow ? "narrow" : "wide", summary);
  days(d, f, 40, 394);
  charge_panel(d, f, 40, 170);
  power_panel(d, f, 192, 284);
  temperature_panel(d, f, 308, 394);
  events(d, f, 40, 170);
  return d.finish();
}

std::string day_table(const Stretch& s) {
  std::string rows =
      R"(<table><thead><tr><th>Day</th><th class="r">Lowest, %</th><th class="r">Charged, Wh</th><th class="r">Discharged, Wh</th><th class="r">Bank, °C</th><th class="r">Short, min</th></tr></thead><tbody>)";
  const season::Trace& t = s.season->trace;
  for (std::size_t from = s.from; from < s.to; from += kDay_min) {
    const std::size_t to = std::min(from + kDay_min, s.to);
    double low = 1.0, in = 0.0, out = 0.0, cold = 1e9, hot = -1e9;
    for (std::size_t m = from; m < to; ++m) {
      low = std::min(low, static_cast<double>(t.charge[m]));
      cold = std::min(cold, static_cast<double>(t.bank_C[m]));
      hot = std::max(hot, static_cast<double>(t.bank_C[m]));
      const double Wh = static_cast<double>(t.bus_V[m]) * static_cast<double>(t.bank_A[m]) / 60.0;
      (Wh > 0.0 ? out : in) += std::fabs(Wh);
    }
    const std::int64_t start = t.start_utc_s + static_cast<std::int64_t>(from) * 60;
    const std::int64_t end = t.start_utc_s + static_cast<std::int64_t>(to) * 60;
    double short_min = 0.0;
    for (const season::Event& e : s.season->fared.events) {
      if (e.kind != season::EventKind::kShort) continue;
      const std::int64_t e_end = e.start_utc_s + static_cast<std::int64_t>(e.minutes * 60.0);
      short_min += static_cast<double>(
                       std::max<std::int64_t>(0, std::min(e_end, end) - std::max(e.start_utc_s, start))) /
                   60.0;
    }
    rows += fmt::format(
        R"(<tr><td>{}</td><td class="r">{}</td><td class="r">{}</td><td class="r">{}</td><td class="r">{} to {}</td><td class="r">{}</td></tr>)",
        day_text(local_day(s.plan->legs, start + 43200)), fixed(low * 100.0, 0), fixed(in, 0), fixed(out, 0),
        fixed(cold, 0), fixed(hot, 0), fixed(short_min, 0));
  }
  return rows + "</tbody></table>";
}

}  // namespace

std::string stretch_chart(const Stretch& stretch) {
  const season::Trace& t = stretch.season->trace;
  Stretch s = stretch;
  s.to = std::min({s.to, t.charge.size(), t.bank_C.size(), t.bus_V.size(), t.bank_A.size()});
  if (s.to <= s.from + 1) return {};
  const auto lowest = *std::min_element(t.charge.begin() + static_cast<std::ptrdiff_t>(s.from),
                                        t.charge.begin() + static_cast<std::ptrdiff_t>(s.to));
  const std::int64_t first = t.start_utc_s + static_cast<std::int64_t>(s.from) * 60;
  const std::int64_t last = t.start_utc_s + static_cast<std::int64_t>(s.to) * 60 - 43200;
  const std::string summary = fmt::format(
      "{} to {}: state of charge down to {}, power into and out of the bank, temperature of the bank",
      day_text(local_day(s.plan->legs, first)), day_text(local_day(s.plan->legs, last)),
      advise::percent(std::max(0.0, static_cast<double>(lowest))));
  return "<figure>" + drawn(s, false, summary) + drawn(s, true, summary) +
         R"(<figcaption><span class="swatch-ink"></span>bank <span class="swatch-outside"></span>outside air</figcaption></figure>)" +
         data_fold("Table by day", day_table(s));
}

}  // namespace voltwright::files::report
