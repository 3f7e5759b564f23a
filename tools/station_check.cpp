#include "tools/station_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/daylight.h"
#include "files/great_circle.h"

namespace voltwright::tools {

using files::great_circle_km;
using files::kDaysInMonth;
using files::monthly_daylight;

bool complete(const Months& months) {
  return std::all_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
}

namespace {

// Limits of the comparison. They are set wide enough that valleys, islands and coasts stay, and are an
// assumption of this program, not a published rule.
constexpr double kNeighbour_km = 200.0;
constexpr std::size_t kFewestNeighbours = 3;
constexpr double kLapse_K_m = 0.0065;
constexpr double kTemperatureOff_K = 4.0;  // year mean, plus the next for each metre of height between
constexpr double kTemperatureOffPerMetre = 0.002;
constexpr double kMonthOff_K = 9.0;      // any month
constexpr double kRangeOff_K = 6.0;      // year mean of the daily range
constexpr double kClearnessOff = 0.085;  // year mean of the clearness index
constexpr double kShortestDay_h = 1.0;   // months with less daylight need no sunshine record

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

/// Clearness by Angstrom-Prescott (0.25, 0.50), year mean over the months with daylight.
double year_clearness(const Station& s) {
  const auto daylight = monthly_daylight(s.site.latitude_deg);
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    const double day_h = daylight.day_length_h[m];
    if (day_h < kShortestDay_h) continue;
    sum += 0.25 + 0.5 * s.sunshine_h[m].value_or(0.0) / kDaysInMonth[m] / day_h;
    count += 1.0;
  }
  return count > 0.0 ? sum / count : 0.0;
}

/// What is wrong with the sunshine on its own, or nothing.
std::string sunshine_fault(const Station& s) {
  const auto daylight = monthly_daylight(s.site.latitude_deg);
  for (std::size_t m = 0; m < 12; ++m) {
    if (daylight.day_length_h[m] < kShortestDay_h) continue;
    if (!s.sunshine_h[m]) return fmt::format("no sunshine hours in month {}", m + 1);
    const double share = s.sunshine_h[m].value_or(0.0) / kDaysInMonth[m] / daylight.day_length_h[m];
    if (share < 0.0 || share > 1.0) {
      return fmt::format("sunshine is {:.0f} % of the day length in month {}", 100.0 * share, m + 1);
    }
    if (share < 0.02 && daylight.day_length_h[m] > 8.0) {
      return fmt::format("sunshine is only {:.1f} % of the day length in month {}", 100.0 * share, m + 1);
    }
  }
  return {};
}

/// What is wrong with the temperatures on their own, or nothing.
std::string temperature_fault(const Station& s) {
  if (!complete(s.temperature_C)) return "no mean temperature in at least one month";
  std::array<double, 12> months{};
  for (std::size_t m = 0; m < 12; ++m) months[m] = s.temperature_C[m].value_or(0.0);
  const auto warmest = std::max_element(months.begin(), months.end());
  const auto coldest = std::min_element(months.begin(), months.end());
  if (*coldest < -75.0 || *warmest > 45.0) {
    return fmt::format("monthly mean temperature of {:.1f} degC", *warmest > 45.0 ? *warmest : *coldest);
  }
  const auto month = static_cast<int>(warmest - months.begin()) + 1;
  const double latitude = s.site.latitude_deg;
  const bool summer_north = month >= 5 && month <= 10;
  if (std::abs(latitude) > 30.0 && *warmest - *coldest > 4.0 && summer_north != (latitude > 0.0)) {
    return fmt::format("warmest in month {}, the winter of latitude {:.1f}", month, latitude);
  }
  return {};
}

std::string range_fault(const Station& s) {
  if (!complete(s.range_K)) return "no daily maximum and minimum in at least one month";
  for (const auto& month : s.range_K) {
    const double r = month.value_or(0.0);
    if (r < 0.5 || r > 28.0) return fmt::format("daily range of {:.1f} K in a month", r);
  }
  return {};
}

struct Neighbour {
  std::size_t index;
  double height_m;  // of this station above the neighbour
};

/// The station that differs most from the median of its neighbours, in shares of what is allowed.
struct Worst {
  std::size_t index = 0;
  double share = 1.0;
  std::string part, reason;
};

/// Stations within kNeighbour_km of each other, and which of them stands out most.
class Comparison {
 public:
  explicit Comparison(std::vector<Station>& stations) : stations_(stations), near_(stations.size()) {
    for (std::size_t a = 0; a < stations.size(); ++a) {
      clearness_.push_back(stations[a].has_sunshine ? year_clearness(stations[a]) : 0.0);
      for (std::size_t b = 0; b < stations.size(); ++b) {
        const auto& sa = stations[a].site;
        const auto& sb = stations[b].site;
        if (a == b || std::abs(sa.latitude_deg - sb.latitude_deg) > 2.0) continue;
        if (great_circle_km(sa, sb) <= kNeighbour_km) {
          near_[a].push_back({b, sa.elevation_m - sb.elevation_m});
        }
      }
    }
  }

  Worst worst() const {
    Worst worst;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
      if (stations_[i].dropped) continue;
      compare_temperature(i, worst);
      if (stations_[i].has_range) compare_range(i, worst);
      if (stations_[i].has_sunshine) compare_clearness(i, worst);
    }
    return worst;
  }

 private:
  static void note(Worst& worst, std::size_t i, double off, double allowed, const char* part,
                   const std::string& reason) {
    if (std::abs(off) / allowed > worst.share) worst = {i, std::abs(off) / allowed, part, reason};
  }

  void compare_temperature(std::size_t i, Worst& worst) const {
    std::array<std::vector<double>, 13> off;
    std::vector<double> heights;
    for (const auto& n : near_[i]) {
      if (stations_[n.index].dropped || std::abs(n.height_m) > 1500.0) continue;
      heights.push_back(std::abs(n.height_m));
      for (std::size_t m = 0; m < 12; ++m) {
        off[m].push_back(stations_[i].temperature_C[m].value_or(0.0) -
                         stations_[n.index].temperature_C[m].value_or(0.0) + kLapse_K_m * n.height_m);
      }
      off[12].push_back(mean(stations_[i].temperature_C) - mean(stations_[n.index].temperature_C) +
                        kLapse_K_m * n.height_m);
    }
    if (heights.size() < kFewestNeighbours) return;
    const double more_K = kTemperatureOffPerMetre * median(heights);
    const double year = median(off[12]);
    note(worst, i, year, kTemperatureOff_K + more_K, "station",
         fmt::format("year mean {:+.1f} K from the median of {} neighbours at the same height", year,
                     heights.size()));
    for (std::size_t m = 0; m < 12; ++m) {
      const double month = median(off[m]);
      note(worst, i, month, kMonthOff_K + more_K, "station",
           fmt::format("month {} {:+.1f} K from the median of {} neighbours at the same height", m + 1, month,
                       heights.size()));
    }
  }

  void compare_range(std::size_t i, Worst& worst) const {
    std::vector<double> off;
    for (const auto& n : near_[i]) {
      const Station& other = stations_[n.index];
      if (other.dropped || !other.has_range || std::abs(n.height_m) > 700.0) continue;
      off.push_back(mean(stations_[i].range_K) - mean(other.range_K));
    }
    if (off.size() < kFewestNeighbours) return;
    const double year = median(off);
    note(worst, i, year, kRangeOff_K, "daily range",
         fmt::format("daily range {:+.1f} K from the median of {} neighbours", year, off.size()));
  }

  void compare_clearness(std::size_t i, Worst& worst) const {
    std::vector<double> off;
    for (const auto& n : near_[i]) {
      const Station& other = stations_[n.index];
      if (other.dropped || !other.has_sunshine || std::abs(n.height_m) > 700.0) continue;
      off.push_back(clearness_[i] - clearness_[n.index]);
    }
    if (off.size() < kFewestNeighbours) return;
    const double year = median(off);
    note(worst, i, year, kClearnessOff, "sunshine",
         fmt::format("clearness {:+.3f} from the median {:.3f} of {} neighbours", year, clearness_[i] - year,
                     off.size()));
  }

  std::vector<Station>& stations_;
  std::vector<std::vector<Neighbour>> near_;
  std::vector<double> clearness_;
};

}  // namespace

std::vector<LeftOut> clean(std::vector<Station>& stations) {
  std::vector<LeftOut> left_out;
  const auto leave_out = [&](Station& s, const std::string& part, const std::string& reason) {
    left_out.push_back({s.wmo, s.name, part, reason});
    if (part == "sunshine") s.has_sunshine = false;
    if (part == "daily range") s.has_range = false;
    if (part == "station" || (!s.has_sunshine && !s.has_range)) s.dropped = true;
  };
  for (Station& s : stations) {
    const auto any = [](const Months& months) {
      return std::any_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
    };
    const std::string range = range_fault(s);
    const std::string sunshine = any(s.sunshine_h) ? sunshine_fault(s) : "no sunshine hours";
    s.has_range = range.empty();
    s.has_sunshine = sunshine.empty();
    const std::string temperature = temperature_fault(s);
    if (!temperature.empty()) {
      leave_out(s, "station", temperature);
    } else if (!s.has_range && !s.has_sunshine) {
      leave_out(s, "station", fmt::format("{}; {}", sunshine, range));
    } else {
      if (any(s.sunshine_h) && !s.has_sunshine) leave_out(s, "sunshine", sunshine);
      if (any(s.range_K) && !s.has_range) leave_out(s, "daily range", range);
    }
  }
  const Comparison comparison(stations);
  for (Worst w = comparison.worst(); w.share > 1.0; w = comparison.worst()) {
    leave_out(stations[w.index], w.part, w.reason);
  }
  std::stable_sort(left_out.begin(), left_out.end(),
                   [](const LeftOut& a, const LeftOut& b) { return a.wmo < b.wmo; });
  return left_out;
}

}  // namespace voltwright::tools
