#include "engine/season/surroundings.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace voltwright::season {

namespace {
constexpr double kCabinLag_min = 120.0;
}  // namespace

std::vector<float> cabin_temperature_C(const bank::Surroundings& surroundings,
                                       std::span<const float> outside_C, bool occupied) {
  std::vector<float> cabin(outside_C.size());
  const double keep = std::exp(-1.0 / kCabinLag_min);
  const double heated_C = surroundings.cabin_heated_to.as_celsius();
  double inside_C = outside_C.empty() ? 0.0 : static_cast<double>(outside_C.front());
  for (std::size_t i = 0; i < outside_C.size(); ++i) {
    const double out_C = static_cast<double>(outside_C[i]);
    inside_C = out_C + (inside_C - out_C) * keep;
    cabin[i] = static_cast<float>(occupied ? std::max(inside_C, heated_C) : inside_C);
  }
  return cabin;
}

std::vector<float> bank_surroundings_C(const bank::Surroundings& surroundings,
                                       std::span<const float> outside_C, std::span<const float> cabin_C,
                                       std::span<const std::uint8_t> driving) {
  switch (surroundings.location) {
    case bank::Location::kCabin:
      return {cabin_C.begin(), cabin_C.end()};
    case bank::Location::kOutside:
    case bank::Location::kHeatedBox:
      return {outside_C.begin(), outside_C.end()};
    case bank::Location::kEngineBay: {
      std::vector<float> bay(outside_C.size());
      const double rise_K = units::as_kelvins(surroundings.engine_bay_rise);
      const double warms_min = units::as_seconds(surroundings.engine_bay_warms) / 60.0;
      const double cools_min = units::as_seconds(surroundings.engine_bay_cools) / 60.0;
      double above_K = 0.0;
      for (std::size_t i = 0; i < outside_C.size(); ++i) {
        const bool warm = driving[i] != 0;
        const double keep = std::exp(-1.0 / (warm ? warms_min : cools_min));
        const double settled_K = warm ? rise_K : 0.0;
        above_K = settled_K + (above_K - settled_K) * keep;
        bay[i] = static_cast<float>(static_cast<double>(outside_C[i]) + above_K);
      }
      return bay;
    }
  }
  return {outside_C.begin(), outside_C.end()};
}

}  // namespace voltwright::season
