#pragma once
// Weather files of every format, made in code from one sky: every day the same sun, symmetric about the solar
// noon of the longitude, and a temperature wave. No line of them comes from a real weather file.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "files/daylight.h"

namespace voltwright::files {

struct MadeSky {
  double longitude_deg = 15.0;
  double zone_h = 1.0;

  /// Global horizontal radiation at an hour of the day of local standard time, W/m2.
  double ghi(double hour) const {
    const double noon = 12.0 - (longitude_deg - 15.0 * zone_h) / 15.0;
    return 800.0 * std::max(0.0, std::cos((hour - noon) * std::numbers::pi / 12.0));
  }
  static double temperature_C(double hour) { return 10.0 - 5.0 * std::cos(hour * std::numbers::pi / 12.0); }
};

/// Calls `row(month, day, hour)` for every hour 0 to 23 of a year of 365 days.
template <class Row>
void every_hour(const Row& row) {
  for (int month = 1; month <= 12; ++month) {
    for (int day = 1; day <= kDaysInMonth.at(static_cast<std::size_t>(month - 1)); ++day) {
      for (int hour = 0; hour < 24; ++hour) row(month, day, hour);
    }
  }
}

inline std::vector<std::string> made_tmy3(const MadeSky& sky = {}) {
  std::vector<std::string> lines = {
      fmt::format("700000,\"NOWHERE, MADE UP\",NA,{:.1f},10.000,{:.3f},100", sky.zone_h, sky.longitude_deg),
      "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd "
      "(m/s)"};
  every_hour([&](int month, int day, int hour) {
    const double g = sky.ghi(hour + 0.5);
    lines.push_back(fmt::format("{:02}/{:02}/{},{:02}:00,{:.3f},1,{:.3f},{:.3f},{:.3f},3.0", month, day,
                                1980 + (7 * month) % 20, hour + 1, g, 0.8 * g, 0.2 * g,
                                MadeSky::temperature_C(hour + 1.0)));
  });
  return lines;
}

inline std::vector<std::string> made_tmy2(const MadeSky& sky = {}) {
  std::vector<std::string> lines = {fmt::format(
      " 70000 NOWHERE                NA {:3.0f} N 10  0 E {:3.0f}  0   100", sky.zone_h, sky.longitude_deg)};
  every_hour([&](int month, int day, int hour) {
    const double g = sky.ghi(hour + 0.5);
    std::string row = fmt::format(" {:02}{:02}{:02}{:02}", 61 + month, month, day, hour + 1);
    row += std::string(8, '0');
    const auto radiation = [](double w) { return fmt::format("{:04.0f}A7", w); };
    row += radiation(g) + radiation(0.8 * g) + radiation(0.2 * g);
    row.resize(67, '0');
    row += fmt::format("{:4.0f}A7", 10.0 * MadeSky::temperature_C(hour + 1.0));
    row.resize(95, '0');
    row += "030A7";
    row.resize(142, '0');
    lines.push_back(row);
  });
  return lines;
}

/// Instants in UTC, the radiation `offset_h` after the stamp.
inline std::vector<std::string> made_pvgis_tmy(double offset_h = 0.25, const MadeSky& sky = {}) {
  std::vector<std::string> lines = {"Latitude (decimal degrees): 10.000",
                                    fmt::format("Longitude (decimal degrees): {:.3f}", sky.longitude_deg),
                                    "Elevation (m): 100.0",
                                    fmt::format("Irradiance Time Offset (h): {:g}", offset_h),
                                    "month,year",
                                    "1,2018",
                                    "2,2007",
                                    "time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP"};
  every_hour([&](int month, int day, int hour) {
    const double g = sky.ghi(hour + sky.zone_h + offset_h);
    lines.push_back(fmt::format(
        "{}{:02}{:02}:{:02}00,{:.3f},60,{:.3f},{:.3f},{:.3f},300,3.0,180,100000", 2005 + (5 * month) % 12,
        month, day, hour, MadeSky::temperature_C(hour + sky.zone_h), g, g > 0.0 ? 0.8 * g : -0.0, 0.2 * g));
  });
  lines.insert(lines.end(), {"", "T2m: 2-m air temperature", "PVGIS (c) European Union"});
  return lines;
}

inline std::string made_pvgis_tmy_json(double offset_h = 0.25) {
  std::string text = fmt::format(
      "{{\"inputs\": {{\"location\": {{\"latitude\": 10.0, \"longitude\": 15.0, \"elevation\": 100.0, "
      "\"irradiance_time_offset\": {:g}}}}}, \"outputs\": {{\"tmy_hourly\": [",
      offset_h);
  const MadeSky sky;
  bool first = true;
  every_hour([&](int month, int day, int hour) {
    const double g = sky.ghi(hour + sky.zone_h + offset_h);
    text += fmt::format(
        "{}{{\"time(UTC)\": \"{}{:02}{:02}:{:02}00\", \"T2m\": {:.3f}, \"G(h)\": {:.3f}, "
        "\"Gb(n)\": {:.3f}, \"Gd(h)\": {:.3f}, \"WS10m\": 3.0}}",
        first ? "" : ", ", 2005 + (5 * month) % 12, month, day, hour,
        MadeSky::temperature_C(hour + sky.zone_h), g, 0.8 * g, 0.2 * g);
    first = false;
  });
  return text + "]}}";
}

/// Hourly values of 2016 on a horizontal plane, stamps 10 minutes past the hour.
inline std::vector<std::string> made_pvgis_hourly(const std::string& slope = "0 deg.") {
  std::vector<std::string> lines = {"Latitude (decimal degrees):\t10.000",
                                    "Longitude (decimal degrees):\t15.000",
                                    "Elevation (m):\t100",
                                    "Radiation database:\tPVGIS-SARAH",
                                    "",
                                    "",
                                    "Slope: " + slope + " ",
                                    "Azimuth: 0 deg. ",
                                    "time,Gb(i),Gd(i),Gr(i),H_sun,T2m,WS10m,Int"};
  const MadeSky sky;
  every_hour([&](int month, int day, int hour) {
    const double g = sky.ghi(hour + sky.zone_h + 1.0 / 6.0);
    lines.push_back(fmt::format("2016{:02}{:02}:{:02}10,{:.3f},{:.3f},0.0,10.0,{:.3f},3.0,0.0", month, day,
                                hour, 0.8 * g, 0.2 * g,
                                MadeSky::temperature_C(hour + sky.zone_h + 1.0 / 6.0)));
  });
  lines.insert(lines.end(), {"", "Gb(i): Beam (direct) irradiance", "PVGIS (c) European Union"});
  return lines;
}

inline std::vector<std::string> power_head(const std::string& clock, const std::string& unit) {
  return {"-BEGIN HEADER-",
          "NASA/POWER Source Native Resolution Data",
          "Dates (month/day/year): 01/01/2023 through 12/31/2023 in " + clock,
          "Location: latitude  10.0   longitude 15.0 ",
          "elevation from MERRA-2: Average for 0.5 x 0.625 degree lat/lon region = 100.0 meters",
          "The value for missing source data that cannot be computed: -999 ",
          "Parameter(s):",
          "ALLSKY_SFC_SW_DWN     CERES SYN1deg All Sky Surface Shortwave Downward Irradiance (" + unit + ") ",
          "T2M                   MERRA-2 Temperature at 2 Meters (C) ",
          "-END HEADER-"};
}

/// Hours that start at their stamp; "LST" is an hour ahead of UTC here.
inline std::vector<std::string> made_power_hourly(const std::string& clock = "UTC") {
  auto lines = power_head(clock, "Wh/m^2");
  lines.emplace_back("YEAR,MO,DY,HR,ALLSKY_SFC_SW_DWN,T2M,WS10M");
  const MadeSky sky;
  const double ahead_h = clock == "UTC" ? sky.zone_h : 0.0;
  every_hour([&](int month, int day, int hour) {
    lines.push_back(fmt::format("2023,{},{},{},{:.3f},{:.3f},3.0", month, day, hour,
                                sky.ghi(hour + ahead_h + 0.5), MadeSky::temperature_C(hour + ahead_h + 0.5)));
  });
  return lines;
}

/// Hours of local time that start at their stamp, with all that can be said above the titles.
inline std::vector<std::string> made_csv(const std::string& separator = ",", bool decimal_comma = false) {
  std::vector<std::string> lines = {
      "# latitude: 10.0",
      "# longitude: 15.0",
      "# elevation: 100",
      "# zone: +1",
      "# stamp: start",
      "time" + separator + "GHI (W/m2)" + separator + "temp_air [C]" + separator + "wind_speed"};
  const MadeSky sky;
  every_hour([&](int month, int day, int hour) {
    std::string values =
        fmt::format("{:.3f}|{:.3f}|3.0", sky.ghi(hour + 0.5), MadeSky::temperature_C(hour + 0.5));
    if (decimal_comma) std::replace(values.begin(), values.end(), '.', ',');
    std::string row = fmt::format("2023-{:02}-{:02} {:02}:00", month, day, hour) + "|" + values;
    for (std::size_t at = row.find('|'); at != std::string::npos; at = row.find('|', at)) {
      row.replace(at, 1, separator);
    }
    lines.push_back(row);
  });
  return lines;
}

}  // namespace voltwright::files
