#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/advise/cost_words.h"
#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/charts.h"
#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

constexpr std::size_t kMostBars = 7;
constexpr double kLeastShare = 0.002;  // of the typical cost: less would not be seen

/// Where things lie in one of the two drawings.
struct Frame {
  bool narrow = false;
  double width = 720.0;
  double left = 250.0;   // of the bars
  double right = 640.0;  // the same
  double pitch = 26.0;
  double top = 40.0;
  double bar = 13.0;
};

constexpr Frame kWide{};
constexpr Frame kNarrow{true, 358.0, 62.0, 296.0, 42.0, 40.0, 13.0};

std::vector<cost::Bar> shown_bars(const cost::Tornado& tornado) {
  std::vector<cost::Bar> bars;
  for (const cost::Bar& bar : tornado.bars) {
    if (bars.size() == kMostBars || bar.swing <= kLeastShare * std::fabs(tornado.typical)) break;
    bars.push_back(bar);
  }
  return bars;
}

Scale scale_of(const cost::Tornado& tornado, const std::vector<cost::Bar>& bars, const Frame& frame) {
  double low = tornado.likely.min;
  double high = tornado.likely.max;
  for (const cost::Bar& bar : bars) {
    low = std::min({low, bar.cost_at_least, bar.cost_at_greatest});
    high = std::max({high, bar.cost_at_least, bar.cost_at_greatest});
  }
  return {low, high > low ? high : low + 1.0, frame.left, frame.right};
}

/// One half of a bar: from the typical cost to the cost with the input at one end, and that end in words
/// beyond it.
struct Half {
  double cost = 0.0;
  std::string words;
  bool greatest = false;
  bool leftward = false;  // the words stand to the left
};

/// A value of an input beside its bar; on the narrow drawing the unit stands with the name.
std::string end_words(const cost::Assumption& a, double value, bool narrow) {
  if (a.input == cost::Input::kFuelForMass) return advise::figure(value, "L");
  if (narrow && a.input != cost::Input::kDiscountRate) return advise::figure(value);
  return advise::value_of(a, value);
}

void draw_half(Drawing& d, const Half& half, double typical_x, double y, double height, const Scale& x,
               const std::string& pattern) {
  const double at = x(half.cost);
  const double from = std::min(at, typical_x);
  const double wide = std::fabs(at - typical_x);
  if (half.greatest) {
    d.box(from, y, wide, height, "block solid");
  } else {
    d.raw(fmt::format(
        R"svg(<rect class="block" x="{}" y="{}" width="{}" height="{}" style="fill:url(#{})"/>)svg", px(from),
        px(y), px(wide), px(height), pattern));
  }
  constexpr double kGap = 4.0;
  d.text(half.leftward ? at - kGap : at + kGap, y + 0.5 * height + 4.0, half.words,
         half.leftward ? "end" : "start", "small halo");
}

void draw_bar(Drawing& d, const cost::Bar& bar, double typical, double y, const Scale& x, const Frame& frame,
              const std::string& pattern) {
  const cost::Assumption& a = bar.assumption;
  if (frame.narrow) {
    const bool has_unit = a.input != cost::Input::kDiscountRate && a.input != cost::Input::kFuelForMass;
    d.text(0.0, y - 4.0, has_unit ? a.name + ", " + a.unit : a.name);
  } else {
    d.text(0.0, y + 0.5 * frame.bar + 4.0, a.name);
  }
  // An end that changes nothing stands on the side that the other leaves free.
  const auto leftward = [&](double cost, double other) {
    return cost < typical || (cost == typical && other > typical);
  };
  const Half least{bar.cost_at_least, end_words(a, a.value.min, frame.narrow), false,
                   leftward(bar.cost_at_least, bar.cost_at_greatest)};
  const Half greatest{bar.cost_at_greatest, end_words(a, a.value.max, frame.narrow), true,
                      leftward(bar.cost_at_greatest, bar.cost_at_least)};
  const double typical_x = x(typical);
  const bool same_side = (bar.cost_at_least - typical) * (bar.cost_at_greatest - typical) > 0.0;
  const double height = same_side ? 0.5 * frame.bar : frame.bar;
  draw_half(d, least, typical_x, y, height, x, pattern);
  draw_half(d, greatest, typical_x, same_side ? y + height : y, height, x, pattern);
}

std::string drawn(const std::string& bank, const cost::Tornado& tornado, const std::string& currency,
                  const Frame& frame, const std::string& mark) {
  const std::vector<cost::Bar> bars = shown_bars(tornado);
  const double bottom =
      frame.top + frame.pitch * static_cast<double>(bars.size()) + (frame.narrow ? 6.0 : 0.0);
  const std::string unit = currency + "/kWh";
  const std::string decisive = advise::decisive_sentence(tornado, currency);
  const std::string title = "What moves the cost of a delivered kWh of " + bank;
  Drawing d(frame.width, bottom + 34.0, frame.narrow ? "narrow" : "wide",
            title + ": " + advise::band_text(tornado.likely, unit) + ", likely. " + decisive);
  const std::string pattern = fmt::format("tornado-{}-{}", mark, frame.narrow ? "narrow" : "wide");
  d.raw("<title>" + escaped(title) + "</title><desc>" +
        escaped("One bar an input, longest first, from the cost with the input at its least to that at its "
                "greatest, the others at their typical values. " +
                decisive) +
        "</desc>");
  d.raw(fmt::format(
      R"svg(<defs><pattern id="{}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="hatch" width="2" height="6"/></pattern></defs>)svg",
      pattern));
  const Scale x = scale_of(tornado, bars, frame);
  const double top = frame.top - 12.0;
  d.box(x(tornado.likely.min), top, x(tornado.likely.max) - x(tornado.likely.min), bottom - top, "band");
  for (const double tick : round_ticks(x.from, x.to, frame.narrow ? 3 : 5)) {
    d.line(x(tick), top, x(tick), bottom, "grid5");
    d.text(x(tick), bottom + 16.0, advise::figure(tick), "middle", "small second");
  }
  d.text(frame.width, bottom + 16.0, unit, "end", "small second");
  double y = frame.top + (frame.narrow ? 14.0 : 0.0);
  for (const cost::Bar& bar : bars) {
    draw_bar(d, bar, tornado.typical, y, x, frame, pattern);
    y += frame.pitch;
  }
  d.line(x(tornado.typical), top, x(tornado.typical), bottom, "axis");
  d.text(x(tornado.typical), top - 8.0, advise::figure(tornado.typical, unit), "middle", "strong");
  return d.finish();
}

std::string table(const cost::Tornado& tornado, const std::string& currency) {
  std::string out =
      "<table><thead><tr><th>Input</th><th class=\"r\">Least</th><th class=\"r\">Typical</th>"
      "<th class=\"r\">Greatest</th><th class=\"r\">" +
      escaped(currency) + "/kWh at least</th><th class=\"r\">at greatest</th></tr></thead><tbody>";
  for (const cost::Bar& bar : tornado.bars) {
    const cost::Assumption& a = bar.assumption;
    if (bar.swing <= 0.0) continue;
    out += "<tr><td>" + escaped(a.name) + "</td>";
    for (const double value : {a.value.min, a.value.typical, a.value.max})
      out += "<td class=\"r\">" + escaped(advise::value_of(a, value)) + "</td>";
    for (const double cost : {bar.cost_at_least, bar.cost_at_greatest})
      out += "<td class=\"r\">" + escaped(advise::figure(cost)) + "</td>";
    out += "</tr>";
  }
  return out + "</tbody></table>";
}

/// Letters and digits of a name, for a mark that the page uses once.
std::string mark_of(const std::string& name) {
  std::string mark;
  for (const char c : name) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (plain) mark += c;
  }
  return mark;
}

}  // namespace

std::string tornado_chart(const std::string& bank, const cost::Tornado& tornado,
                          const std::string& currency) {
  if (shown_bars(tornado).empty()) return {};
  const std::string mark = mark_of(bank);
  return "<figure><figcaption><b>" + escaped(bank) +
         "</b>: hatched is the input at its least, solid at its greatest; each end is written beside it. The "
         "band behind is likely, the upright line typical.</figcaption>" +
         drawn(bank, tornado, currency, kWide, mark) + drawn(bank, tornado, currency, kNarrow, mark) +
         "</figure>" + data_fold("The figures behind it", table(tornado, currency));
}

}  // namespace voltwright::files::report
