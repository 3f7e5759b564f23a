#pragma once
// Piecewise-linear curves as published, and the same on a uniform grid for quick look-up.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include "engine/base/lanes.h"

namespace voltwright::base {

struct CurvePoint {
  double x = 0.0;
  double y = 0.0;
};

/// Points of a piecewise-linear curve, x strictly increasing.
using Curve = std::vector<CurvePoint>;

/// Value of the curve at x; constant beyond its ends; `if_empty` when it has no points.
double curve_at(const Curve& curve, double x, double if_empty);

/// A function sampled on `Intervals` equal steps over [low, high]; linear between samples, constant beyond.
template <std::size_t Intervals>
struct UniformTable {
  double low = 0.0;
  double per_unit = 1.0;  // intervals per unit of x
  std::array<double, Intervals + 2> value{};

  template <class F>
  void fill(double from, double to, F f) {
    low = from;
    per_unit = static_cast<double>(Intervals) / (to - from);
    for (std::size_t i = 0; i <= Intervals; ++i) {
      value[i] = f(from + (to - from) * static_cast<double>(i) / static_cast<double>(Intervals));
    }
    value[Intervals + 1] = value[Intervals];
  }
};

/// A table value with its slope per unit of x.
template <class R>
struct ValueAndSlope {
  R value;
  R slope;
};

/// Looks up `member` of each lane's table set at x.
template <class R, class Tables, std::size_t Intervals>
ValueAndSlope<R> look_up(const typename Lanes<R>::template PerLane<const Tables*>& tables,
                         UniformTable<Intervals> Tables::*member, const R& x) {
  using L = Lanes<R>;
  const auto& first = L::lane(tables, 0)->*member;
  const R low = R(first.low);
  const R per_unit = R(first.per_unit);
  const R position = clamp_of<R>((x - low) * per_unit, R(0.0), R(static_cast<double>(Intervals)));
  const R cell = L::whole(position);
  const R lower = L::generate([&](std::size_t i) {
    return (L::lane(tables, i)->*member).value[static_cast<std::size_t>(L::lane_value(cell, i))];
  });
  const R upper = L::generate([&](std::size_t i) {
    return (L::lane(tables, i)->*member).value[static_cast<std::size_t>(L::lane_value(cell, i)) + 1];
  });
  const R rise = upper - lower;
  return {lower + (position - cell) * rise, rise * per_unit};
}

}  // namespace voltwright::base
