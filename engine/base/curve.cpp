#include "engine/base/curve.h"

namespace voltwright::base {

double curve_at(const Curve& curve, double x, double if_empty) {
  if (curve.empty()) return if_empty;
  if (x <= curve.front().x) return curve.front().y;
  if (x >= curve.back().x) return curve.back().y;
  const auto upper =
      std::upper_bound(curve.begin(), curve.end(), x, [](double v, const CurvePoint& p) { return v < p.x; });
  const auto lower = upper - 1;
  return lower->y + (x - lower->x) / (upper->x - lower->x) * (upper->y - lower->y);
}

}  // namespace voltwright::base
