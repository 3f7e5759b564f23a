// What hides the sun from an array: the land's edge, and masts, trees and roofs nearby.
#include <fmt/core.h>

#include <algorithm>
#include <vector>

#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr std::size_t kMostPoints = 360;
constexpr std::size_t kMostObstacles = 40;

const Span<double> kAround = {0.0, 360.0, "0 to 360 deg from north over east", "\"SSW\""};

double wanted_direction(Section& section, std::string_view key) {
  double azimuth_deg = 0.0;
  section.set_wanted<double>(key, parse_direction_deg, kAround, azimuth_deg);
  return azimuth_deg;
}

Length wanted_length(Section& section, std::string_view key, const Span<Length>& span) {
  Length length = span.min;
  section.set_wanted<Length>(key, parse_length, span, length);
  return length;
}

sky::HorizonPoint read_point(Section& section) {
  sky::HorizonPoint point;
  point.azimuth_deg = wanted_direction(section, "azimuth");
  section.set_wanted<double>("elevation", parse_angle_deg, {0.0, 90.0, "0 to 90 deg", "\"12 deg\""},
                             point.elevation_deg);
  section.finish();
  return point;
}

std::vector<sky::HorizonPoint> read_horizon(Section& solar) {
  std::vector<sky::HorizonPoint> points;
  for (Section& section : solar.sections("horizon", kMostPoints)) {
    const sky::HorizonPoint point = read_point(section);
    const auto same = [&](const auto& p) { return p.azimuth_deg == point.azimuth_deg; };
    if (section.has("azimuth") && std::any_of(points.begin(), points.end(), same)) {
      section.note("azimuth", "The horizon has two heights in this direction.").given =
          fmt::format("{:.4g} deg", point.azimuth_deg);
    }
    points.push_back(point);
  }
  return points;
}

/// The light that comes through; none unless the plan says so (assumption, the careful one).
double read_passes(Section& section) {
  Fraction passes;
  section.set<Fraction>("passes", parse_fraction, {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"30 %\""},
                        passes);
  return as_fraction(passes);
}

sky::Obstacle read_mast(Section& section) {
  const double azimuth_deg = wanted_direction(section, "azimuth");
  const Length distance =
      wanted_length(section, "distance", {metres(0.05), metres(1000), "5 cm to 1 km", "\"2 m\""});
  const Length height =
      wanted_length(section, "height", {metres(0.01), metres(500), "1 cm to 500 m", "\"8 m\""});
  const Length width =
      wanted_length(section, "width", {metres(0.001), metres(100), "1 mm to 100 m", "\"15 cm\""});
  return sky::mast(azimuth_deg, as_metres(distance), as_metres(height), as_metres(width),
                   read_passes(section));
}

sky::Obstacle read_trees(Section& section) {
  const double from_deg = wanted_direction(section, "from");
  const double to_deg = wanted_direction(section, "to");
  const Length distance =
      wanted_length(section, "distance", {metres(0.05), metres(10000), "5 cm to 10 km", "\"20 m\""});
  const Length height =
      wanted_length(section, "height", {metres(0.01), metres(500), "1 cm to 500 m", "\"9 m\""});
  return sky::tree_line(from_deg, to_deg, as_metres(distance), as_metres(height), read_passes(section));
}

std::vector<sky::HorizonPoint> read_roof(Section& section) {
  const double azimuth_deg = wanted_direction(section, "azimuth");
  double slope_deg = 0.0;
  section.set_wanted<double>("slope", parse_angle_deg, {0.0, 89.0, "0 to 89 deg", "\"30 deg\""}, slope_deg);
  return sky::rising_roof(azimuth_deg, slope_deg);
}

}  // namespace

void read_shade(Section& section, supply::SolarArray& array) {
  std::vector<sky::HorizonPoint> land = read_horizon(section);
  std::vector<std::vector<sky::HorizonPoint>> roofs;
  std::vector<sky::Obstacle> obstacles;
  for (Section& shade : section.sections("shade", kMostObstacles)) {
    if (!shade.has("kind")) {
      shade.note_missing("kind", "\"mast\", \"trees\" or \"roof\"");
      continue;
    }
    const auto kind = shade.choice("kind", {"mast", "trees", "roof"});
    if (!kind) continue;
    if (*kind == 0) {
      obstacles.push_back(read_mast(shade));
    } else if (*kind == 1) {
      obstacles.push_back(read_trees(shade));
    } else {
      roofs.push_back(read_roof(shade));
    }
    shade.finish();
  }
  array.land = sky::Skyline(std::move(land));
  array.near = sky::Skyline({}, obstacles);
  for (std::vector<sky::HorizonPoint>& roof : roofs) array.near.raise(std::move(roof));
  if (const auto i = section.choice("sky_model", {"perez", "hay-davies", "isotropic"})) {
    static constexpr sky::SkyModel kModels[] = {sky::SkyModel::kPerez, sky::SkyModel::kHayDavies,
                                                sky::SkyModel::kIsotropic};
    array.sky_model = kModels[*i];
  }
}

}  // namespace voltwright::files
