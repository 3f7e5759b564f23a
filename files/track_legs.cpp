#include "files/track_legs.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <iterator>
#include <utility>

#include "files/great_circle.h"
#include "files/text_problem.h"
#include "files/track_moves.h"
#include "files/zones.h"

namespace voltwright::files {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr double kSamePlace_km = 2.0;
constexpr int kLongest_days = 3653;
constexpr int kStep_min = 5;
constexpr std::int64_t kStep_s = std::int64_t{60} * kStep_min;
constexpr std::int64_t kDay_s = 86400;
constexpr int kDay_min = 1440;
/// Clocks of two places that differ by more have the date line between them.
constexpr std::int64_t kDateLine_s = 43200;
constexpr double kFastest_km_h = 300.0;

year_month_day date_of(int day) { return year_month_day{sys_days{days{day}}}; }

base::Result<std::int64_t> midnight(const std::string& zone, int day) {
  const year_month_day date = date_of(day);
  return local_midnight_utc(zone, static_cast<int>(date.year()),
                            static_cast<int>(static_cast<unsigned>(date.month())),
                            static_cast<int>(static_cast<unsigned>(date.day())));
}

base::Result<std::int64_t> offset_s(const std::string& zone, std::int64_t utc_s) {
  base::Result<journey::CivilClock> clock = civil_clock(zone, utc_s, utc_s + 1);
  if (!clock) return clock.problems();
  return std::int64_t{clock.value().offset_s(utc_s)};
}

struct DayDriving {
  std::int64_t sum_s = 0;
  std::int64_t first_utc_s = 0;
};

DayDriving driving_between(const Moves& moves, std::int64_t from, std::int64_t to) {
  DayDriving driving;
  const auto begin = std::partition_point(moves.drives.begin(), moves.drives.end(),
                                          [&](const Drive& d) { return d.to_utc_s <= from; });
  for (auto d = begin; d != moves.drives.end() && d->from_utc_s < to; ++d) {
    const std::int64_t first = std::max(d->from_utc_s, from);
    if (driving.sum_s == 0) driving.first_utc_s = first;
    driving.sum_s += std::min(d->to_utc_s, to) - first;
  }
  return driving;
}

bool alike(const TrackLeg& a, const TrackLeg& b) {
  return !a.to && !b.to && a.zone == b.zone && a.drive_min == b.drive_min &&
         a.drive_from_s == b.drive_from_s && great_circle_km(a.site, b.site) <= kSamePlace_km;
}

class Cutting {
 public:
  Cutting(const Track& track, const std::string& name, const Gazetteer& gazetteer)
      : track_(track), name_(name), gazetteer_(gazetteer), moves_(moves_of(track.points)) {
    journey_.warnings = track.warnings;
  }

  base::Result<TrackJourney> cut() {
    const std::int64_t begin = moves_.points.front().utc_s;
    const std::int64_t end = moves_.points.back().utc_s;
    if (end - begin > (kLongest_days - 1) * kDay_s) {
      return text_problem(name_, track_.points.front().line, 1,
                          {.what = "The track lasts longer than ten years.",
                           .field = "time",
                           .given = fmt::format("{} days", (end - begin) / kDay_s),
                           .limit = fmt::format("up to {} days", kLongest_days),
                           .remedy = "Is a time wrong? Else cut the track."});
    }
    sky::Site here = site_at(moves_, begin);
    std::string zone = gazetteer_.zone_at(here.latitude_deg, here.longitude_deg);
    auto offset = offset_s(zone, begin);
    if (!offset) return offset.problems();
    int day = static_cast<int>((begin + offset.value()) / kDay_s);
    journey_.first_day = day;
    while (true) {
      const auto from = midnight(zone, day);
      const auto to = midnight(zone, day + 1);
      if (!from || !to) return (from ? to : from).problems();
      sky::Site next = site_at(moves_, to.value());
      if (great_circle_km(here, next) <= kSamePlace_km) next = here;
      const std::string next_zone = gazetteer_.zone_at(next.latitude_deg, next.longitude_deg);
      auto before_s = offset_s(zone, to.value());
      auto after_s = offset_s(next_zone, to.value());
      if (!before_s || !after_s) return (before_s ? after_s : before_s).problems();
      add_day(here, next, zone, from.value(), to.value(), before_s.value());
      if (to.value() > end) break;
      const std::int64_t ahead_s = after_s.value() - before_s.value();
      day += ahead_s > kDateLine_s ? 2 : (ahead_s < -kDateLine_s ? 0 : 1);
      here = next;
      zone = next_zone;
    }
    sum_up();
    return std::move(journey_);
  }

 private:
  void add_day(const sky::Site& here, const sky::Site& next, const std::string& zone, std::int64_t from,
               std::int64_t to, std::int64_t clock_s) {
    TrackLeg leg;
    leg.zone = zone;
    leg.site = here;
    const DayDriving driving = driving_between(moves_, from, to);
    const auto minutes = static_cast<int>((driving.sum_s + kStep_s / 2) / kStep_s) * kStep_min;
    if (minutes > 0) {
      leg.drive_min = std::min(minutes, kDay_min);
      const std::int64_t local_s = (driving.first_utc_s + clock_s) % kDay_s;
      const int first_min = static_cast<int>(local_s / kStep_s) * kStep_min;
      leg.drive_from_s = 60 * std::min(first_min, kDay_min - leg.drive_min);
    }
    if (great_circle_km(here, next) > kSamePlace_km) {
      leg.to = next;
      leg.to_label = gazetteer_.label_at(next.latitude_deg, next.longitude_deg);
    }
    if (!journey_.legs.empty() && alike(journey_.legs.back(), leg)) {
      ++journey_.legs.back().days;
      return;
    }
    leg.label = gazetteer_.label_at(here.latitude_deg, here.longitude_deg);
    journey_.legs.push_back(std::move(leg));
  }

  void warn(int line, std::string what, std::string given, std::string remedy) {
    journey_.warnings.push_back(text_warning(name_, line, 1,
                                             {.what = std::move(what),
                                              .field = "",
                                              .given = std::move(given),
                                              .limit = "",
                                              .remedy = std::move(remedy)}));
  }

  void sum_up() {
    journey_.stays = moves_.stays.size();
    journey_.drives = moves_.drives.size();
    for (const Drive& drive : moves_.drives) {
      journey_.driven_km += drive.length_km;
      journey_.driven_h += static_cast<double>(drive.to_utc_s - drive.from_utc_s) / 3600.0;
    }
    if (moves_.gaps > 0) {
      warn(track_.points.front().line,
           fmt::format("In {} gaps of more than 10 min the place changed.", moves_.gaps), "",
           "Driving there is taken at 60 km/h over 1.3 times the straight line (assumption).");
    }
    for (std::size_t i = 1; i < moves_.points.size(); ++i) {
      const TrackPoint& a = moves_.points[i - 1];
      const TrackPoint& b = moves_.points[i];
      const double km =
          great_circle_km({a.latitude_deg, a.longitude_deg, 0.0}, {b.latitude_deg, b.longitude_deg, 0.0});
      const double km_h = km * 3600.0 / static_cast<double>(b.utc_s - a.utc_s);
      if (km_h <= kFastest_km_h) continue;
      warn(b.line, "The track moves faster than any vehicle on land or sea.",
           fmt::format("{:.0f} km/h from line {}", km_h, a.line),
           "Is a coordinate wrong? Take the point out; a flight is better left out of the track.");
      break;  // one is enough to look into the track
    }
  }

  const Track& track_;
  const std::string& name_;
  const Gazetteer& gazetteer_;
  Moves moves_;
  TrackJourney journey_;
};

void add_point(std::string& text, const char* prefix, std::string label, const sky::Site& site) {
  std::replace(label.begin(), label.end(), '"', '\'');
  std::replace(label.begin(), label.end(), '\\', '/');
  fmt::format_to(std::back_inserter(text),
                 "{0}place = \"{1}\"\n{0}lat = {2:.4f}\n{0}lon = {3:.4f}\n{0}elevation = \"{4:.0f} m\"\n",
                 prefix, label, site.latitude_deg, site.longitude_deg, site.elevation_m);
}

}  // namespace

base::Result<TrackJourney> track_journey(const Track& track, const std::string& name,
                                         const Gazetteer& gazetteer) {
  return Cutting(track, name, gazetteer).cut();
}

std::string legs_toml(const TrackJourney& journey) {
  std::string text;
  for (const TrackLeg& leg : journey.legs) {
    text += text.empty() ? "[[leg]]\n" : "\n[[leg]]\n";
    add_point(text, "", leg.label, leg.site);
    text += "zone = \"" + leg.zone + "\"\n";
    if (leg.to) add_point(text, "to_", leg.to_label, *leg.to);
    if (&leg == &journey.legs.front()) {
      const year_month_day date = date_of(journey.first_day);
      fmt::format_to(std::back_inserter(text), "from = {:04}-{:02}-{:02}\n", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    }
    fmt::format_to(std::back_inserter(text), "days = {}\n", leg.days);
    if (leg.drive_min > 0) {
      const int from_min = leg.drive_from_s / 60;
      fmt::format_to(std::back_inserter(text), "drive = \"{} min/day\"\ndrive_from = \"{:02}:{:02}\"\n",
                     leg.drive_min, from_min / 60, from_min % 60);
    }
  }
  return text;
}

}  // namespace voltwright::files
