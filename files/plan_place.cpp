// Places of legs: by name, or by latitude and longitude.
#include <fmt/core.h>

#include <optional>
#include <string>
#include <utility>

#include "engine/units/parse.h"
#include "files/plan_parts.h"
#include "files/zones.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

/// Degrees as a number or as "69.65 deg".
std::optional<double> read_degrees(Section& section, std::string_view key, double most) {
  return section.value<double>(
      key, parse_angle_deg,
      {-most, most, most > 100.0 ? "-180 to 180 deg, east positive" : "-90 to 90 deg, north positive",
       "69.65"});
}

/// The keys that name a place, for the start and for the end of a leg.
struct PlaceKeys {
  const char* place;
  const char* lat;
  const char* lon;
  const char* elevation;
};
constexpr PlaceKeys kStartKeys = {"place", "lat", "lon", "elevation"};
constexpr PlaceKeys kEndKeys = {"to_place", "to_lat", "to_lon", "to_elevation"};

std::optional<journey::Place> read_named_place(Section& section, const PlaceKeys& keys) {
  const auto name = section.text(keys.place);
  if (!name) {
    if (!section.has(keys.place))
      section.note_missing(keys.place, "\"Oslo\", or lat = 59.91 and lon = 10.75");
    return std::nullopt;
  }
  const Gazetteer& gazetteer = section.reading().gazetteer;
  if (std::optional<journey::Place> place = gazetteer.find(*name)) return place;
  base::Problem& problem =
      section.note(keys.place, fmt::format("\"{}\" is not in the place list.", shown(*name)));
  std::string near;
  for (const std::string& word : gazetteer.near_names(*name)) near += (near.empty() ? "" : ", ") + word;
  problem.remedy = near.empty() ? fmt::format("Give {} and {} in its place.", keys.lat, keys.lon)
                                : fmt::format("Near: {}.", near);
  return std::nullopt;
}

std::optional<journey::Place> read_point(Section& section, const PlaceKeys& keys) {
  const auto lat = read_degrees(section, keys.lat, 90.0);
  const auto lon = read_degrees(section, keys.lon, 180.0);
  if (!section.has(keys.lat)) section.note_missing(keys.lat, "69.65");
  if (!section.has(keys.lon)) section.note_missing(keys.lon, "18.96");
  const auto label = section.text(keys.place);
  if (!lat || !lon) return std::nullopt;
  journey::Place place;
  place.name = label.value_or(fmt::format("{:.2f}, {:.2f}", *lat, *lon));
  place.site.latitude_deg = *lat;
  place.site.longitude_deg = *lon;
  if (!section.has("zone")) place.zone = section.reading().gazetteer.zone_at(*lat, *lon);
  return place;
}

/// Height in m, `usual` unless the section says otherwise.
double read_elevation(Section& section, const PlaceKeys& keys, double usual) {
  Length elevation = metres(usual);
  section.set<Length>(keys.elevation, parse_length,
                      {metres(-450), metres(6000), "-450 m to 6000 m", "\"120 m\""}, elevation);
  return as_metres(elevation);
}

}  // namespace

std::optional<journey::Place> read_place(Section& section) {
  section.know({"place", "lat", "lon", "elevation", "zone"});
  const bool is_point = section.has("lat") || section.has("lon");
  std::optional<journey::Place> place =
      is_point ? read_point(section, kStartKeys) : read_named_place(section, kStartKeys);
  const double elevation_m = read_elevation(section, kStartKeys, place ? place->site.elevation_m : 0.0);
  const auto zone = section.text("zone");
  if (zone) {
    const base::Result<journey::CivilClock> known = civil_clock(*zone, 0, 1);
    if (!known) {
      const base::Problem& p = known.problems().front();
      base::Problem& noted = section.note("zone", p.what);
      noted.limit = p.limit;
      noted.remedy = p.remedy;
      return std::nullopt;
    }
  }
  if (!place) return std::nullopt;
  place->site.elevation_m = elevation_m;
  if (zone) place->zone = *zone;
  return place;
}

void read_end_place(Section& section, journey::Leg& leg) {
  section.know({"to_place", "to_lat", "to_lon", "to_elevation"});
  const bool is_point = section.has("to_lat") || section.has("to_lon");
  if (!is_point && !section.has("to_place")) {
    if (section.has("to_elevation")) section.note_missing("to_place", "\"Bergen\"");
    return;
  }
  std::optional<journey::Place> place =
      is_point ? read_point(section, kEndKeys) : read_named_place(section, kEndKeys);
  if (!place) return;
  place->site.elevation_m = read_elevation(section, kEndKeys, place->site.elevation_m);
  leg.end_place = std::move(*place);
  if (as_seconds(leg.drive_per_day) > 0.0) return;
  section.note(is_point ? "to_lat" : "to_place", "The leg leads to another place, but does not drive.")
      .remedy = "Add drive = \"4 h/day\".";
}

}  // namespace voltwright::files
