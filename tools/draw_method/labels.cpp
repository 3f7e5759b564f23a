#include "tools/draw_method/labels.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace voltwright::tools {

namespace {

using base::CurvePoint;

constexpr double kDotsApart = 3.0;
constexpr double kAnchorsApart = 9.0;
constexpr double kShortestLeader = 9.0;
constexpr double kClear = 5.0;  // other lines shall stay this far from a label
constexpr double kCoveredDot = 12.0;
constexpr double kNearDot = 4.0;
constexpr double kCrossedDot = 6.0;
constexpr double kCoveredBox = 1e4;
constexpr double kOutside = 1e6;
constexpr double kPerUnitAway = 0.25;

bool inside(const Box& box, const CurvePoint& p, double margin) {
  return p.x > box.left - margin && p.x < box.right + margin && p.y > box.top - margin &&
         p.y < box.bottom + margin;
}

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

double distance(const CurvePoint& a, const CurvePoint& b) { return std::hypot(a.x - b.x, a.y - b.y); }

std::vector<CurvePoint> dots_of(const std::vector<CurvePoint>& points) {
  std::vector<CurvePoint> dots;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0) {
      const double length = distance(points[i - 1], points[i]);
      const auto parts = static_cast<int>(length / kDotsApart);
      for (int k = 1; k <= parts; ++k) {
        const double t = static_cast<double>(k) / (parts + 1);
        dots.push_back({points[i - 1].x + t * (points[i].x - points[i - 1].x),
                        points[i - 1].y + t * (points[i].y - points[i - 1].y)});
      }
    }
    dots.push_back(points[i]);
  }
  return dots;
}

/// The label in one direction from its anchor.
LabelSpot spot_at(const CurvePoint& anchor, double angle, double away, double width, double height) {
  const double cx = std::cos(angle);
  const double cy = std::sin(angle);
  const double x = anchor.x + cx * (away + 0.5 * width);
  const double y = anchor.y + cy * (away + 0.5 * height);
  LabelSpot spot;
  spot.box = {x - 0.5 * width, y - 0.5 * height, x + 0.5 * width, y + 0.5 * height};
  spot.from = anchor;
  spot.to = {std::clamp(anchor.x, spot.box.left, spot.box.right),
             std::clamp(anchor.y, spot.box.top, spot.box.bottom)};
  spot.leader = distance(spot.from, spot.to) > kShortestLeader;
  return spot;
}

}  // namespace

double distance_to_stroke(const CurvePoint& p, const CurvePoint& a, const CurvePoint& b) {
  const double length = distance(a, b);
  if (length <= 0.0) return distance(p, a);
  const double along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / (length * length);
  const double t = std::clamp(along, 0.0, 1.0);
  return distance(p, {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
}

double text_width(std::string_view text) {
  constexpr double kMeanCharacter = 6.3;
  const auto characters = std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // without the later bytes of UTF-8
  });
  return kMeanCharacter * static_cast<double>(characters);
}

std::size_t LabelPlacer::add_line(const std::vector<CurvePoint>& points) {
  lines_.push_back(dots_of(points));
  return lines_.size() - 1;
}

double LabelPlacer::cost(const LabelSpot& spot, std::size_t number, double enough) const {
  const Box& b = spot.box;
  double sum = kPerUnitAway * distance(spot.from, spot.to);
  if (b.left < frame_.left || b.right > frame_.right || b.top < frame_.top || b.bottom > frame_.bottom) {
    sum += kOutside;
  }
  for (const Box& box : boxes_) sum += overlap(b, box) ? kCoveredBox : 0.0;
  for (std::size_t i = 0; i < lines_.size() && sum < enough; ++i) {
    for (const CurvePoint& dot : lines_[i]) {
      if (inside(b, dot, 0.0)) {
        sum += kCoveredDot;
      } else if (i != number && inside(b, dot, kClear)) {
        sum += kNearDot;
      }
      if (i != number && distance_to_stroke(dot, spot.from, spot.to) < kDotsApart) sum += kCrossedDot;
    }
  }
  return sum;
}

LabelSpot LabelPlacer::place(std::size_t number, double width, double height) {
  constexpr int kDirections = 16;
  constexpr double kTurn = 6.283185307179586;
  constexpr std::array kAway = {4.0, 10.0, 20.0, 34.0, 52.0};
  LabelSpot best;
  double least = std::numeric_limits<double>::infinity();
  CurvePoint last{-1e9, -1e9};
  for (const CurvePoint& anchor : lines_[number]) {
    if (distance(anchor, last) < kAnchorsApart) continue;
    last = anchor;
    for (const double away : kAway) {
      for (int k = 0; k < kDirections; ++k) {
        const LabelSpot spot = spot_at(anchor, kTurn * k / kDirections, away, width, height);
        const double now = cost(spot, number, least);
        if (now < least - 1e-6) {
          least = now;
          best = spot;
        }
      }
    }
  }
  boxes_.push_back(best.box);
  return best;
}

}  // namespace voltwright::tools
