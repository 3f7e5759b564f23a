#pragma once
// A line chart as one self-contained SVG text: own background, real axes, names beside the lines.
#include <string>
#include <vector>

#include "engine/base/curve.h"

namespace voltwright::tools {

/// Values along one side of a panel.
struct ChartAxis {
  std::string title;  // with the unit
  double from = 0.0, to = 1.0;
  bool decades = false;       // spaced by ratio
  std::vector<double> ticks;  // empty: round steps
  int decimals = 0;
};

/// A computed line. `style` 0 to 4 chooses colour and dashes together.
struct ChartLine {
  base::Curve points;
  std::string label;  // empty: none
  int style = 0;
};

/// Published points, drawn as hollow marks in the colour of the line of the same style.
struct ChartMarks {
  base::Curve points;
  int style = 0;
  std::string label;  // in the key under the title
};

/// A named stretch of the x axis.
struct ChartBand {
  double from = 0.0, to = 1.0;
  std::string label;
};

struct ChartPanel {
  ChartAxis x, y;
  double height = 300.0;
  std::vector<ChartLine> lines;
  std::vector<ChartMarks> marks;
  std::vector<ChartBand> bands;  // names are written above the first panel only
};

/// Panels stand above each other; neighbours with the same x title share their x axis.
struct Chart {
  std::string title;
  std::string subtitle;  // the key of the marks follows it
  std::string summary;   // read out instead of the picture
  std::vector<ChartPanel> panels;
};

inline constexpr int kChartStyles = 5;

/// The picture, 720 units wide, a line of text for each shape, coordinates to a tenth of a unit.
std::string svg_of(const Chart& chart);

}  // namespace voltwright::tools
