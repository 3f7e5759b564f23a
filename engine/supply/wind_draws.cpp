#include "engine/supply/wind_draws.h"

#include <bit>
#include <chrono>
#include <cmath>
#include <numbers>

#include "engine/base/random.h"

namespace voltwright::supply {

namespace {
constexpr std::uint64_t kPurpose = 0x77696e64;  // sets these numbers apart from other draws of the same seed

std::uint64_t key_of(const sky::Site& site) {
  return base::mix_bits(std::bit_cast<std::uint64_t>(site.latitude_deg) ^
                        base::mix_bits(std::bit_cast<std::uint64_t>(site.longitude_deg)));
}
}  // namespace

double weibull_speed(double mean_m_s, double shape, double normal) {
  // Chance of exceedance from its own tail, so that strong winds keep their digits.
  const double exceeded = 0.5 * std::erfc(normal / std::numbers::sqrt2);
  const double scale_m_s = mean_m_s / std::tgamma(1.0 + 1.0 / shape);
  return scale_m_s * std::pow(-std::log(exceeded), 1.0 / shape);
}

std::vector<double> wind_year(const WindHabit& habit, const sky::Site& site, int year, std::uint64_t seed,
                              std::uint64_t season) {
  using std::chrono::days;
  using std::chrono::sys_days;
  const sys_days first{std::chrono::year{year} / 1 / 1};
  const sys_days end{std::chrono::year{year + 1} / 1 / 1};
  base::RandomStream stream(seed ^ kPurpose, key_of(site), static_cast<std::uint64_t>(year), season);
  const double kept = habit.hour_to_hour;
  const double fresh = std::sqrt(1.0 - kept * kept);
  double normal = stream.normal();
  std::vector<double> hours;
  hours.reserve(static_cast<std::size_t>((end - first).count()) * 24);
  for (sys_days day = first; day < end; day += days{1}) {
    const std::chrono::year_month_day date{day};
    const double mean_m_s = habit.mean_m_s.at(static_cast<unsigned>(date.month()) - 1);
    for (int hour = 0; hour < 24; ++hour) {
      hours.push_back(weibull_speed(mean_m_s, habit.weibull_shape, normal));
      normal = kept * normal + fresh * stream.normal();
    }
  }
  return hours;
}

}  // namespace voltwright::supply
