#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"
#include "app/weather.h"

namespace voltwright::app {

std::string to_json(const WeatherResponse& response) {
  using Json = nlohmann::ordered_json;
  Json json;
  json["stamp"] = {{"format", kAnswerFormat}, {"engine", kVersion}};
  json["file"] = response.file;
  json["weather_format"] = response.format;
  json["place"] = {{"name", response.place},
                   {"latitude_deg", response.site.latitude_deg},
                   {"longitude_deg", response.site.longitude_deg},
                   {"elevation_m", response.site.elevation_m}};
  json["source"] = response.source;
  if (response.climate) {
    const sky::MonthlyClimate& climate = *response.climate;
    json["monthly"] = {{"clearness", climate.clearness},
                       {"temperature_C", climate.temperature_C},
                       {"daily_range_K", climate.daily_range_K},
                       {"linke_turbidity", climate.linke_turbidity},
                       {"wind_m_s", climate.wind_m_s}};
  } else {
    json["covers"] = {{"first", response.first}, {"last", response.last}, {"hours", response.hours}};
    json["sums"] = {{"global_kWh_m2", response.ghi_kWh_m2},
                    {"direct_normal_kWh_m2", response.has_split ? Json(response.dni_kWh_m2) : Json(nullptr)},
                    {"diffuse_kWh_m2", response.has_split ? Json(response.dhi_kWh_m2) : Json(nullptr)}};
    json["temperature_C"] = {
        {"mean", response.temperature_C}, {"least", response.coldest_C}, {"most", response.warmest_C}};
    json["wind_m_s"] = response.wind_m_s;
  }
  json["solar_noon_offset_h"] = response.noon_offset_h ? Json(*response.noon_offset_h) : Json(nullptr);
  json["filled"] = response.filled;
  json["repairs"] = response.repairs;
  json["warnings"] = problem_list_json(response.warnings);
  return json_text(json);
}

}  // namespace voltwright::app
