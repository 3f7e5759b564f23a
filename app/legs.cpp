#include "app/legs.h"

#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"
#include "files/text_file.h"
#include "files/utc_text.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json place_json(const std::string& label, const sky::Site& site) {
  return {{"place", label},
          {"latitude_deg", site.latitude_deg},
          {"longitude_deg", site.longitude_deg},
          {"elevation_m", site.elevation_m}};
}

}  // namespace

base::Result<files::TrackJourney> legs_of_track(const std::string& path) {
  const auto text = files::read_text(path);
  if (!text) return text.problems();
  const auto gazetteer = files::Gazetteer::built_in();
  if (!gazetteer) return gazetteer.problems();
  const auto track = files::read_gpx(text.value(), path);
  if (!track) return track.problems();
  return files::track_journey(track.value(), path, gazetteer.value());
}

std::string to_json(const files::TrackJourney& journey) {
  constexpr std::int64_t kDay_s = 86400;
  constexpr std::size_t kDateLength = 10;
  Json json;
  json["stamp"] = {{"format", kAnswerFormat}, {"engine", kVersion}};
  json["first_day"] = files::utc_text(journey.first_day * kDay_s).substr(0, kDateLength);
  json["stays"] = journey.stays;
  json["drives"] = journey.drives;
  json["driven_km"] = journey.driven_km;
  json["driven_h"] = journey.driven_h;
  Json legs = Json::array();
  for (const files::TrackLeg& leg : journey.legs) {
    Json one = {{"from", place_json(leg.label, leg.site)}, {"zone", leg.zone}, {"days", leg.days}};
    if (leg.to) one["to"] = place_json(leg.to_label, *leg.to);
    one["drive_min_a_day"] = leg.drive_min;
    if (leg.drive_min > 0) one["drive_from_s_of_day"] = leg.drive_from_s;
    legs.push_back(std::move(one));
  }
  json["legs"] = std::move(legs);
  json["warnings"] = problem_list_json(journey.warnings);
  return json_text(json);
}

}  // namespace voltwright::app
