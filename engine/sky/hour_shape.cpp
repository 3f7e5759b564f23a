#include "engine/sky/hour_shape.h"

#include <algorithm>
#include <array>

namespace voltwright::sky {
namespace {

/// Weights of the start, middle and end of the hour for each minute.
struct Weights {
  std::array<float, 60> start{};
  std::array<float, 60> middle{};
  std::array<float, 60> end{};
};

constexpr Weights make_weights() {
  Weights w;
  for (std::size_t i = 0; i < 60; ++i) {
    const double x = (static_cast<double>(i) + 0.5) / 60.0;
    w.start[i] = static_cast<float>(x < 0.5 ? 1.0 - 2.0 * x : 0.0);
    w.end[i] = static_cast<float>(x < 0.5 ? 0.0 : 2.0 * x - 1.0);
    w.middle[i] = static_cast<float>(x < 0.5 ? 2.0 * x : 2.0 - 2.0 * x);
  }
  return w;
}
constexpr Weights kWeights = make_weights();

}  // namespace

void shape_hour(const float* clear_sky, double before, double ratio, double after, double largest_ratio,
                float* irradiance) {
  double in_start = 0.0;
  double in_middle = 0.0;
  double in_end = 0.0;
  for (std::size_t i = 0; i < 60; ++i) {
    const double c = static_cast<double>(clear_sky[i]);
    in_start += c * static_cast<double>(kWeights.start[i]);
    in_middle += c * static_cast<double>(kWeights.middle[i]);
    in_end += c * static_cast<double>(kWeights.end[i]);
  }
  // Departures from the hour's own ratio; weighted by the clear sky they cancel.
  double start = 0.5 * (before - ratio);
  double end = 0.5 * (after - ratio);
  double middle = in_middle > 0.0 ? -(start * in_start + end * in_end) / in_middle : 0.0;
  const double highest = std::max({start, middle, end});
  const double lowest = std::min({start, middle, end});
  double part = in_middle > 0.0 ? 1.0 : 0.0;
  if (highest > 0.0) part = std::min(part, std::max(0.0, largest_ratio - ratio) / highest);
  if (lowest < 0.0) part = std::min(part, ratio / -lowest);
  start *= part;
  middle *= part;
  end *= part;
  const auto r = static_cast<float>(ratio);
  const auto s = static_cast<float>(start);
  const auto m = static_cast<float>(middle);
  const auto e = static_cast<float>(end);
  for (std::size_t i = 0; i < 60; ++i) {
    const float shape = r + (s * kWeights.start[i] + m * kWeights.middle[i] + e * kWeights.end[i]);
    irradiance[i] = std::max(0.0F, clear_sky[i] * shape);
  }
}

}  // namespace voltwright::sky
