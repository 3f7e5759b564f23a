#include <fmt/format.h>

#include <iterator>

#include "app/json.h"
#include "app/json_parts.h"
#include "app/place_sky.h"
#include "app/version.h"
#include "files/climate_override.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json spread_json(const YearSpread& spread) {
  return {{"low", spread.low}, {"middle", spread.middle}, {"high", spread.high}};
}

}  // namespace

std::string to_json(const SkyResponse& r) {
  Json json;
  json["stamp"] = {{"format", kAnswerFormat}, {"engine", kVersion}, {"seed", r.seed}, {"years", r.years}};
  json["place"] = {{"name", r.place.name},
                   {"latitude_deg", r.place.site.latitude_deg},
                   {"longitude_deg", r.place.site.longitude_deg},
                   {"elevation_m", r.place.site.elevation_m},
                   {"zone", r.place.zone}};
  json["origin"] = r.climate.origin;
  Json sources = Json::array();
  for (const files::ClimateSource& s : r.sources) {
    sources.push_back({{"use", s.use},
                       {"id", s.id},
                       {"name", s.name},
                       {"distance_km", s.distance_km},
                       {"height_m", s.height_m},
                       {"weight", s.weight}});
  }
  json["sources"] = std::move(sources);
  json["override"] = files::override_words(r.overridden);
  json["panel"] = {{"peak_W", r.peak_W},
                   {"tilt_deg", r.plane.tilt_deg},
                   {"azimuth_deg", r.plane.azimuth_deg},
                   {"mounting", name_of(r.plane.mounting)},
                   {"losses", r.losses}};
  Json months = Json::array();
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    const SkyMonth& month = r.months[m];
    months.push_back({{"month", m + 1},
                      {"temperature_C", r.climate.temperature_C[m]},
                      {"daily_range_K", r.climate.daily_range_K[m]},
                      {"coldest_C", month.coldest_C},
                      {"warmest_C", month.warmest_C},
                      {"clearness", r.climate.clearness[m]},
                      {"linke_turbidity", r.climate.linke_turbidity[m]},
                      {"wind_m_s", r.climate.wind_m_s[m]},
                      {"above_air_kWh_m2_day", month.above_air_kWh_m2_day},
                      {"normal_kWh_m2_day", month.normal_kWh_m2_day},
                      {"ground_kWh_m2_day", spread_json(month.ground_kWh_m2_day)},
                      {"panel_Wh_day", spread_json(month.panel_Wh_day)}});
  }
  json["months"] = months;
  json["year"] = {{"normal_kWh_m2", r.normal_kWh_m2_year},
                  {"ground_kWh_m2", spread_json(r.ground_kWh_m2_year)},
                  {"panel_kWh", spread_json(r.panel_kWh_year)},
                  {"coldest_C", spread_json(r.coldest_C)},
                  {"warmest_C", spread_json(r.warmest_C)}};
  return json_text(json);
}

std::string to_csv(const SkyResponse& r) {
  std::string text =
      "month,temperature_C,daily_range_K,coldest_C,warmest_C,clearness,linke_turbidity,wind_m_s,"
      "normal_kWh_m2_day,ground_low_kWh_m2_day,ground_kWh_m2_day,ground_high_kWh_m2_day,panel_low_Wh_day,"
      "panel_Wh_day,panel_high_Wh_day\n";
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    const SkyMonth& month = r.months[m];
    fmt::format_to(std::back_inserter(text),
                   "{},{:.1f},{:.1f},{:.1f},{:.1f},{:.3f},{:.2f},{:.1f},{:.3f},{:.3f},{:.3f},{:.3f},{:.1f},"
                   "{:.1f},{:.1f}\n",
                   m + 1, r.climate.temperature_C[m], r.climate.daily_range_K[m], month.coldest_C,
                   month.warmest_C, r.climate.clearness[m], r.climate.linke_turbidity[m],
                   r.climate.wind_m_s[m], month.normal_kWh_m2_day, month.ground_kWh_m2_day.low,
                   month.ground_kWh_m2_day.middle, month.ground_kWh_m2_day.high, month.panel_Wh_day.low,
                   month.panel_Wh_day.middle, month.panel_Wh_day.high);
  }
  return text;
}

}  // namespace voltwright::app
