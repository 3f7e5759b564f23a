#pragma once
// Puts the name of a line beside it where nothing else is in the way.
#include <string_view>
#include <vector>

#include "engine/base/curve.h"

namespace voltwright::tools {

/// A rectangle of a picture; y runs downwards.
struct Box {
  double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
};

/// Where a label goes: its box and, if it stands off its line, the stroke that leads to it.
struct LabelSpot {
  Box box;
  bool leader = false;
  base::CurvePoint from;  // on the line
  base::CurvePoint to;    // on the edge of the box
};

/// From a point to the nearest of a straight stroke from a to b.
double distance_to_stroke(const base::CurvePoint& p, const base::CurvePoint& a, const base::CurvePoint& b);

/// Width of a text of 12 units in a common sans-serif face, by its number of characters.
double text_width(std::string_view text);

class LabelPlacer {
 public:
  explicit LabelPlacer(const Box& frame) : frame_(frame) {}

  /// A line (in picture units) that labels shall not cover; returns its number.
  std::size_t add_line(const std::vector<base::CurvePoint>& points);
  /// A box that labels shall not cover.
  void add_box(const Box& box) { boxes_.push_back(box); }
  /// The best place for a label of this size at line `number`, kept free from then on: near its own line,
  /// away from the others, inside the frame.
  LabelSpot place(std::size_t number, double width, double height);

 private:
  /// What is wrong with a spot; no more is counted once `enough` is reached.
  double cost(const LabelSpot& spot, std::size_t number, double enough) const;

  Box frame_;
  std::vector<std::vector<base::CurvePoint>> lines_;  // as dots, a few units apart
  std::vector<Box> boxes_;
};

}  // namespace voltwright::tools
