#include "engine/sky/horizon.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/sky/angle.h"

namespace voltwright::sky {
namespace {

double wrapped_deg(double azimuth_deg) { return azimuth_deg - 360.0 * std::floor(azimuth_deg / 360.0); }

/// Elevation of the edge in a direction, by straight lines between the points, which are sorted.
double edge_deg(const std::vector<HorizonPoint>& land, double azimuth_deg) {
  const auto after =
      std::find_if(land.begin(), land.end(), [&](const auto& p) { return p.azimuth_deg > azimuth_deg; });
  const HorizonPoint& to = after == land.end() ? land.front() : *after;
  const HorizonPoint& from = after == land.begin() ? land.back() : *(after - 1);
  const double width = wrapped_deg(to.azimuth_deg - from.azimuth_deg);
  const double part = width > 0.0 ? wrapped_deg(azimuth_deg - from.azimuth_deg) / width : 0.0;
  return from.elevation_deg + (to.elevation_deg - from.elevation_deg) * part;
}

bool within(const Obstacle& o, double azimuth_deg) {
  return wrapped_deg(azimuth_deg - o.from_azimuth_deg) <= wrapped_deg(o.to_azimuth_deg - o.from_azimuth_deg);
}

float sine_of_top(double elevation_deg) {
  return static_cast<float>(std::sin(radians(std::clamp(elevation_deg, 0.0, 90.0))));
}

}  // namespace

Obstacle mast(double azimuth_deg, double distance_m, double height_m, double width_m, double passes) {
  const double half_deg = degrees(std::atan2(0.5 * width_m, distance_m));
  // At least the half degree of its middle, so that the thinnest one falls into a step of the skyline.
  const double half = std::max(half_deg, 0.5);
  return {azimuth_deg - half, azimuth_deg + half, degrees(std::atan2(height_m, distance_m)), passes};
}

Obstacle tree_line(double from_azimuth_deg, double to_azimuth_deg, double distance_m, double height_m,
                   double passes) {
  return {from_azimuth_deg, to_azimuth_deg, degrees(std::atan2(height_m, distance_m)), passes};
}

std::vector<HorizonPoint> rising_roof(double azimuth_deg, double slope_deg) {
  std::vector<HorizonPoint> edge;
  for (int step = 0; step < 360; ++step) {
    const double rise = std::tan(radians(slope_deg)) * std::cos(radians(step - azimuth_deg));
    edge.push_back({static_cast<double>(step), degrees(std::atan(std::max(0.0, rise)))});
  }
  return edge;
}

Skyline::Skyline(std::vector<HorizonPoint> land, const std::vector<Obstacle>& obstacles) {
  raise(std::move(land));
  for (const Obstacle& o : obstacles) {
    if (!(o.elevation_deg > 0.0) || o.passes >= 1.0) continue;
    Screen screen;
    screen.passes.fill(static_cast<float>(std::clamp(o.passes, 0.0, 1.0)));
    for (std::size_t step = 0; step < kSteps; ++step) {
      const double azimuth_deg = static_cast<double>(step) + 0.5;
      if (within(o, azimuth_deg)) screen.sin_top[step] = sine_of_top(o.elevation_deg);
    }
    screens_.push_back(screen);
  }
}

void Skyline::raise(std::vector<HorizonPoint> land) {
  for (HorizonPoint& p : land) p.azimuth_deg = wrapped_deg(p.azimuth_deg);
  std::stable_sort(land.begin(), land.end(),
                   [](const auto& a, const auto& b) { return a.azimuth_deg < b.azimuth_deg; });
  const bool rises =
      std::any_of(land.begin(), land.end(), [](const auto& p) { return p.elevation_deg > 0.0; });
  if (!rises) return;
  Screen screen;
  for (std::size_t step = 0; step < kSteps; ++step) {
    screen.sin_top[step] = sine_of_top(edge_deg(land, static_cast<double>(step) + 0.5));
  }
  screens_.push_back(screen);
}

void Skyline::add(const Skyline& more) {
  screens_.insert(screens_.end(), more.screens_.begin(), more.screens_.end());
}

Skyline Skyline::turned(int by_deg) const {
  constexpr auto kAround = static_cast<std::ptrdiff_t>(kSteps);
  const std::ptrdiff_t ahead = ((by_deg % kAround) + kAround) % kAround;
  Skyline skyline = *this;
  for (Screen& s : skyline.screens_) {
    std::rotate(s.sin_top.begin(), s.sin_top.end() - ahead, s.sin_top.end());
    std::rotate(s.passes.begin(), s.passes.end() - ahead, s.passes.end());
  }
  return skyline;
}

double Skyline::view_of_sky(double tilt_deg, double plane_azimuth_deg) const {
  if (open()) return 1.0;
  constexpr int kRings = 180;  // of equal steps in the sine of elevation, which are equal parts of the sky
  double seen = 0.0;
  double all = 0.0;
  for (std::size_t step = 0; step < kSteps; step += 2) {
    const double azimuth_deg = static_cast<double>(step) + 0.5;
    const double turn = std::cos(radians(azimuth_deg - plane_azimuth_deg)) * std::sin(radians(tilt_deg));
    for (int ring = 0; ring < kRings; ++ring) {
      const double sine = (ring + 0.5) / kRings;
      const double weight =
          std::max(0.0, sine * std::cos(radians(tilt_deg)) + std::sqrt(1.0 - sine * sine) * turn);
      all += weight;
      seen += weight *
              static_cast<double>(beam(static_cast<float>(radians(azimuth_deg)), static_cast<float>(sine)));
    }
  }
  return all > 0.0 ? seen / all : 1.0;
}

}  // namespace voltwright::sky
