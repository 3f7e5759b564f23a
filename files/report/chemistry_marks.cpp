#include "files/report/chemistry_marks.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <string>

namespace voltwright::files::report {

namespace {

/// A closed line through corners at `angles_deg` (0 = up, clockwise) and radii in turn.
std::string corners(double x, double y, int count, double first_deg, double radius, double other_radius) {
  constexpr double kHalfTurn_deg = 180.0;
  std::string d;
  for (int i = 0; i < count; ++i) {
    const double angle = (first_deg + 2.0 * kHalfTurn_deg * i / count) * std::numbers::pi / kHalfTurn_deg;
    const double r = i % 2 == 0 ? radius : other_radius;
    d += fmt::format("{}{} {}", i == 0 ? "M" : "L", px(x + r * std::sin(angle)), px(y - r * std::cos(angle)));
  }
  return d + "Z";
}

std::string regular(double x, double y, int count, double first_deg, double radius) {
  return corners(x, y, count, first_deg, radius, radius);
}

std::string plus(double x, double y, double r) {
  const double arm = r / 3.0;
  return fmt::format("M{} {}H{}V{}H{}V{}H{}V{}H{}V{}H{}V{}H{}Z", px(x - arm), px(y - r), px(x + arm),
                     px(y - arm), px(x + r), px(y + arm), px(x + arm), px(y + r), px(x - arm), px(y + arm),
                     px(x - r), px(y - arm), px(x - arm));
}

}  // namespace

void draw_chemistry_mark(Drawing& drawing, std::string_view chemistry, double x, double y, double size,
                         std::string_view css_class) {
  const double r = size;
  if (chemistry == "lfp") {
    drawing.dot(x, y, 0.9 * r, css_class);
  } else if (chemistry == "nmc") {
    drawing.box(x - 0.8 * r, y - 0.8 * r, 1.6 * r, 1.6 * r, css_class);
  } else if (chemistry == "nca") {
    drawing.path(regular(x, y, 4, 0.0, 1.15 * r), css_class);
  } else if (chemistry == "lco") {
    drawing.path(regular(x, y + 0.15 * r, 3, 0.0, 1.15 * r), css_class);
  } else if (chemistry == "lmo") {
    drawing.path(regular(x, y - 0.15 * r, 3, 180.0, 1.15 * r), css_class);
  } else if (chemistry == "sodium-ion") {
    drawing.path(regular(x, y, 6, 30.0, r), css_class);
  } else if (chemistry == "lto") {
    drawing.path(plus(x, y, r), css_class);
  } else if (chemistry == "lithium-sulfur") {
    drawing.path(corners(x, y, 10, 0.0, 1.2 * r, 0.5 * r), css_class);
  } else if (chemistry == "agm") {
    drawing.path(fmt::format("M{} {}V{}A{} {} 0 0 1 {} {}V{}Z", px(x - 0.8 * r), px(y + 0.8 * r), px(y),
                             px(0.8 * r), px(0.8 * r), px(x + 0.8 * r), px(y), px(y + 0.8 * r)),
                 css_class);
  } else if (chemistry == "gel") {
    drawing.path(fmt::format("M{} {}V{}A{} {} 0 0 0 {} {}V{}Z", px(x - 0.8 * r), px(y - 0.8 * r), px(y),
                             px(0.8 * r), px(0.8 * r), px(x + 0.8 * r), px(y), px(y - 0.8 * r)),
                 css_class);
  } else if (chemistry == "flooded") {
    drawing.path(fmt::format("M{} {}V{}H{}V{}M{} {}H{}", px(x - 0.8 * r), px(y - 0.8 * r), px(y + 0.8 * r),
                             px(x + 0.8 * r), px(y - 0.8 * r), px(x - 0.8 * r), px(y), px(x + 0.8 * r)),
                 css_class);
  } else {
    drawing.dot(x, y, 0.9 * r, css_class);
    drawing.dot(x, y, 0.2 * r, css_class);
  }
}

}  // namespace voltwright::files::report
