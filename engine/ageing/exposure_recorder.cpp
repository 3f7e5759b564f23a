#include "engine/ageing/exposure_recorder.h"

#include <algorithm>

namespace voltwright::ageing {

namespace {

constexpr double kColdest_C = -100.0;
constexpr double kPerKelvin = 1.0 / 2.0;
constexpr double kLowestCharge = -1.0;
constexpr double kPerCharge = 1.0 / 0.02;
constexpr double kMostPlaces = 127.0;

std::uint32_t place(double value, double low, double per_unit) {
  return static_cast<std::uint32_t>(std::clamp((value - low) * per_unit, 0.0, kMostPlaces));
}

}  // namespace

void ExposureRecorder::add(double soc, double temperature_C, double step_h) {
  const std::uint32_t now =
      (place(temperature_C, kColdest_C, kPerKelvin) << 8U) + place(soc, kLowestCharge, kPerCharge);
  if (now != place_) {
    flush();
    place_ = now;
  }
  here_.hours += step_h;
  here_.temperature_Ch += temperature_C * step_h;
  here_.soc_h += soc * step_h;
  counter_.add(soc, temperature_C, step_h);
  counter_.drain([this](const Swing& swing) { closed_.add(swing); });
}

void ExposureRecorder::flush() {
  if (here_.hours <= 0.0) return;
  Sums& sums = dwell_[place_];
  sums.hours += here_.hours;
  sums.temperature_Ch += here_.temperature_Ch;
  sums.soc_h += here_.soc_h;
  here_ = {};
}

Exposure ExposureRecorder::exposure() const {
  ExposureRecorder ended = *this;
  ended.flush();
  Exposure exposure;
  for (const auto& [place, sums] : ended.dwell_) {
    exposure.hours += sums.hours;
    exposure.dwell.push_back({sums.temperature_Ch / sums.hours, sums.soc_h / sums.hours, sums.hours});
  }
  ended.closed_.append_to(exposure.swings);
  const std::vector<Swing> rest = ended.counter_.swings();
  exposure.swings.insert(exposure.swings.end(), rest.begin(), rest.end());
  return exposure;
}

}  // namespace voltwright::ageing
