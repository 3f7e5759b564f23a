#include "tools/station_compare.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/daylight.h"
#include "files/great_circle.h"

namespace voltwright::tools {

namespace {

// Limits of the comparison. They are set wide enough that valleys, islands and coasts stay, and are an
// assumption of this program, not a published rule.
constexpr double kNeighbour_km = 200.0;
constexpr double kFar_km = 600.0;
constexpr double kFarLooser = 2.0;  // over such distances climates differ
constexpr double kDegree_km = 111.0;
constexpr std::size_t kFewestNeighbours = 3;
constexpr double kNearLimit = 0.75;  // kept, but marked
constexpr double kLapse_K_m = 0.0065;
constexpr double kTemperatureOff_K = 4.0;  // year mean, plus the next for each metre of height between
constexpr double kTemperatureOffPerMetre = 0.002;
constexpr double kTemperatureHeight_m = 1500.0;
constexpr double kMonthOff_K = 9.0;      // any month
constexpr double kRangeOff_K = 6.0;      // year mean of the daily range
constexpr double kClearnessOff = 0.085;  // year mean of the clearness index
// Any month with days of six hours: winter fog and monsoon coasts truly differ by up to 0.28 from their
// neighbours.
constexpr double kClearnessMonthOff = 0.30;
constexpr double kRangeHeight_m = 700.0;  // for daily range and clearness
constexpr double kShortestDay_h = 1.0;    // months with less daylight do not count in the year
constexpr double kComparedDay_h = 6.0;    // months with less daylight are not compared alone
constexpr std::size_t kYear = 12;

double mean(const Months& months) {
  double sum = 0.0;
  for (const auto& m : months) sum += m.value_or(0.0) / 12.0;
  return sum;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t n = values.size();
  return n % 2 == 1 ? values[n / 2] : 0.5 * (values[n / 2 - 1] + values[n / 2]);
}

void note(Doubt& doubt, std::size_t i, double off, double allowed, const char* part,
          const std::string& reason) {
  if (std::abs(off) / allowed > doubt.share) doubt = {i, std::abs(off) / allowed, part, reason, false};
}

}  // namespace

/// Clearness by Angstrom-Prescott (0.25, 0.50); the year is the mean over the months with daylight.
Comparison::Clearness Comparison::clearness_of(const Station& station) {
  Clearness clearness;
  const auto daylight = files::monthly_daylight(station.site.latitude_deg);
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t m = 0; m < kYear; ++m) {
    const double day_h = daylight.day_length_h[m];
    if (day_h < kShortestDay_h) continue;
    const double k = 0.25 + 0.5 * station.sunshine_h[m].value_or(0.0) / files::kDaysInMonth[m] / day_h;
    if (day_h >= kComparedDay_h) clearness[m] = k;
    sum += k;
    count += 1.0;
  }
  if (count > 0.0) clearness[kYear] = sum / count;
  return clearness;
}

Comparison::Comparison(const std::vector<Station>& stations)
    : stations_(stations), near_(stations.size()), far_(stations.size()) {
  for (std::size_t a = 0; a < stations.size(); ++a) {
    clearness_.push_back(stations[a].has_sunshine ? clearness_of(stations[a]) : Clearness{});
    for (std::size_t b = 0; b < stations.size(); ++b) {
      const auto& sa = stations[a].site;
      const auto& sb = stations[b].site;
      if (a == b || std::abs(sa.latitude_deg - sb.latitude_deg) * kDegree_km > kFar_km) continue;
      const double distance_km = files::great_circle_km(sa, sb);
      const Neighbour neighbour{b, sa.elevation_m - sb.elevation_m};
      if (distance_km <= kNeighbour_km) near_[a].push_back(neighbour);
      if (distance_km <= kFar_km) far_[a].push_back(neighbour);
    }
  }
}

Doubt Comparison::worst() const {
  Doubt worst;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    if (!stations_[i].dropped) compare(i, near_[i], 1.0, worst);
  }
  return worst;
}

Doubt Comparison::doubt(std::size_t index) const {
  Doubt close{index, kNearLimit, "", "", false};
  compare(index, near_[index], 1.0, close);
  if (!close.reason.empty()) return close;
  if (comparable(near_[index]) >= kFewestNeighbours) return {};
  if (comparable(far_[index]) < kFewestNeighbours) {
    return {index, 1.0, "station",
            fmt::format("isolated: fewer than three stations within {:.0f} km to compare with", kFar_km),
            false};
  }
  Doubt apart;
  compare(index, far_[index], kFarLooser, apart);
  apart.beyond = apart.part == "daily range";
  if (!apart.reason.empty())
    apart.reason = fmt::format("isolated; within {:.0f} km: ", kFar_km) + apart.reason;
  return apart;
}

std::size_t Comparison::comparable(const std::vector<Neighbour>& near) const {
  return static_cast<std::size_t>(std::count_if(near.begin(), near.end(), [&](const Neighbour& n) {
    return !stations_[n.index].dropped && std::abs(n.height_m) <= kTemperatureHeight_m;
  }));
}

void Comparison::compare(std::size_t i, const std::vector<Neighbour>& near, double looser,
                         Doubt& doubt) const {
  compare_temperature(i, near, looser, doubt);
  if (stations_[i].has_range) compare_range(i, near, looser, doubt);
  if (stations_[i].has_sunshine) compare_clearness(i, near, looser, doubt);
}

void Comparison::compare_temperature(std::size_t i, const std::vector<Neighbour>& near, double looser,
                                     Doubt& doubt) const {
  std::array<std::vector<double>, 13> off;
  std::vector<double> heights;
  for (const auto& n : near) {
    if (stations_[n.index].dropped || std::abs(n.height_m) > kTemperatureHeight_m) continue;
    heights.push_back(std::abs(n.height_m));
    for (std::size_t m = 0; m < kYear; ++m) {
      off[m].push_back(stations_[i].temperature_C[m].value_or(0.0) -
                       stations_[n.index].temperature_C[m].value_or(0.0) + kLapse_K_m * n.height_m);
    }
    off[kYear].push_back(mean(stations_[i].temperature_C) - mean(stations_[n.index].temperature_C) +
                         kLapse_K_m * n.height_m);
  }
  if (heights.size() < kFewestNeighbours) return;
  const double more_K = kTemperatureOffPerMetre * median(heights);
  const double year = median(off[kYear]);
  note(doubt, i, year, looser * (kTemperatureOff_K + more_K), "station",
       fmt::format("year mean {:+.1f} K from the median of {} neighbours at the same height", year,
                   heights.size()));
  for (std::size_t m = 0; m < kYear; ++m) {
    const double month = median(off[m]);
    note(doubt, i, month, looser * (kMonthOff_K + more_K), "station",
         fmt::format("month {} {:+.1f} K from the median of {} neighbours at the same height", m + 1, month,
                     heights.size()));
  }
}

void Comparison::compare_range(std::size_t i, const std::vector<Neighbour>& near, double looser,
                               Doubt& doubt) const {
  std::vector<double> off;
  for (const auto& n : near) {
    const Station& other = stations_[n.index];
    if (other.dropped || !other.has_range || std::abs(n.height_m) > kRangeHeight_m) continue;
    off.push_back(mean(stations_[i].range_K) - mean(other.range_K));
  }
  if (off.size() < kFewestNeighbours) return;
  const double year = median(off);
  note(doubt, i, year, looser * kRangeOff_K, "daily range",
       fmt::format("daily range {:+.1f} K from the median of {} neighbours", year, off.size()));
}

void Comparison::compare_clearness(std::size_t i, const std::vector<Neighbour>& near, double looser,
                                   Doubt& doubt) const {
  for (std::size_t m = 0; m <= kYear; ++m) {
    if (!clearness_[i][m]) continue;
    const double own = clearness_[i][m].value_or(0.0);
    std::vector<double> off;
    for (const auto& n : near) {
      const Station& other = stations_[n.index];
      if (other.dropped || !other.has_sunshine || std::abs(n.height_m) > kRangeHeight_m) continue;
      if (clearness_[n.index][m]) off.push_back(own - clearness_[n.index][m].value_or(0.0));
    }
    if (off.size() < kFewestNeighbours) continue;
    const double by = median(off);
    const double allowed = m == kYear ? kClearnessOff : kClearnessMonthOff;
    const std::string when = m == kYear ? "clearness" : fmt::format("month {} clearness", m + 1);
    note(doubt, i, by, looser * allowed, "sunshine",
         fmt::format("{} {:+.3f} from the median {:.3f} of {} neighbours", when, by, own - by, off.size()));
  }
}

}  // namespace voltwright::tools
