#include "engine/claims/evidence.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace voltwright::claims {

namespace {

std::optional<double> over(const std::optional<double>& figure, double divisor) {
  if (!figure || divisor <= 0.0) return std::nullopt;
  return *figure / divisor;
}

std::optional<double> energy_over(const StatedBattery& battery, const std::optional<double>& divisor) {
  if (!divisor || *divisor <= 0.0) return std::nullopt;
  return battery.energy_Wh() / *divisor;
}

}  // namespace

const Kind* Evidence::kind(std::string_view id) const {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const Kind& k) { return k.chemistry.id == id; });
  return found == kinds.end() ? nullptr : &*found;
}

std::optional<double> stated_Wh_per_kg(const StatedBattery& battery) {
  return energy_over(battery, battery.mass_kg);
}
std::optional<double> stated_Wh_per_L(const StatedBattery& battery) {
  return energy_over(battery, battery.volume_L);
}
std::optional<double> stated_kg_per_L(const StatedBattery& battery) {
  return battery.volume_L ? over(battery.mass_kg, *battery.volume_L) : std::nullopt;
}
std::optional<double> stated_continuous_per_h(const StatedBattery& battery) {
  return over(battery.continuous_A, battery.capacity_Ah);
}
std::optional<double> stated_peak_per_h(const StatedBattery& battery) {
  return over(battery.peak_A, battery.capacity_Ah);
}
std::optional<double> stated_charge_per_h(const StatedBattery& battery) {
  return over(battery.charge_A, battery.capacity_Ah);
}
std::optional<double> stated_cycles(const StatedBattery& battery) { return battery.cycles; }
std::optional<double> stated_USD_per_kWh(const StatedBattery& battery) {
  constexpr double kWattHoursPerKilowattHour = 1e3;
  return over(battery.price_USD, battery.energy_Wh() / kWattHoursPerKilowattHour);
}

Sample::Sample(std::vector<double> values) : values_(std::move(values)) {
  std::sort(values_.begin(), values_.end());
}

double Sample::quantile(double share) const {
  const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(values_.size() - 1);
  const auto below = static_cast<std::size_t>(std::floor(place));
  const std::size_t above = std::min(below + 1, values_.size() - 1);
  return values_[below] + (place - static_cast<double>(below)) * (values_[above] - values_[below]);
}

double Sample::share_below(double value) const {
  if (values_.empty()) return 0.0;
  const auto [from, to] = std::equal_range(values_.begin(), values_.end(), value);
  const double less = static_cast<double>(from - values_.begin());
  const double equal = static_cast<double>(to - from);
  return (less + 0.5 * equal) / static_cast<double>(values_.size());
}

}  // namespace voltwright::claims
