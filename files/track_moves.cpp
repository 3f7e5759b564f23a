#include "files/track_moves.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "files/great_circle.h"

namespace voltwright::files {
namespace {

constexpr std::int64_t kThinned_s = 60;
constexpr double kStayRadius_km = 1.0;
constexpr std::int64_t kShortestStay_s = 7200;
constexpr double kDriving_km_h = 5.0;
constexpr std::int64_t kGap_s = 600;
constexpr double kGapSpeed_km_h = 60.0;
constexpr double kDetour = 1.3;  // road over straight line
constexpr double kHour_s = 3600.0;

double east_of(double longitude_deg, double from_deg) {
  return std::remainder(longitude_deg - from_deg, 360.0);
}

sky::Site site_of(const TrackPoint& point) {
  return {point.latitude_deg, point.longitude_deg, point.elevation_m.value_or(0.0)};
}

double distance_km(const TrackPoint& a, const TrackPoint& b) {
  return great_circle_km(site_of(a), site_of(b));
}

std::vector<TrackPoint> thinned(const std::vector<TrackPoint>& points) {
  std::vector<TrackPoint> kept;
  for (const TrackPoint& point : points) {
    if (kept.empty() || point.utc_s - kept.back().utc_s >= kThinned_s) kept.push_back(point);
  }
  if (!points.empty() && points.back().utc_s > kept.back().utc_s) kept.push_back(points.back());
  // A height that is missing is that of the last point before it that has one.
  std::optional<double> height;
  for (const TrackPoint& point : kept) {
    if (!height) height = point.elevation_m;
  }
  for (TrackPoint& point : kept) {
    if (point.elevation_m) height = point.elevation_m;
    point.elevation_m = height;
  }
  return kept;
}

sky::Site mean_site(const std::vector<TrackPoint>& points, std::size_t first, std::size_t end) {
  const sky::Site start = site_of(points[first]);
  sky::Site sum;
  for (std::size_t i = first; i < end; ++i) {
    sum.latitude_deg += points[i].latitude_deg;
    sum.longitude_deg += east_of(points[i].longitude_deg, start.longitude_deg);
    sum.elevation_m += points[i].elevation_m.value_or(0.0);
  }
  const auto n = static_cast<double>(end - first);
  return {sum.latitude_deg / n, std::remainder(start.longitude_deg + sum.longitude_deg / n, 360.0),
          sum.elevation_m / n};
}

void add_drive(Moves& moves, const Drive& drive) {
  if (drive.to_utc_s <= drive.from_utc_s) return;
  if (!moves.drives.empty() && moves.drives.back().to_utc_s == drive.from_utc_s) {
    moves.drives.back().to_utc_s = drive.to_utc_s;
    moves.drives.back().length_km += drive.length_km;
  } else {
    moves.drives.push_back(drive);
  }
}

/// What happened between two points of the track that do not both belong to one stay.
void add_step(Moves& moves, const TrackPoint& a, const TrackPoint& b) {
  const std::int64_t took_s = b.utc_s - a.utc_s;
  const double km = distance_km(a, b);
  if (took_s <= kGap_s) {
    if (km > kDriving_km_h * static_cast<double>(took_s) / kHour_s) {
      add_drive(moves, {a.utc_s, b.utc_s, km});
    }
    return;
  }
  if (km <= kStayRadius_km) return;
  ++moves.gaps;
  const auto needed_s = static_cast<std::int64_t>(std::llround(km * kDetour / kGapSpeed_km_h * kHour_s));
  add_drive(moves, {a.utc_s, a.utc_s + std::min(took_s, needed_s), km});
}

}  // namespace

Moves moves_of(const std::vector<TrackPoint>& points) {
  Moves moves;
  moves.points = thinned(points);
  const std::vector<TrackPoint>& p = moves.points;
  std::size_t i = 0;
  while (i < p.size()) {
    std::size_t end = i + 1;
    while (end < p.size() && distance_km(p[i], p[end]) <= kStayRadius_km) ++end;
    if (p[end - 1].utc_s - p[i].utc_s > kShortestStay_s) {
      moves.stays.push_back({mean_site(p, i, end), p[i].utc_s, p[end - 1].utc_s});
      i = end - 1;  // the way out begins at the stay's last point
    }
    if (i + 1 < p.size()) add_step(moves, p[i], p[i + 1]);
    ++i;
  }
  return moves;
}

sky::Site site_at(const Moves& moves, std::int64_t utc_s) {
  const auto stay = std::upper_bound(moves.stays.begin(), moves.stays.end(), utc_s,
                                     [](std::int64_t t, const Stay& s) { return t < s.from_utc_s; });
  if (stay != moves.stays.begin() && utc_s <= std::prev(stay)->to_utc_s) return std::prev(stay)->site;
  const auto after = std::upper_bound(moves.points.begin(), moves.points.end(), utc_s,
                                      [](std::int64_t t, const TrackPoint& p) { return t < p.utc_s; });
  if (after == moves.points.begin()) return site_of(moves.points.front());
  if (after == moves.points.end()) {
    const bool ends_staying =
        !moves.stays.empty() && moves.stays.back().to_utc_s == moves.points.back().utc_s;
    return ends_staying ? moves.stays.back().site : site_of(moves.points.back());
  }
  const TrackPoint& a = *std::prev(after);
  const TrackPoint& b = *after;
  const double part = static_cast<double>(utc_s - a.utc_s) / static_cast<double>(b.utc_s - a.utc_s);
  const sky::Site from = site_of(a);
  const sky::Site to = site_of(b);
  return {from.latitude_deg + part * (to.latitude_deg - from.latitude_deg),
          std::remainder(from.longitude_deg + part * east_of(to.longitude_deg, from.longitude_deg), 360.0),
          from.elevation_m + part * (to.elevation_m - from.elevation_m)};
}

}  // namespace voltwright::files
