#include "files/report/claim_scale.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/units/figure.h"

namespace voltwright::files::report {

namespace {

using claims::Finding;

struct Ends {
  std::optional<double> least, most;
};

/// What is usual: of the finding that ranks, else the range that the claim was held against.
Ends band_of(const ClaimLine& line) {
  const Finding& f = line.usual() != nullptr ? *line.usual() : *line.finding;
  return {f.least, f.most};
}

/// What is possible: an end of a one-sided range, the upper end of a span of the chemistry. What the sheet's
/// own figures or other batteries span is no limit.
Ends walls_of(const ClaimLine& line) {
  const Finding* f = line.finding;
  if (line.beside != nullptr && line.usual() == line.finding) f = line.beside;
  if (f->id.starts_with("usual.")) return {};
  if (f->least && f->most) return f->id.starts_with("possible.") ? Ends{std::nullopt, f->most} : Ends{};
  return {f->least, f->most};
}

/// The values between which the scale runs, with room beside the outermost mark.
std::pair<double, double> domain_of(const ClaimLine& line) {
  constexpr double kRoom = 0.16;
  constexpr double kOpenRoom = 0.45;  // for a side on which nothing limits
  constexpr double kLeastSpan = 0.5;  // of the value, where there is but one
  constexpr double kWarm_K = 20.0;
  std::vector<double> marks = {*line.flag()};
  if (line.finding->number) marks.push_back(*line.finding->number);
  bool open_below = true;
  bool open_above = true;
  for (const Ends& ends : {band_of(line), walls_of(line)}) {
    if (ends.least) marks.push_back(*ends.least), open_below = false;
    if (ends.most) marks.push_back(*ends.most), open_above = false;
  }
  const auto [low, high] = std::minmax_element(marks.begin(), marks.end());
  const bool temperature = line.finding->unit == "°C" || line.finding->unit == "K";
  double span = *high - *low;
  const double least_span = temperature ? kWarm_K : kLeastSpan * std::max(std::fabs(*high), std::fabs(*low));
  span = std::max(span, least_span > 0.0 ? least_span : 1.0);
  double from = *low - (open_below ? kOpenRoom : kRoom) * span;
  const double to = *high + (open_above ? kOpenRoom : kRoom) * span;
  if (!temperature && *low >= 0.0 && (open_below || from < 0.0 || *low < kRoom * *high)) from = 0.0;
  return {from, to};
}

/// As many round ticks as their labels leave room for; `width` in type of size 1.
std::vector<double> fitting_ticks(double from, double to, double width) {
  constexpr double kLetter = 7.0;
  constexpr double kGap = 12.0;
  for (const int wanted : {6, 5, 4, 3}) {
    std::vector<double> ticks = round_ticks(from, to, wanted);
    double needed = 0.0;
    for (const double tick : ticks)
      needed += kLetter * static_cast<double>(units::figure(tick).size()) + kGap;
    if (needed <= width) return ticks;
  }
  return round_ticks(from, to, 2);
}

void draw_flag(Drawing& d, double x, double y, double k, std::string_view css_class) {
  const double top = y - 22.0 * k;
  d.path(fmt::format("M{} {}V{}", px(x), px(y + 4.0 * k), px(top)), "flag " + std::string(css_class));
  d.path(fmt::format("M{} {}h{}l{} {} {} {}h{}Z", px(x), px(top), px(10.0 * k), px(-3.0 * k), px(4.5 * k),
                     px(3.0 * k), px(4.5 * k), px(-10.0 * k)),
         "flag " + std::string(css_class));
}

/// A limit, with strokes on the side that it forbids.
void draw_wall(Drawing& d, double x, double y, double k, double side) {
  d.line(x, y - 14.0 * k, x, y + 5.0 * k, "wall");
  std::string strokes;
  for (const double up : {12.0, 8.0, 4.0}) {
    strokes += fmt::format("M{} {}l{} {}", px(x), px(y - (up - 4.0) * k), px(side * 5.0 * k), px(-4.0 * k));
  }
  d.path(strokes, "forbidden");
}

}  // namespace

void draw_claim(Drawing& d, const ClaimLine& line, const ScalePlace& place) {
  if (!line.has_scale()) return;
  const double k = place.size;
  const auto [from, to] = domain_of(line);
  const Scale scale{from, to, place.x, place.x + place.width};
  const Ends band = band_of(line);
  const double left = scale.clamped(band.least.value_or(from));
  const double right = scale.clamped(band.most.value_or(to));
  d.box(left, place.y - 9.0 * k, right - left, 9.0 * k, "band");
  d.line(place.x, place.y, place.x + place.width, place.y, "axis");
  for (const double tick : fitting_ticks(from, to, place.width / k)) {
    d.line(scale(tick), place.y, scale(tick), place.y + 4.0 * k, "axis");
    d.text(scale(tick), place.y + 16.0 * k, units::figure(tick), "middle", "tick second");
  }
  if (!line.finding->unit.empty())
    d.text(place.x + place.width + 6.0 * k, place.y + 4.0 * k, line.finding->unit, "start", "tick second");
  const Ends walls = walls_of(line);
  if (walls.least) draw_wall(d, scale.clamped(*walls.least), place.y, k, -1.0);
  if (walls.most) draw_wall(d, scale.clamped(*walls.most), place.y, k, 1.0);
  if (line.finding->claimed && line.finding->number)
    d.dot(scale.clamped(*line.finding->number), place.y, 3.6 * k, "worked");
  draw_flag(d, scale.clamped(*line.flag()), place.y, k, class_of(line.finding->severity));
}

std::string claim_summary(const ClaimLine& line) {
  const Finding& f = *line.finding;
  std::string text = with_unit(*line.flag(), f.unit);
  const std::string worked = worked_out_words(f);
  if (!worked.empty()) text += "; " + worked;
  for (const Finding* one : {line.finding, line.beside}) {
    if (one != nullptr) text += "; " + range_words(*one);
  }
  return text + "; " + std::string(claims::name_of(f.severity));
}

std::string claim_picture(const ClaimLine& line) {
  constexpr double kWidth = 290.0;
  constexpr double kHeight = 44.0;
  Drawing d(kWidth, kHeight, "scale", claim_summary(line));
  draw_claim(d, line, {12.0, 25.0, 208.0, 1.0});
  return d.finish();
}

}  // namespace voltwright::files::report
