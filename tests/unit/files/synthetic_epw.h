#pragma once
// A typical year in EPW layout made in code: every day the same sun, symmetric about the solar noon of the
// longitude, and a temperature wave. No line of it comes from a real weather file.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "files/daylight.h"

namespace voltwright::files {

struct SyntheticEpw {
  double longitude_deg = 15.0;
  double zone_h = 1.0;
  int records_per_hour = 1;
  bool leap_day = false;
  double clock_shift_h = 0.0;  // the sun comes so much too late
  std::string daylight_line = "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0";
  std::string comment = "COMMENTS 1,\"made in code, not measured\"";

  /// Global horizontal radiation of the hour of the day 0..23, W/m2.
  double ghi(int hour) const {
    const double noon = 12.0 - (longitude_deg - 15.0 * zone_h) / 15.0 + clock_shift_h;
    return 800.0 * std::max(0.0, std::cos((hour + 0.5 - noon) * std::numbers::pi / 12.0));
  }

  /// Lines without their ends: the header takes lines 1 to 8.
  std::vector<std::string> lines() const {
    std::vector<std::string> result = {
        fmt::format("LOCATION,\"Nowhere, made up\",-,NIL,synthetic,0,10.00,{:.2f},{:g},100.0", longitude_deg,
                    zone_h),
        "DESIGN CONDITIONS,0",
        "TYPICAL/EXTREME PERIODS,0",
        "GROUND TEMPERATURES,0",
        daylight_line,
        comment,
        "COMMENTS 2,",
        fmt::format("DATA PERIODS,1,{},Data,Sunday,1/1,12/31", records_per_hour)};
    for (int month = 1; month <= 12; ++month) {
      const int days = kDaysInMonth[static_cast<std::size_t>(month - 1)] + (leap_day && month == 2 ? 1 : 0);
      for (int day = 1; day <= days; ++day) add_day(month, day, result);
    }
    return result;
  }

  std::string text(const std::string& end = "\n") const {
    std::string result;
    for (const std::string& line : lines()) result += line + end;
    return result;
  }

 private:
  void add_day(int month, int day, std::vector<std::string>& result) const {
    for (int hour = 1; hour <= 24; ++hour) {
      for (int record = 1; record <= records_per_hour; ++record) {
        const double g = ghi(hour - 1);
        const double t = 10.0 - 5.0 * std::cos(hour * std::numbers::pi / 12.0);
        result.push_back(
            fmt::format("2001,{},{},{},{},?9,{:.3f},5,60,100000,9999,9999,300,{:.3f},{:.3f},{:.3f},999999,"
                        "999999,999999,9999,180,3.0",
                        month, day, hour, record * 60 / records_per_hour, t, g, 0.8 * g, 0.2 * g));
      }
    }
  }
};

/// Lines joined to a text.
inline std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

/// The line with field `index` (from 0) replaced. Only for lines without quoted commas.
inline std::string with_field(const std::string& line, std::size_t index, const std::string& value) {
  std::string result;
  std::size_t start = 0;
  for (std::size_t i = 0;; ++i) {
    const std::size_t end = line.find(',', start);
    result += (i == 0 ? "" : ",") + (i == index ? value : line.substr(start, end - start));
    if (end == std::string::npos) return result;
    start = end + 1;
  }
}

}  // namespace voltwright::files
