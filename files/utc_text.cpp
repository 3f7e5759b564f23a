#include "files/utc_text.h"

#include <fmt/format.h>

#include <chrono>

namespace voltwright::files {

std::string utc_text(std::int64_t utc_s) {
  using std::chrono::days;
  const std::chrono::sys_seconds instant{std::chrono::seconds{utc_s}};
  const auto day = std::chrono::floor<days>(instant);
  const std::chrono::year_month_day date{day};
  const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(instant - day).count();
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}Z", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), minutes / 60,
                     minutes % 60);
}

}  // namespace voltwright::files
