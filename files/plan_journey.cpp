// Legs: places, dates, driving and shore power.
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>
#include <cstdlib>
#include <string>
#include <utility>

#include "engine/units/clock_text.h"
#include "engine/units/month_names.h"
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
/// Clocks of neighbouring legs that differ by more have the date line between them.
constexpr std::int64_t kDateLine_s = 43200;

/// What is known of a leg's days while legs are compared: first and last day as days since 1970.
struct Dates {
  std::optional<int> first;
  std::optional<int> last;
};

std::string day_words(int day) {
  const year_month_day date{sys_days{std::chrono::days{day}}};
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     units::kMonthNames.at(static_cast<unsigned>(date.month()) - 1),
                     static_cast<int>(date.year()));
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

/// "2027-05-01", "2027-05" or "2027" as the day on which a journey planned for `planned` begins instead. What
/// is not given stays as planned; a day that the month does not have becomes its last one.
std::optional<int> moved_day(std::string_view start, int planned) {
  const year_month_day date{sys_days{std::chrono::days{planned}}};
  if (start.size() == 10) return day_of_text(start);
  const int day = static_cast<int>(static_cast<unsigned>(date.day()));
  const auto month = static_cast<int>(static_cast<unsigned>(date.month()));
  std::optional<int> first;
  if (start.size() == 7) first = day_of_text(std::string(start) + "-01");
  if (start.size() == 4) first = day_of_text(fmt::format("{}-{:02}-01", start, month));
  if (!first) return std::nullopt;
  const year_month_day begin{sys_days{std::chrono::days{*first}}};
  const std::chrono::year_month_day_last end{begin.year(), std::chrono::month_day_last{begin.month()}};
  return *first + std::min(day, static_cast<int>(static_cast<unsigned>(end.day()))) - 1;
}

/// Leap days among the days from `first` to `last`.
int leap_days(int first, int last) {
  int count = 0;
  for (int year = kFirstYear; year <= kLastYear; ++year) {
    const std::optional<int> day = day_number(year, 2, 29);
    if (day && *day >= first && *day <= last) ++count;
  }
  return count;
}

/// By how many days the journey is moved; notes a start that cannot be read.
int shift_of(Section& section, int planned) {
  const std::string& start = section.reading().start;
  if (start.empty()) return 0;
  const std::optional<int> moved = moved_day(start, planned);
  if (moved) return *moved - planned;
  base::Problem problem;
  problem.what = "The new start of the journey is not a day of the calendar.";
  problem.field = "--start";
  problem.given = shown(start);
  problem.limit = "1970-01-01 to 2100-12-31";
  problem.remedy = "Write --start 2027-05-01, or 2027-05 or 2027 to keep the planned day.";
  section.reading().problems.push_back(std::move(problem));
  return 0;
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
  leg.facing_deg = section.value<double>("facing", parse_direction_deg,
                                         {0.0, 360.0, "0 to 360 deg from north over east", "\"SSW\""});
  if (const auto occupied = section.flag("occupied")) leg.occupied = *occupied;
  if (const auto file = section.text("weather")) leg.weather_file = *file;
}

std::optional<int> shifted(std::optional<int> day, int by) {
  if (!day) return std::nullopt;
  return *day + by;
}

/// Last day of a leg of so many days.
std::optional<int> last_of(std::optional<int> first, std::optional<long long> days) {
  if (!first || !days) return std::nullopt;
  return *first + static_cast<int>(*days) - 1;
}

/// Forgets a last day that lies before the first, and says so.
void check_order(Section& section, Dates& dates) {
  if (!dates.first || !dates.last) return;
  const int first = *dates.first;
  const int last = *dates.last;
  if (last >= first) return;
  section.note("to",
               fmt::format("The leg ends on {}, before it begins on {}.", day_words(last), day_words(first)));
  dates.last = std::nullopt;
}

/// `usual_first`: the day on which the leg begins unless it says otherwise. `shift` is set by the first leg.
Dates read_dates(Section& section, bool is_first, std::optional<int> usual_first, int& shift) {
  Dates dates;
  const std::optional<int> from = read_day(section, "from");
  if (is_first && from) shift = shift_of(section, *from);
  dates.first = shifted(from, shift);
  if (!section.has("from")) {
    if (is_first) section.note_missing("from", "2026-11-01");
    dates.first = usual_first;
  }
  const std::optional<int> to = read_day(section, "to");
  const std::optional<long long> count = section.whole("days", 1, kLongestJourney_days);
  if (section.has("to") && section.has("days")) {
    section.note("days", "`to` and `days` both say when the leg ends.").remedy = "Keep one of them.";
  } else if (!section.has("to") && !section.has("days")) {
    section.note_missing("to", "2026-12-15, the last day, or days = 45");
  }
  dates.last = section.has("to") ? shifted(to, shift) : last_of(dates.first, count);
  check_order(section, dates);
  return dates;
}

/// A leg must begin on the day after the one before it has ended. Across the date line a day is left out
/// (westward) or comes twice (eastward).
void check_follows(Section& section, std::size_t number, const Dates& before, const Dates& dates,
                   std::int64_t ahead_s) {
  if (!before.last || !dates.first) return;
  const int last = *before.last;
  const int first = *dates.first;
  if (first == last + 1) return;
  if (ahead_s > kDateLine_s && first == last + 2) return;
  if (ahead_s < -kDateLine_s && first == last) return;
  const std::string due = day_words(last + 1);
  if (first > last) {
    section
        .note("from",
              fmt::format(
                  "Between leg {}, which ends on {}, and leg {}, which begins on {}, no place is given.",
                  number - 1, day_words(last), number, day_words(first)))
        .remedy = fmt::format("Let leg {} begin on {}, or put a leg between them.", number, due);
  } else {
    section
        .note("from", fmt::format("Leg {} begins on {}, but leg {} lasts through {}.", number,
                                  day_words(first), number - 1, day_words(last)))
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

/// Clock of the zone minus UTC at an instant; 0 for a zone that is not known, which is noted elsewhere.
std::int64_t offset_s(const std::string& zone, std::int64_t utc_s) {
  if (zone.empty()) return 0;
  const base::Result<journey::CivilClock> clock = civil_clock(zone, utc_s, utc_s + 1);
  return clock ? clock.value().offset_s(utc_s) : 0;
}

/// By how much clocks go on from the leg before to this place.
std::int64_t clock_change_s(const journey::Leg& before, const Dates& before_dates, const std::string& zone) {
  if (!before_dates.last || before.place.zone == zone) return 0;
  constexpr std::int64_t kDay_s = 86400;
  const std::int64_t about_s = kDay_s * (std::int64_t{*before_dates.last} + 1);
  return offset_s(zone, about_s) - offset_s(before.place.zone, about_s);
}

/// The day after the leg before; across the date line the day whose start is nearest to that leg's end.
std::optional<int> usual_first(const Dates& before, std::int64_t ahead_s) {
  if (!before.last) return std::nullopt;
  if (ahead_s > kDateLine_s) return *before.last + 2;
  return ahead_s < -kDateLine_s ? *before.last : *before.last + 1;
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

/// Where the zone changes between two legs, the later midnight ends the earlier leg: no minute is lost or
/// doubled. A leg of which nothing is left is a problem.
void join(Section& section, std::size_t number, const journey::Leg& leg, journey::Leg& before) {
  if (leg.end_utc_s <= leg.start_utc_s || before.end_utc_s <= before.start_utc_s) return;
  if (leg.start_utc_s > before.start_utc_s) {
    before.end_utc_s = leg.start_utc_s;
    return;
  }
  section
      .note("from", fmt::format("Leg {} begins before leg {} has begun: its clock is ahead by a day.", number,
                                number - 1))
      .remedy = "Let it begin a day later, or leave the leg before it out.";
}

/// What the moved journey is like, for the answer.
std::string moved_words(int shift, int first, int last) {
  const int apart = std::abs(shift);
  std::string words =
      fmt::format("The journey is moved to begin on {}, {} {} {} than planned; every leg keeps its days.",
                  day_words(first), apart, apart == 1 ? "day" : "days", shift < 0 ? "earlier" : "later");
  const int more = leap_days(first, last) - leap_days(first - shift, last - shift);
  if (more != 0) {
    words += more > 0 ? " It now passes 29 February, so later legs fall a day earlier by date."
                      : " It no longer passes 29 February, so later legs fall a day later by date.";
  }
  return words;
}

/// Checks and words of the whole journey, which lasts from `first` to `last`.
void check_whole(std::vector<Section>& sections, int first, int last, int shift) {
  if (last - first + 1 > kLongestJourney_days) {
    base::Problem& problem = sections.back().note("", "The whole journey lasts longer than ten years.");
    problem.given = fmt::format("{} days", last - first + 1);
    problem.limit = fmt::format("up to {} days", kLongestJourney_days);
  }
  if (shift == 0) return;
  if (last > day_number(kLastYear, 12, 31).value_or(0) || first < 0) {
    base::Problem& problem = sections.front().note("from", "The moved journey leaves the calendar.");
    problem.limit = "1970-01-01 to 2100-12-31";
  }
  sections.front().reading().moved = moved_words(shift, first, last);
}

}  // namespace

std::vector<journey::Leg> read_legs(std::vector<Section> sections) {
  std::vector<journey::Leg> legs;
  Dates before;
  std::optional<int> first_day;
  int shift = 0;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    Section& section = sections[i];
    journey::Leg leg;
    if (std::optional<journey::Place> place = read_place(section)) leg.place = std::move(*place);
    const std::int64_t ahead_s = legs.empty() ? 0 : clock_change_s(legs.back(), before, leg.place.zone);
    const Dates dates = read_dates(section, i == 0, usual_first(before, ahead_s), shift);
    if (i > 0) check_follows(section, i + 1, before, dates, ahead_s);
    if (i == 0) first_day = dates.first;
    read_day_habits(section, leg);
    read_end_place(section, leg);
    read_leg_climate(section, leg);
    section.finish();
    set_instants(section, dates, leg);
    if (!legs.empty()) join(section, i + 1, leg, legs.back());
    legs.push_back(std::move(leg));
    before = dates;
  }
  if (first_day && before.last) check_whole(sections, *first_day, *before.last, shift);
  return legs;
}

}  // namespace voltwright::files
