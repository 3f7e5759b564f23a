#include "files/report/axis.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/report/markup.h"

namespace voltwright::files::report {

double Scale::operator()(double value) const {
  const double span = to - from;
  return span == 0.0 ? at_from : at_from + (at_to - at_from) * (value - from) / span;
}

double Scale::clamped(double value) const {
  return (*this)(std::clamp(value, std::min(from, to), std::max(from, to)));
}

double LogScale::operator()(double value) const {
  const double v = std::clamp(value, from, to);
  return at_from + (at_to - at_from) * std::log(v / from) / std::log(to / from);
}

std::vector<double> round_ticks(double low, double high, int count) {
  std::vector<double> ticks;
  if (!(high > low) || !std::isfinite(low) || !std::isfinite(high) || count < 1) return ticks;
  const double rough = (high - low) / count;
  const double decade = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10.0 * decade;
  for (const double m : {1.0, 2.0, 5.0}) {
    if (m * decade >= rough) {
      step = m * decade;
      break;
    }
  }
  const double first = std::ceil(low / step - 1e-9);
  const double last = std::floor(high / step + 1e-9);
  for (double i = first; i <= last; i += 1.0) ticks.push_back(i * step);
  return ticks;
}

std::string px(double value) {
  std::string text = fmt::format("{:.1f}", std::isfinite(value) ? value : 0.0);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text == "-0" ? "0" : text;
}

Drawing::Drawing(double width, double height, std::string_view variant, std::string_view summary)
    : out_(fmt::format(R"(<svg class="{}" viewBox="0 0 {} {}" role="img" aria-label="{}">)", variant,
                       px(width), px(height), escaped(summary))) {}

void Drawing::line(double x1, double y1, double x2, double y2, std::string_view css_class) {
  out_ += fmt::format(R"(<path class="{}" d="M{} {}L{} {}"/>)", css_class, px(x1), px(y1), px(x2), px(y2));
}

void Drawing::box(double x, double y, double width, double height, std::string_view css_class) {
  out_ += fmt::format(R"(<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>)", css_class, px(x), px(y),
                      px(std::max(0.0, width)), px(std::max(0.0, height)));
}

void Drawing::dot(double x, double y, double radius, std::string_view css_class) {
  out_ += fmt::format(R"(<circle class="{}" cx="{}" cy="{}" r="{}"/>)", css_class, px(x), px(y), px(radius));
}

void Drawing::path(const std::string& d, std::string_view css_class) {
  out_ += fmt::format(R"(<path class="{}" d="{}"/>)", css_class, d);
}

void Drawing::text(double x, double y, std::string_view content, std::string_view anchor,
                   std::string_view css_class) {
  out_ += fmt::format(R"(<text class="{}" x="{}" y="{}" text-anchor="{}">{}</text>)", css_class, px(x), px(y),
                      anchor, escaped(content));
}

std::string Drawing::finish() {
  out_ += "</svg>";
  return std::move(out_);
}

}  // namespace voltwright::files::report
