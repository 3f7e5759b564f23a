#include "engine/journey/calendar.h"

namespace voltwright::journey {

namespace {
constexpr std::int64_t kDay_s = 86400;
}

std::size_t minutes_of(const Leg& leg) {
  return leg.end_utc_s > leg.start_utc_s ? static_cast<std::size_t>((leg.end_utc_s - leg.start_utc_s) / 60)
                                         : 0;
}

Calendar calendar_of(const Leg& leg) {
  const std::size_t n = minutes_of(leg);
  Calendar c;
  c.second_of_day.resize(n);
  c.day.resize(n);
  c.driving.resize(n);
  c.shore.resize(n);
  const auto drive_s = static_cast<std::int64_t>(units::as_seconds(leg.drive_per_day));
  for (std::size_t i = 0; i < n; ++i) {
    const std::int64_t local_s = leg.clock.local_s(leg.start_utc_s + 60 * static_cast<std::int64_t>(i));
    const std::int64_t day = local_s >= 0 ? local_s / kDay_s : (local_s - kDay_s + 1) / kDay_s;
    const auto second = static_cast<std::int32_t>(local_s - day * kDay_s);
    c.second_of_day[i] = second;
    c.day[i] = static_cast<std::int32_t>(day);
    const std::int64_t since_start_s = (second - leg.drive_from_s + kDay_s) % kDay_s;
    const bool driving = since_start_s < drive_s;
    c.driving[i] = driving ? 1 : 0;
    c.shore[i] = !driving && leg.shore_power && leg.shore_power->contains(second) ? 1 : 0;
  }
  return c;
}

}  // namespace voltwright::journey
