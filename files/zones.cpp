#include "files/zones.h"

#include <date/tz.h>
#include <fmt/core.h>

#include <chrono>
#include <exception>
#include <utility>
#include <vector>

#include "files/suggest.h"

namespace voltwright::files {
namespace {

base::Problem unknown_zone(const std::string& zone) {
  base::Problem problem;
  problem.what = fmt::format("\"{}\" is not a time zone.", zone.substr(0, 60));
  problem.given = zone.substr(0, 60);
  problem.limit = "names such as Europe/Oslo or Etc/GMT-2";
  std::string near;
  try {
    std::vector<std::string> names;
    for (const date::time_zone& known : date::get_tzdb().zones) names.push_back(known.name());
    for (const std::string& name : near_words(zone, names, 3)) near += (near.empty() ? "" : ", ") + name;
  } catch (const std::exception&) {
    near.clear();
  }
  if (!near.empty()) problem.remedy = "Near: " + near + ".";
  return problem;
}

base::Problem no_database(const char* reason) {
  base::Problem problem;
  problem.what = fmt::format("The time-zone database of the system cannot be read ({}).", reason);
  problem.remedy = "Install the package tzdata.";
  return problem;
}

/// The zone, or null if the database has none of that name. Throws if there is no database.
const date::time_zone* find_zone(const std::string& zone) {
  static_cast<void>(date::get_tzdb());
  try {
    return date::locate_zone(zone);
  } catch (const std::exception&) {
    return nullptr;
  }
}

}  // namespace

base::Result<journey::CivilClock> civil_clock(const std::string& zone, std::int64_t from_utc_s,
                                              std::int64_t to_utc_s) {
  try {
    const date::time_zone* found = find_zone(zone);
    if (found == nullptr) return unknown_zone(zone);
    std::vector<journey::OffsetChange> changes;
    date::sys_seconds at{std::chrono::seconds{from_utc_s}};
    const date::sys_seconds end{std::chrono::seconds{to_utc_s}};
    while (true) {
      const date::sys_info info = found->get_info(at);
      const std::int64_t since = changes.empty() ? from_utc_s : info.begin.time_since_epoch().count();
      changes.push_back({since, static_cast<int>(info.offset.count())});
      if (info.end > end || info.end <= at) break;
      at = info.end;
    }
    return journey::CivilClock(std::move(changes));
  } catch (const std::exception& error) {
    return no_database(error.what());
  }
}

base::Result<std::int64_t> local_midnight_utc(const std::string& zone, int year, int month, int day) {
  const date::year_month_day civil{date::year{year}, date::month{static_cast<unsigned>(month)},
                                   date::day{static_cast<unsigned>(day)}};
  if (year < 1900 || year > 2200 || month < 1 || day < 1 || !civil.ok()) {
    base::Problem problem;
    problem.what = "There is no such day in the calendar.";
    problem.given = std::to_string(year) + "-" + std::to_string(month) + "-" + std::to_string(day);
    problem.limit = "days of the years 1900 to 2200";
    return problem;
  }
  try {
    const date::time_zone* found = find_zone(zone);
    if (found == nullptr) return unknown_zone(zone);
    const date::local_days midnight{civil};
    return std::int64_t{found->to_sys(midnight, date::choose::earliest).time_since_epoch().count()};
  } catch (const std::exception& error) {
    return no_database(error.what());
  }
}

}  // namespace voltwright::files
