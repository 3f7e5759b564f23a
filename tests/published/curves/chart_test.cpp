// The charts of the method pages: names clear of each other and of the lines, texts escaped.
#include "tools/draw_method/chart.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tools/draw_method/labels.h"

namespace voltwright::tools {
namespace {

bool apart(const Box& a, const Box& b) {
  return a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
}

bool inside(const Box& box, const Box& frame) {
  return box.left >= frame.left && box.right <= frame.right && box.top >= frame.top &&
         box.bottom <= frame.bottom;
}

// Five lines that run close together, as discharges at neighbouring rates do.
TEST(Labels, KeepClearOfEachOtherAndOfMarks) {
  const Box frame{0.0, 0.0, 600.0, 300.0};
  LabelPlacer placer(frame);
  std::vector<base::Curve> lines;
  for (int i = 0; i < 5; ++i) {
    base::Curve line;
    for (int k = 0; k <= 60; ++k) line.push_back({10.0 * k, 100.0 + 6.0 * i + 0.02 * k * k});
    lines.push_back(line);
    placer.add_line(line);
  }
  const Box mark{295.0, 90.0, 305.0, 100.0};
  placer.add_box(mark);
  std::vector<Box> boxes;
  for (std::size_t i = 0; i < lines.size(); ++i) boxes.push_back(placer.place(i, 40.0, 15.0).box);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    EXPECT_TRUE(inside(boxes[i], frame)) << i;
    EXPECT_TRUE(apart(boxes[i], mark)) << i;
    for (std::size_t k = 0; k < i; ++k) EXPECT_TRUE(apart(boxes[i], boxes[k])) << i << " and " << k;
    for (const base::Curve& line : lines) {
      for (const base::CurvePoint& p : line) {
        EXPECT_TRUE(apart(boxes[i], {p.x, p.y, p.x, p.y})) << i << " covers a line at " << p.x;
      }
    }
  }
}

TEST(Labels, WidthCountsCharactersAndNotBytes) {
  EXPECT_DOUBLE_EQ(text_width("25 °C"), text_width("25 *C"));
  EXPECT_DOUBLE_EQ(text_width(""), 0.0);
}

TEST(ChartText, StrokeDistance) {
  EXPECT_DOUBLE_EQ(distance_to_stroke({0.0, 3.0}, {-1.0, 0.0}, {1.0, 0.0}), 3.0);
  EXPECT_DOUBLE_EQ(distance_to_stroke({4.0, 4.0}, {-1.0, 0.0}, {1.0, 0.0}), 5.0);
  EXPECT_DOUBLE_EQ(distance_to_stroke({3.0, 4.0}, {0.0, 0.0}, {0.0, 0.0}), 5.0);
}

Chart plain_chart() {
  Chart chart;
  chart.title = "a < b & c";
  chart.subtitle = "s";
  ChartPanel panel;
  panel.x = {"x, h", 0.0, 10.0, false, {}, 0};
  panel.y = {"y, V", 0.0, 1.0, false, {}, 1};
  base::Curve straight;
  for (int i = 0; i <= 100; ++i) straight.push_back({0.1 * i, 0.01 * i});
  panel.lines.push_back({straight, "line", 1});
  panel.marks.push_back({{{5.0, 0.5}}, 1, "mark"});
  chart.panels.push_back(panel);
  return chart;
}

TEST(ChartText, StandsAloneAndIsEscaped) {
  const std::string svg = svg_of(plain_chart());
  EXPECT_TRUE(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"720\""));
  EXPECT_NE(svg.find(">a &lt; b &amp; c</text>"), std::string::npos);
  EXPECT_NE(svg.find("class=\"paper\""), std::string::npos);
  EXPECT_NE(svg.find(">mark</text>"), std::string::npos);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

// A straight line needs its two ends, however many points it was computed at.
TEST(ChartText, LineKeepsOnlyThePointsItNeeds) {
  const std::string svg = svg_of(plain_chart());
  const auto from = svg.find("class=\"l s1\" d=\"M");
  ASSERT_NE(from, std::string::npos);
  const std::string path = svg.substr(from, svg.find("/>", from) - from);
  EXPECT_EQ(std::count(path.begin(), path.end(), 'L'), 1);
}

}  // namespace
}  // namespace voltwright::tools
