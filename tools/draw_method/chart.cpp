#include "tools/draw_method/chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/report/axis.h"
#include "files/report/markup.h"
#include "tools/draw_method/labels.h"

namespace voltwright::tools {

namespace {

using base::CurvePoint;
using files::report::Drawing;
using files::report::px;

constexpr double kWidth = 720.0;
constexpr double kLeft = 66.0;
constexpr double kRight = kWidth - 22.0;
constexpr double kFirstPanel = 62.0;
constexpr double kBetweenPanels = 20.0;
constexpr double kBelow = 50.0;
constexpr double kLine = 15.0;
constexpr double kLabelRoom = 8.0;   // beside a label, so that two do not read as one
constexpr double kBandNames = 16.0;  // room above the first panel

// Light paper with ink of its own, so that the picture reads the same on a white and on a dark page.
constexpr const char* kStyle =
    "<style>text{font:12px 'Noto Sans','Liberation Sans',Arial,sans-serif;fill:#18242B}"
    ".title{font-size:15px;font-weight:600}.second{fill:#48565D}.paper{fill:#FCFDFB;stroke:#7C8A86}"
    ".grid{stroke:#DCE6DF;fill:none}.axis{stroke:#18242B;fill:none}.band{fill:#E9EFEA}.edge{stroke:#7C8A86;"
    "fill:none;stroke-dasharray:2 3}.lead{stroke:#7C8A86;fill:none}.l{fill:none;stroke-width:1.8;"
    "stroke-linejoin:round}.m{fill:#FCFDFB;stroke-width:1.5}.halo{paint-order:stroke;stroke:#FCFDFB;"
    "stroke-width:3px;stroke-linejoin:round}"
    ".s0{stroke:#18242B}.s1{stroke:#2B5B68}.s2{stroke:#5A3A8C}.s3{stroke:#A12A22}.s4{stroke:#7A5200}"
    ".l.s1{stroke-dasharray:9 4}.l.s2{stroke-dasharray:9 3 2 3}.l.s3{stroke-dasharray:4 3}"
    ".l.s4{stroke-dasharray:2 2.5}</style>";

struct Side {
  files::report::Scale even;
  files::report::LogScale decades;
  bool by_ratio = false;

  double operator()(double value) const { return by_ratio ? decades(value) : even(value); }
};

Side side_of(const ChartAxis& axis, double at_from, double at_to) {
  return {{axis.from, axis.to, at_from, at_to}, {axis.from, axis.to, at_from, at_to}, axis.decades};
}

std::vector<double> ticks_of(const ChartAxis& axis, int count) {
  return axis.ticks.empty() ? files::report::round_ticks(axis.from, axis.to, count) : axis.ticks;
}

/// On a scale of decades each tick has the decimals it needs.
std::string tick_text(const ChartAxis& axis, double tick) {
  return axis.decades ? fmt::format("{:g}", tick) : files::report::fixed(tick, axis.decimals);
}

/// About one tick for every 26 units of height, at most nine.
int tick_count(double height) {
  constexpr double kApart = 26.0;
  constexpr int kMost = 9;
  return std::min(kMost, static_cast<int>(height / kApart));
}

/// A mark of its own for each style, so that it is told apart without colour.
void draw_mark(Drawing& d, double x, double y, int style) {
  const std::string css = fmt::format("m s{}", style);
  constexpr double r = 3.6;
  switch (style) {
    case 0:
      d.dot(x, y, r, css);
      return;
    case 1:
      d.box(x - r + 0.4, y - r + 0.4, 2.0 * r - 0.8, 2.0 * r - 0.8, css);
      return;
    case 2:
      d.path(fmt::format("M{} {}L{} {}H{}Z", px(x), px(y - r - 0.6), px(x + r + 0.4), px(y + r - 0.4),
                         px(x - r - 0.4)),
             css);
      return;
    case 3:
      d.path(fmt::format("M{} {}L{} {}L{} {}L{} {}Z", px(x), px(y - r - 1.0), px(x + r + 1.0), px(y), px(x),
                         px(y + r + 1.0), px(x - r - 1.0), px(y)),
             css);
      return;
    default:
      d.path(fmt::format("M{} {}L{} {}H{}Z", px(x), px(y + r + 0.6), px(x + r + 0.4), px(y - r + 0.4),
                         px(x - r - 0.4)),
             css);
  }
}

std::vector<CurvePoint> placed(const base::Curve& curve, const Side& x, const Side& y) {
  std::vector<CurvePoint> points;
  points.reserve(curve.size());
  for (const CurvePoint& p : curve) points.push_back({x(p.x), y(p.y)});
  return points;
}

double to_tenth(double value) { return std::round(value * 10.0) / 10.0; }

/// Marks the points between `first` and `last` without which the line would shift by more than a quarter of a
/// unit (Douglas and Peucker's rule). Coordinates are rounded before, so that every machine keeps the same.
void keep_needed(const std::vector<CurvePoint>& points, std::size_t first, std::size_t last,
                 std::vector<bool>& kept) {
  constexpr double kShift = 0.25;
  std::vector<std::pair<std::size_t, std::size_t>> stretches{{first, last}};
  while (!stretches.empty()) {
    const auto [from, to] = stretches.back();
    stretches.pop_back();
    double most = kShift;
    std::size_t farthest = 0;
    for (std::size_t i = from + 1; i < to; ++i) {
      const double off = distance_to_stroke(points[i], points[from], points[to]);
      if (off > most) {
        most = off;
        farthest = i;
      }
    }
    if (farthest == 0) continue;
    kept[farthest] = true;
    stretches.emplace_back(from, farthest);
    stretches.emplace_back(farthest, to);
  }
}

void draw_line(Drawing& d, const std::vector<CurvePoint>& points, int style) {
  if (points.empty()) return;
  std::vector<CurvePoint> rounded;
  rounded.reserve(points.size());
  for (const CurvePoint& p : points) rounded.push_back({to_tenth(p.x), to_tenth(p.y)});
  std::vector<bool> kept(rounded.size(), false);
  kept.front() = true;
  kept.back() = true;
  keep_needed(rounded, 0, rounded.size() - 1, kept);
  std::string path;
  for (std::size_t i = 0; i < rounded.size(); ++i) {
    if (kept[i]) path += (path.empty() ? "M" : "L") + px(rounded[i].x) + " " + px(rounded[i].y);
  }
  d.path(path, fmt::format("l s{}", style));
}

void draw_axes(Drawing& d, const ChartPanel& panel, const Side& x, const Side& y, double top, double bottom,
               bool with_x) {
  for (const double tick : ticks_of(panel.x, 10)) {
    d.line(x(tick), top, x(tick), bottom, "grid");
    if (with_x) d.text(x(tick), bottom + 17.0, tick_text(panel.x, tick), "middle", "second");
  }
  for (const double tick : ticks_of(panel.y, tick_count(panel.height))) {
    d.line(kLeft, y(tick), kRight, y(tick), "grid");
    d.text(kLeft - 7.0, y(tick) + 4.0, tick_text(panel.y, tick), "end", "second");
  }
  d.path(fmt::format("M{} {}V{}H{}", px(kLeft), px(top), px(bottom), px(kRight)), "axis");
  if (with_x) d.text(0.5 * (kLeft + kRight), bottom + 37.0, panel.x.title, "middle");
  const double middle = 0.5 * (top + bottom);
  d.raw(fmt::format(R"svg(<text transform="translate(18 {}) rotate(-90)" text-anchor="middle">{}</text>)svg",
                    px(middle), files::report::escaped(panel.y.title)));
}

/// Middles of the bands' names, moved apart where a band is narrower than its name.
std::vector<double> name_places(const ChartPanel& panel, const Side& x) {
  constexpr double kGap = 10.0;
  std::vector<double> middles;
  double free_from = kLeft;
  for (const ChartBand& band : panel.bands) {
    const double half = 0.5 * text_width(band.label);
    const double middle = std::max(0.5 * (x(band.from) + x(band.to)), free_from + half);
    middles.push_back(middle);
    free_from = middle + half + kGap;
  }
  double free_to = kRight;
  for (std::size_t i = middles.size(); i-- > 0;) {
    const double half = 0.5 * text_width(panel.bands[i].label);
    middles[i] = std::min(middles[i], free_to - half);
    free_to = middles[i] - half - kGap;
  }
  return middles;
}

void draw_bands(Drawing& d, const ChartPanel& panel, const Side& x, double top, double bottom, bool first) {
  const std::vector<double> middles = name_places(panel, x);
  for (std::size_t i = 0; i < panel.bands.size(); ++i) {
    const double left = x(panel.bands[i].from);
    const double right = x(panel.bands[i].to);
    if (i % 2 == 1) d.box(left, top, right - left, bottom - top, "band");
    if (i > 0) d.line(left, top, left, bottom, "edge");
    if (first) d.text(middles[i], top - 6.0, panel.bands[i].label, "middle", "second");
  }
}

void draw_label(Drawing& d, LabelPlacer& placer, std::size_t number, const ChartLine& line) {
  if (line.label.empty()) return;
  const LabelSpot spot = placer.place(number, text_width(line.label) + kLabelRoom, kLine);
  if (spot.leader) d.line(spot.from.x, spot.from.y, spot.to.x, spot.to.y, "lead");
  const double middle = 0.5 * (spot.box.top + spot.box.bottom);
  d.text(spot.box.left + 0.5 * kLabelRoom, middle + 4.3, line.label, "start", "halo");
}

void draw_panel(Drawing& d, const ChartPanel& panel, double top, bool first, bool with_x) {
  const double bottom = top + panel.height;
  const Side x = side_of(panel.x, kLeft, kRight);
  const Side y = side_of(panel.y, bottom, top);
  draw_bands(d, panel, x, top, bottom, first);
  draw_axes(d, panel, x, y, top, bottom, with_x);
  LabelPlacer placer({kLeft + 3.0, top + 2.0, kRight - 2.0, bottom - 2.0});
  for (const ChartLine& line : panel.lines) {
    const auto points = placed(line.points, x, y);
    placer.add_line(points);
    draw_line(d, points, line.style);
  }
  constexpr double kReach = 5.0;
  for (const ChartMarks& marks : panel.marks) {
    for (const CurvePoint& p : placed(marks.points, x, y)) {
      placer.add_box({p.x - kReach, p.y - kReach, p.x + kReach, p.y + kReach});
      draw_mark(d, p.x, p.y, marks.style);
    }
  }
  for (std::size_t i = 0; i < panel.lines.size(); ++i) draw_label(d, placer, i, panel.lines[i]);
}

/// The subtitle, and after it each mark with what it stands for.
void draw_key(Drawing& d, const Chart& chart) {
  constexpr double kStart = 16.0;
  constexpr double kBase = 43.0;
  d.text(kStart, kBase, chart.subtitle, "start", "second");
  double x = kStart + text_width(chart.subtitle) + 12.0;
  for (const ChartPanel& panel : chart.panels) {
    for (const ChartMarks& marks : panel.marks) {
      if (marks.label.empty()) continue;
      draw_mark(d, x, kBase - 4.0, marks.style);
      d.text(x + 9.0, kBase, marks.label, "start", "second");
      x += text_width(marks.label) + 28.0;
    }
  }
}

/// The x axis is written out under the last panel and where the next panel has another one.
bool labelled(const Chart& chart, std::size_t i) {
  return i + 1 == chart.panels.size() || chart.panels[i].x.title != chart.panels[i + 1].x.title;
}

/// A shape a line, so that a change of one is a change of one line in the history.
std::string in_lines(const std::string& svg) {
  std::string out;
  for (std::size_t i = 0; i < svg.size(); ++i) {
    out += svg[i];
    if (svg[i] == '>' && i + 1 < svg.size() && svg[i + 1] == '<') out += '\n';
  }
  return out + '\n';
}

}  // namespace

std::string svg_of(const Chart& chart) {
  const bool named = !chart.panels.empty() && !chart.panels.front().bands.empty();
  const double first_panel = kFirstPanel + (named ? kBandNames : 0.0);
  double height = first_panel - kBetweenPanels;
  for (std::size_t i = 0; i < chart.panels.size(); ++i) {
    height += chart.panels[i].height + kBetweenPanels + (labelled(chart, i) ? kBelow : 0.0);
  }
  Drawing d(kWidth, height, "chart", chart.summary);
  d.raw(kStyle);
  d.raw(fmt::format(R"(<rect class="paper" x="0.5" y="0.5" width="{}" height="{}" rx="4"/>)",
                    px(kWidth - 1.0), px(height - 1.0)));
  d.text(16.0, 25.0, chart.title, "start", "title");
  draw_key(d, chart);
  double top = first_panel;
  for (std::size_t i = 0; i < chart.panels.size(); ++i) {
    draw_panel(d, chart.panels[i], top, i == 0, labelled(chart, i));
    top += chart.panels[i].height + kBetweenPanels + (labelled(chart, i) ? kBelow : 0.0);
  }
  std::string text = d.finish();
  constexpr std::string_view kStart = "<svg ";
  text.insert(kStart.size(), fmt::format(R"(xmlns="http://www.w3.org/2000/svg" width="{}" height="{}" )",
                                         px(kWidth), px(height)));
  return in_lines(text);
}

}  // namespace voltwright::tools
