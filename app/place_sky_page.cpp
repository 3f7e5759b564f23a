#include <fmt/format.h>

#include <cmath>

#include "app/place_sky.h"
#include "app/version.h"
#include "files/position_text.h"
#include "files/report/sky_page.h"

namespace voltwright::app {

namespace {

files::report::MonthSpread spread_of(const YearSpread& s) { return {s.low, s.middle, s.high}; }

}  // namespace

std::string position_words(const journey::Place& place) {
  return fmt::format("{}, {:.0f} m, {}", files::position_text(place.site), place.site.elevation_m,
                     place.zone);
}

std::string panel_words(const SkyResponse& r) {
  const std::string lie = r.plane.tilt_deg == 0.0 ? std::string("flat")
                                                  : fmt::format("tilted {:.0f}° towards {:.0f}°",
                                                                r.plane.tilt_deg, r.plane.azimuth_deg);
  return fmt::format("Panel: {:.0f} W peak, {}, {}, {:.0f} % lost to dirt, mismatch, wiring and controller.",
                     r.peak_W, lie, name_of(r.plane.mounting), 100.0 * r.losses);
}

std::string sky_html(const SkyResponse& r) {
  files::report::SkyPageInput input;
  input.place = r.place.name;
  input.position = position_words(r.place);
  input.panel = panel_words(r);
  input.peak_W = r.peak_W;
  input.years = r.years;
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    const SkyMonth& month = r.months[m];
    input.months[m] = {r.climate.temperature_C[m],
                       r.climate.daily_range_K[m],
                       month.coldest_C,
                       month.warmest_C,
                       r.climate.clearness[m],
                       r.climate.linke_turbidity[m],
                       r.climate.wind_m_s[m],
                       month.normal_kWh_m2_day,
                       spread_of(month.panel_Wh_day),
                       r.overridden.has(m)};
  }
  input.normal_kWh_m2_year = r.normal_kWh_m2_year;
  input.panel_kWh_year = spread_of(r.panel_kWh_year);
  input.coldest_C = spread_of(r.coldest_C);
  input.warmest_C = spread_of(r.warmest_C);
  for (const files::ClimateSource& s : r.sources) {
    input.sources.push_back({s.use, s.name, s.distance_km, s.height_m, s.weight});
  }
  input.origin = r.climate.origin;
  input.seed = std::to_string(r.seed);
  input.engine_version = kVersion;
  return files::report::sky_page(input);
}

}  // namespace voltwright::app
