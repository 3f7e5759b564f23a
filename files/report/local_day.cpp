#include "files/report/local_day.h"

#include <fmt/format.h>

#include <chrono>

#include "engine/units/month_names.h"

namespace voltwright::files::report {

namespace {

constexpr std::int64_t kDay_s = 86400;

std::int64_t local_s(const std::vector<journey::Leg>& legs, std::int64_t utc_s) {
  if (legs.empty()) return utc_s;
  for (const journey::Leg& leg : legs) {
    if (utc_s < leg.end_utc_s) return leg.clock.local_s(utc_s);
  }
  return legs.back().clock.local_s(utc_s);
}

std::int64_t day_number(std::int64_t local) {
  return local >= 0 ? local / kDay_s : -((-local + kDay_s - 1) / kDay_s);
}

}  // namespace

LocalDay local_day(const std::vector<journey::Leg>& legs, std::int64_t utc_s) {
  const std::chrono::sys_days days{std::chrono::days{static_cast<int>(day_number(local_s(legs, utc_s)))}};
  const std::chrono::year_month_day ymd{days};
  const std::chrono::weekday weekday{days};
  return {static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
          weekday.c_encoding()};
}

std::string month_text(unsigned month) { return units::kShortMonthNames[(month + 11) % 12]; }

std::string weekday_text(unsigned weekday) {
  static const char* const kNames[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  return kNames[weekday % 7];
}

std::string day_text(const LocalDay& day) {
  return fmt::format("{} {} {}", weekday_text(day.weekday), day.day, month_text(day.month));
}

std::string moment_text(const std::vector<journey::Leg>& legs, std::int64_t utc_s) {
  const std::int64_t local = local_s(legs, utc_s);
  const std::int64_t second = local - day_number(local) * kDay_s;
  return fmt::format("{} {:02}:{:02}", day_text(local_day(legs, utc_s)), second / 3600, second / 60 % 60);
}

}  // namespace voltwright::files::report
