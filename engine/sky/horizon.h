#pragma once
// What stands between the sky and an array: the land around it, and a mast, a line of trees or a roof nearby.
#include <array>
#include <cstddef>
#include <vector>

namespace voltwright::sky {

/// Height of the land's edge in one direction: azimuth from north over east, elevation 0 to 90 deg.
struct HorizonPoint {
  double azimuth_deg = 0.0;
  double elevation_deg = 0.0;
};

/// Something nearby that covers the sky from the level up to `elevation_deg` in a sector that runs clockwise
/// from one azimuth to another. `passes` is the share of light that comes through, 0 to 1: bare trees let
/// much through, and a mast shades a part of the array at a time.
struct Obstacle {
  double from_azimuth_deg = 0.0;
  double to_azimuth_deg = 0.0;
  double elevation_deg = 0.0;
  double passes = 0.0;
};

/// A mast or a pole, as seen from the array: height above it, distance and width in m, all above 0.
Obstacle mast(double azimuth_deg, double distance_m, double height_m, double width_m, double passes);

/// A row of trees or a wall across one direction, `from` clockwise to `to`.
Obstacle tree_line(double from_azimuth_deg, double to_azimuth_deg, double distance_m, double height_m,
                   double passes);

/// The skyline that a slope makes which rises from the array's foot towards an azimuth, as a tilted roof
/// does, with its slope in deg below 90: tan e = tan slope cos(direction - azimuth).
std::vector<HorizonPoint> rising_roof(double azimuth_deg, double slope_deg);

/// The light that all of it lets through, by direction, in whole degrees of azimuth.
class Skyline {
 public:
  /// An open sky.
  Skyline() = default;
  /// Points in any order, joined by straight lines around the compass; one point is a level edge all around.
  explicit Skyline(std::vector<HorizonPoint> land, const std::vector<Obstacle>& obstacles = {});

  bool open() const { return screens_.empty(); }

  /// Adds a further edge of land or roof: the higher of the two hides the sun.
  void raise(std::vector<HorizonPoint> land);

  /// Adds what another skyline holds back: light must pass both.
  void add(const Skyline& more);

  /// The same skyline turned clockwise, in whole degrees.
  Skyline turned(int by_deg) const;

  /// Share of the beam that passes, 0 to 1; the azimuth in rad, 0 to 2 pi, and the sine of the sun's
  /// elevation.
  float beam(float azimuth_rad, float sin_elevation) const {
    constexpr float kStepsPerRad = static_cast<float>(kSteps) / 6.2831853F;
    const auto step = static_cast<std::size_t>(static_cast<int>(azimuth_rad * kStepsPerRad)) % kSteps;
    float passes = 1.0F;
    for (const Screen& s : screens_) passes *= sin_elevation < s.sin_top[step] ? s.passes[step] : 1.0F;
    return passes;
  }

  /// Share of an evenly bright sky that a plane still sees, of what it would see under an open sky, 0 to 1.
  double view_of_sky(double tilt_deg, double plane_azimuth_deg) const;

 private:
  static constexpr std::size_t kSteps = 360;
  struct Screen {
    std::array<float, kSteps> sin_top{};
    std::array<float, kSteps> passes{};
  };
  std::vector<Screen> screens_;
};

}  // namespace voltwright::sky
