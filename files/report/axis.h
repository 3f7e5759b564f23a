#pragma once
// Scales and strokes of the pictures.
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::files::report {

/// A straight scale from values to picture units.
struct Scale {
  double from = 0.0, to = 1.0;        // values
  double at_from = 0.0, at_to = 1.0;  // where they lie
  double operator()(double value) const;
  double clamped(double value) const;
};

/// A decade scale; values below `from` lie at its end.
struct LogScale {
  double from = 0.0003, to = 1.0;
  double at_from = 0.0, at_to = 1.0;
  double operator()(double value) const;
};

/// About `count` round steps of 1, 2 or 5 times a power of ten, all within [low, high].
std::vector<double> round_ticks(double low, double high, int count);

/// One picture as text: shapes take style classes, never colours.
class Drawing {
 public:
  /// `variant` is "wide" or "narrow"; `summary` is what is read out instead of the picture.
  Drawing(double width, double height, std::string_view variant, std::string_view summary);

  void line(double x1, double y1, double x2, double y2, std::string_view css_class);
  void box(double x, double y, double width, double height, std::string_view css_class);
  void dot(double x, double y, double radius, std::string_view css_class);
  void path(const std::string& d, std::string_view css_class);
  /// anchor: "start", "middle" or "end".
  void text(double x, double y, std::string_view content, std::string_view anchor = "start",
            std::string_view css_class = {});
  void raw(std::string_view svg) { out_ += svg; }
  std::string finish();

 private:
  std::string out_;
};

/// A picture coordinate with one decimal.
std::string px(double value);

}  // namespace voltwright::files::report
