#pragma once
// Civil days and times of the journey, for the labels of pictures.
#include <cstdint>
#include <string>
#include <vector>

#include "engine/journey/leg.h"

namespace voltwright::files::report {

struct LocalDay {
  int year = 1970;
  unsigned month = 1, day = 1;
  unsigned weekday = 0;  // 0 = Sunday

  bool weekend() const { return weekday == 0 || weekday == 6; }
};

/// The day at the place where the journey is at `utc_s`.
LocalDay local_day(const std::vector<journey::Leg>& legs, std::int64_t utc_s);

/// "Fri 16 Jan".
std::string day_text(const LocalDay& day);
/// "Fri 16 Jan 16:10".
std::string moment_text(const std::vector<journey::Leg>& legs, std::int64_t utc_s);
/// "Jan".
std::string month_text(unsigned month);
std::string weekday_text(unsigned weekday);

}  // namespace voltwright::files::report
