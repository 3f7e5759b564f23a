#include "engine/ageing/swing_bins.h"

#include <algorithm>
#include <cmath>

namespace voltwright::ageing {

namespace {

constexpr double kDepthWidth = 0.005;
constexpr double kMeanWidth = 0.05;
constexpr double kTemperatureWidth_K = 4.0;
constexpr double kColdest_C = -80.0;
constexpr double kRateWidth_per_h = 0.1;
constexpr std::uint32_t kPerAxis = 256;
constexpr std::uint32_t kRates = 21;
/// The charge of an overfull or overdrawn bank lies a little beyond 0 to 1.
constexpr double kLowestMean = -1.0;

std::uint32_t place(double value, double low, double width) {
  const double steps = std::floor((value - low) / width);
  return static_cast<std::uint32_t>(std::clamp(steps, 0.0, static_cast<double>(kPerAxis - 1)));
}

std::uint32_t key_of(const Swing& swing) {
  const std::uint32_t rate = std::min(place(swing.charge_per_h, 0.0, kRateWidth_per_h), kRates - 1);
  const std::uint32_t known = (swing.charge_per_h > 0.0 ? 1U : 0U) + (swing.discharge_per_h > 0.0 ? 2U : 0U);
  std::uint32_t key = place(swing.depth, 0.0, kDepthWidth);
  key = key * kPerAxis + place(swing.mean_soc, kLowestMean, kMeanWidth);
  key = key * kPerAxis + place(swing.temperature_C, kColdest_C, kTemperatureWidth_K);
  return key * kPerAxis + rate * 4U + known;
}

}  // namespace

void SwingBins::add(const Swing& swing) {
  Sums& sums = bins_[key_of(swing)];
  const double moved = swing.count * swing.depth;
  sums.count += swing.count;
  sums.moved += moved;
  sums.mean_soc += moved * swing.mean_soc;
  sums.temperature += moved * swing.temperature_C;
  sums.charge += moved * swing.charge_per_h;
  sums.discharge += moved * swing.discharge_per_h;
}

void SwingBins::append_to(std::vector<Swing>& swings) const {
  for (const auto& [key, sums] : bins_) {
    if (sums.moved <= 0.0) continue;
    Swing swing;
    swing.depth = sums.moved / sums.count;
    swing.mean_soc = sums.mean_soc / sums.moved;
    swing.count = sums.count;
    swing.charge_per_h = sums.charge / sums.moved;
    swing.discharge_per_h = sums.discharge / sums.moved;
    swing.temperature_C = sums.temperature / sums.moved;
    swings.push_back(swing);
  }
}

}  // namespace voltwright::ageing
