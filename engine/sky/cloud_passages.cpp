#include "engine/sky/cloud_passages.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace voltwright::sky {
namespace {

constexpr std::size_t kMinutes = 60;
constexpr double kBright = 1.05;
constexpr double kDark = 0.35;
constexpr double kBesideCloud = 0.10;
constexpr double kPair_min = 14.0;
constexpr double kLowestBroken = 0.45;
constexpr double kHighestBroken = 0.95;
constexpr double kLeastLight = 0.05;

using Levels = std::array<double, kMinutes>;

/// Part of each minute that is bright.
Levels bright_parts(double share, base::RandomStream& random) {
  Levels bright{};
  bool is_bright = random.uniform() < share;
  double now = 0.0;
  while (now < static_cast<double>(kMinutes)) {
    const double mean = kPair_min * (is_bright ? share : 1.0 - share);
    const double end = std::min(static_cast<double>(kMinutes), now - mean * std::log(1.0 - random.uniform()));
    if (is_bright) {
      const auto last = static_cast<std::size_t>(end);
      for (auto m = static_cast<std::size_t>(now); m < kMinutes && m <= last; ++m) {
        const auto start = static_cast<double>(m);
        bright[m] += std::max(0.0, std::min(end, start + 1.0) - std::max(now, start));
      }
    }
    now = end;
    is_bright = !is_bright;
  }
  return bright;
}

}  // namespace

bool is_broken_cloud(double ratio) { return ratio > kLowestBroken && ratio < kHighestBroken; }

void lay_cloud_passages(const float* clear_sky, double ratio, double largest_ratio,
                        base::RandomStream& random, float* irradiance) {
  if (!is_broken_cloud(ratio)) return;
  const Levels bright = bright_parts((ratio - kDark) / (kBright - kDark), random);
  Levels level{};
  double light = 0.0;
  double clear = 0.0;
  for (std::size_t i = 0; i < kMinutes; ++i) {
    const double beside = std::min(i > 0 ? bright[i - 1] : 1.0, i + 1 < kMinutes ? bright[i + 1] : 1.0);
    const bool edge = bright[i] > 0.99 && beside < 0.5;
    level[i] = kDark + (kBright - kDark) * bright[i] + (edge ? kBesideCloud : 0.0);
    light += static_cast<double>(clear_sky[i]) * level[i];
    clear += static_cast<double>(clear_sky[i]);
  }
  if (!(clear > 0.0)) return;
  // Departures from the mean level carry no energy, so that any part of them may be added.
  const double mean = light / clear;
  double part = 1.0;
  for (std::size_t i = 0; i < kMinutes; ++i) {
    const double departure = static_cast<double>(clear_sky[i]) * (level[i] - mean);
    const double now = static_cast<double>(irradiance[i]);
    const double room = departure > 0.0 ? largest_ratio * static_cast<double>(clear_sky[i]) - now
                                        : now - kLeastLight * static_cast<double>(clear_sky[i]);
    const double size = std::abs(departure);
    if (size > 0.0) part = std::min(part, std::max(0.0, room) / size);
  }
  for (std::size_t i = 0; i < kMinutes; ++i) {
    irradiance[i] =
        std::max(0.0F, static_cast<float>(static_cast<double>(irradiance[i]) +
                                          part * static_cast<double>(clear_sky[i]) * (level[i] - mean)));
  }
}

}  // namespace voltwright::sky
