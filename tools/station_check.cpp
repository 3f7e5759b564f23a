#include "tools/station_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/daylight.h"
#include "tools/station_compare.h"

namespace voltwright::tools {

using files::kDaysInMonth;
using files::monthly_daylight;

bool complete(const Months& months) {
  return std::all_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
}

namespace {

constexpr double kShortestDay_h = 1.0;  // months with less daylight need no sunshine record

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

}  // namespace

std::vector<LeftOut> clean(std::vector<Station>& stations) {
  std::vector<LeftOut> left_out;
  const auto leave_out = [&](Station& s, const std::string& part, const std::string& reason) {
    left_out.push_back({s.wmo, s.name, part, reason, false});
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
  for (Doubt w = comparison.worst(); w.share > 1.0; w = comparison.worst()) {
    leave_out(stations[w.index], w.part, w.reason);
  }
  for (std::size_t i = 0; i < stations.size(); ++i) {
    if (stations[i].dropped) continue;
    const Doubt doubt = comparison.doubt(i);
    if (doubt.beyond) {
      leave_out(stations[i], doubt.part, doubt.reason);
    } else if (!doubt.reason.empty()) {
      left_out.push_back({stations[i].wmo, stations[i].name, doubt.part, doubt.reason, true});
    }
  }
  std::stable_sort(left_out.begin(), left_out.end(),
                   [](const LeftOut& a, const LeftOut& b) { return a.wmo < b.wmo; });
  return left_out;
}

}  // namespace voltwright::tools
