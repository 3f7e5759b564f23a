#include "cli/weather_text.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <vector>

#include "cli/table.h"
#include "engine/units/month_names.h"
#include "files/position_text.h"

namespace voltwright::cli {

namespace {

std::string heading(const app::WeatherResponse& r) {
  const std::string place = r.place.empty() ? r.file : r.place;
  return fmt::format("{}: {}, {:.0f} m\nFormat: {}\n", place, files::position_text(r.site),
                     r.site.elevation_m, r.format);
}

std::string months(const sky::MonthlyClimate& climate) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t m = 0; m < units::kShortMonthNames.size(); ++m) {
    rows.push_back({units::kShortMonthNames[m], fmt::format("{:.1f}", climate.temperature_C[m]),
                    fmt::format("{:.1f}", climate.daily_range_K[m]),
                    fmt::format("{:.2f}", climate.clearness[m]), fmt::format("{:.1f}", climate.wind_m_s[m])});
  }
  return table({{"Month", Align::kLeft},
                {"mean °C", Align::kRight},
                {"daily range K", Align::kRight},
                {"clearness", Align::kRight},
                {"wind m/s", Align::kRight}},
               rows);
}

std::string hours(const app::WeatherResponse& r) {
  std::string text = fmt::format("Covers {} to {}, {} hours laid onto one year\n", r.first, r.last, r.hours);
  text += fmt::format("Light on the level {:.1f} kWh/m2", r.ghi_kWh_m2);
  if (r.has_split) {
    text += fmt::format(", straight from the sun {:.1f}, from the sky {:.1f}", r.dni_kWh_m2, r.dhi_kWh_m2);
  }
  text += fmt::format("\nAir {:.2f} °C on average, {:.1f} to {:.1f} °C; wind {:.1f} m/s\n", r.temperature_C,
                      r.coldest_C, r.warmest_C, r.wind_m_s);
  if (r.noon_offset_h) {
    text += fmt::format("Middle of the light and solar noon: {:+.3f} h apart (up to 0.2 h is right)\n",
                        *r.noon_offset_h);
  }
  return text;
}

}  // namespace

std::string weather_text(const app::WeatherResponse& r, std::size_t width) {
  std::string text = heading(r) + "\n" + (r.climate ? months(*r.climate) : hours(r));
  if (r.filled > 0) text += fmt::format("{} missing values were filled\n", r.filled);
  if (!r.repairs.empty()) text += "\nMended or assumed\n";
  for (const std::string& repair : r.repairs) text += wrapped("- " + repair, width, "  ");
  return text + "\nWhere the numbers come from\n" + wrapped(r.source, width, "  ");
}

}  // namespace voltwright::cli
