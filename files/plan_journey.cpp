// Legs: places, dates, driving and shore power.
#include <fmt/core.h>

#include <array>
#include <chrono>
#include <cstddef>
#include <string>
#include <utility>

#include "engine/units/clock_text.h"
#include "engine/units/number.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"
#include "files/zones.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr int kFirstYear = 1970;
constexpr int kLastYear = 2100;
constexpr int kLongestJourney_days = 3653;

/// What is known of a leg's days while legs are compared: first and last day as days since 1970.
struct Dates {
  std::optional<int> first;
  std::optional<int> last;
};

std::string day_words(int day) {
  static constexpr std::array<const char*, 12> kMonths = {"January",   "February", "March",    "April",
                                                          "May",       "June",     "July",     "August",
                                                          "September", "October",  "November", "December"};
  const year_month_day date{sys_days{std::chrono::days{day}}};
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     kMonths.at(static_cast<unsigned>(date.month()) - 1), static_cast<int>(date.year()));
}

std::optional<int> day_number(int year, int month, int day) {
  if (year < kFirstYear || year > kLastYear || month < 1 || month > 12 || day < 1 || day > 31)
    return std::nullopt;
  const year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                            std::chrono::day{static_cast<unsigned>(day)}};
  if (!date.ok()) return std::nullopt;
  return static_cast<int>(sys_days{date}.time_since_epoch().count());
}

/// "2026-11-01" as a day number.
std::optional<int> day_of_text(std::string_view text) {
  const std::string plain = plain_text(text);
  if (plain.size() != 10 || plain[4] != '-' || plain[7] != '-') return std::nullopt;
  const auto part = [&](std::size_t at, std::size_t n) {
    int value = 0;
    for (std::size_t i = at; i < at + n; ++i) {
      if (plain[i] < '0' || plain[i] > '9') return -1;
      value = 10 * value + (plain[i] - '0');
    }
    return value;
  };
  return day_number(part(0, 4), part(5, 2), part(8, 2));
}

std::optional<int> read_day(Section& section, std::string_view key) {
  const TomlNode* node = section.find(key);
  if (node == nullptr) return std::nullopt;
  std::optional<int> day;
  if (node->kind == TomlKind::kDate) day = day_number(node->year, node->month, node->day);
  if (node->kind == TomlKind::kText) day = day_of_text(node->text);
  if (!day) {
    base::Problem& problem = section.note(*node, key, "A date is wanted, written year-month-day.");
    problem.given = shown(*node);
    problem.limit = "1970-01-01 to 2100-12-31";
    problem.remedy = fmt::format("Write {} = 2026-11-01.", key);
  }
  return day;
}

/// Degrees as a number or as "69.65 deg".
std::optional<double> read_degrees(Section& section, std::string_view key, double most) {
  return section.value<double>(
      key, parse_angle_deg,
      {-most, most, most > 100.0 ? "-180 to 180 deg, east positive" : "-90 to 90 deg, north positive",
       "69.65"});
}

std::optional<journey::Place> read_named_place(Section& section) {
  const auto name = section.text("place");
  if (!name) {
    if (!section.has("place")) section.note_missing("place", "\"Oslo\", or lat = 59.91 and lon = 10.75");
    return std::nullopt;
  }
  const Gazetteer& gazetteer = section.reading().gazetteer;
  if (std::optional<journey::Place> place = gazetteer.find(*name)) return place;
  base::Problem& problem =
      section.note("place", fmt::format("\"{}\" is not in the place list.", shown(*name)));
  std::string near;
  for (const std::string& word : gazetteer.near_names(*name)) near += (near.empty() ? "" : ", ") + word;
  problem.remedy = near.empty() ? "Give lat and lon in its place." : fmt::format("Near: {}.", near);
  return std::nullopt;
}

std::optional<journey::Place> read_point(Section& section) {
  const auto lat = read_degrees(section, "lat", 90.0);
  const auto lon = read_degrees(section, "lon", 180.0);
  if (!section.has("lat")) section.note_missing("lat", "69.65");
  if (!section.has("lon")) section.note_missing("lon", "18.96");
  const auto label = section.text("place");
  if (!lat || !lon) return std::nullopt;
  journey::Place place;
  place.name = label.value_or(fmt::format("{:.2f}, {:.2f}", *lat, *lon));
  place.site.latitude_deg = *lat;
  place.site.longitude_deg = *lon;
  if (!section.has("zone")) place.zone = section.reading().gazetteer.zone_at(*lat, *lon);
  return place;
}

std::optional<journey::Place> read_place(Section& section) {
  section.know({"place", "lat", "lon", "elevation", "zone"});
  const bool is_point = section.has("lat") || section.has("lon");
  std::optional<journey::Place> place = is_point ? read_point(section) : read_named_place(section);
  Length elevation = metres(place ? place->site.elevation_m : 0.0);
  section.set<Length>("elevation", parse_length,
                      {metres(-450), metres(6000), "-450 m to 6000 m", "\"120 m\""}, elevation);
  const auto zone = section.text("zone");
  if (zone) {
    const base::Result<journey::CivilClock> known = civil_clock(*zone, 0, 1);
    if (!known) {
      const base::Problem& p = known.problems().front();
      base::Problem& noted = section.note("zone", p.what);
      noted.limit = p.limit;
      noted.remedy = p.remedy;
      return std::nullopt;
    }
  }
  if (!place) return std::nullopt;
  place->site.elevation_m = as_metres(elevation);
  if (zone) place->zone = *zone;
  return place;
}

void read_day_habits(Section& section, journey::Leg& leg) {
  section.set<Duration>("drive", parse_duration_per_day,
                        {hours(0), hours(24), "0 to 24 h/day", "\"1.5 h/day\""}, leg.drive_per_day);
  section.set<int>("drive_from", parse_clock, {0, 86399, "00:00 to 23:59", "\"09:00\""}, leg.drive_from_s);
  if (leg.drive_from_s + as_seconds(leg.drive_per_day) > kSecondsPerDay) {
    section.note(section.has("drive") ? "drive" : "drive_from", "The day's drive would run past midnight.")
        .remedy = "Let it start earlier with drive_from, or drive less.";
  }
  if (const auto text = section.text("shore")) {
    base::Result<DayWindow> window = parse_day_window(*text);
    if (window) {
      leg.shore_power = window.value();
    } else if (*text != "none") {
      const base::Problem& p = window.problems().front();
      base::Problem& noted = section.note("shore", p.what);
      noted.given = shown(p.given);
      noted.limit = p.limit + ", or \"none\"";
    }
  }
  if (const auto occupied = section.flag("occupied")) leg.occupied = *occupied;
  if (const auto file = section.text("weather")) leg.weather_file = *file;
}

Dates read_dates(Section& section, const Dates* before) {
  Dates dates;
  dates.first = read_day(section, "from");
  if (!section.has("from")) {
    if (before == nullptr) section.note_missing("from", "2026-11-01");
    if (before != nullptr && before->last) dates.first = *before->last + 1;
  }
  const std::optional<int> to = read_day(section, "to");
  const std::optional<long long> count = section.whole("days", 1, kLongestJourney_days);
  if (section.has("to") && section.has("days")) {
    section.note("days", "`to` and `days` both say when the leg ends.").remedy = "Keep one of them.";
  } else if (!section.has("to") && !section.has("days")) {
    section.note_missing("to", "2026-12-15, the last day, or days = 45");
  }
  dates.last = to;
  if (!section.has("to") && count && dates.first) dates.last = *dates.first + static_cast<int>(*count) - 1;
  if (dates.first && dates.last && *dates.last < *dates.first) {
    section.note("to", fmt::format("The leg ends on {}, before it begins on {}.", day_words(*dates.last),
                                   day_words(*dates.first)));
    dates.last = std::nullopt;
  }
  return dates;
}

/// A leg must begin on the day after the one before it has ended.
void check_follows(Section& section, std::size_t number, const Dates& before, const Dates& dates) {
  if (!before.last || !dates.first || *dates.first == *before.last + 1) return;
  const std::string due = day_words(*before.last + 1);
  if (*dates.first > *before.last) {
    section
        .note("from",
              fmt::format(
                  "Between leg {}, which ends on {}, and leg {}, which begins on {}, no place is given.",
                  number - 1, day_words(*before.last), number, day_words(*dates.first)))
        .remedy = fmt::format("Let leg {} begin on {}, or put a leg between them.", number, due);
  } else {
    section
        .note("from", fmt::format("Leg {} begins on {}, but leg {} lasts through {}.", number,
                                  day_words(*dates.first), number - 1, day_words(*before.last)))
        .remedy = fmt::format("Let it begin on {}; `to` is the last day of a leg.", due);
  }
}

std::optional<std::int64_t> midnight(Section& section, const std::string& zone, int day) {
  const year_month_day date{sys_days{std::chrono::days{day}}};
  base::Result<std::int64_t> utc = local_midnight_utc(zone, static_cast<int>(date.year()),
                                                      static_cast<int>(static_cast<unsigned>(date.month())),
                                                      static_cast<int>(static_cast<unsigned>(date.day())));
  if (utc) return utc.value();
  section.note("", utc.problems().front().what).remedy = utc.problems().front().remedy;
  return std::nullopt;
}

/// Fills instants and clock from the days; problems of the zone are noted.
void set_instants(Section& section, const Dates& dates, journey::Leg& leg) {
  if (!dates.first || !dates.last || leg.place.zone.empty()) return;
  const auto start = midnight(section, leg.place.zone, *dates.first);
  const auto end = midnight(section, leg.place.zone, *dates.last + 1);
  if (!start || !end) return;
  leg.start_utc_s = *start;
  leg.end_utc_s = *end;
  constexpr std::int64_t kMargin_s = 172800;
  base::Result<journey::CivilClock> clock = civil_clock(leg.place.zone, *start - kMargin_s, *end + kMargin_s);
  if (clock) leg.clock = clock.value();
}

}  // namespace

std::vector<journey::Leg> read_legs(std::vector<Section> sections) {
  std::vector<journey::Leg> legs;
  Dates before;
  std::optional<int> first_day;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    Section& section = sections[i];
    journey::Leg leg;
    if (std::optional<journey::Place> place = read_place(section)) leg.place = std::move(*place);
    const Dates dates = read_dates(section, i == 0 ? nullptr : &before);
    if (i > 0) check_follows(section, i + 1, before, dates);
    if (i == 0) first_day = dates.first;
    read_day_habits(section, leg);
    read_leg_climate(section, leg);
    section.finish();
    set_instants(section, dates, leg);
    // Where the zone changes between two legs, the later midnight ends the earlier leg: no minute is lost or
    // doubled.
    if (!legs.empty() && leg.start_utc_s > legs.back().start_utc_s) legs.back().end_utc_s = leg.start_utc_s;
    legs.push_back(std::move(leg));
    before = dates;
  }
  if (first_day && before.last && *before.last - *first_day + 1 > kLongestJourney_days) {
    base::Problem& problem = sections.back().note("", "The whole journey lasts longer than ten years.");
    problem.given = fmt::format("{} days", *before.last - *first_day + 1);
    problem.limit = fmt::format("up to {} days", kLongestJourney_days);
  }
  return legs;
}

}  // namespace voltwright::files
