#pragma once
// The climate of a place and what a panel gives there, month by month, over many made years.
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/journey/leg.h"
#include "engine/sky/climate_override.h"
#include "engine/sky/plane.h"
#include "engine/sky/weather.h"
#include "files/climate.h"

namespace voltwright::app {

/// Texts are "value unit"; empty = the default.
struct SkyRequest {
  std::string place;  // a town, "Oslo" or "Oslo, NO"; with latitude and longitude only a label
  std::optional<double> latitude_deg;
  std::optional<double> longitude_deg;
  std::string elevation;     // default that of the town, else 0 m
  std::string peak;          // default "100 W"
  std::string tilt;          // default flat
  std::string azimuth;       // "180 deg" or "south"; default towards the equator
  std::string mounting;      // "open rack", "ventilated roof" or "glued flat" (default)
  std::string climate_file;  // TOML with monthly figures in place of those of the tables; empty = none
  std::string losses;        // dirt, mismatch, wiring, controller; default "10 %"
  int years = 40;            // made years, 1 to 1000
  std::uint64_t seed = 1;
};

/// One in ten years gives less than `low`, one in ten more than `high`.
struct YearSpread {
  double low = 0.0;
  double middle = 0.0;
  double high = 0.0;
};

struct SkyMonth {
  double above_air_kWh_m2_day = 0.0;  // on the horizontal, no air
  double normal_kWh_m2_day = 0.0;     // on the horizontal, long-term mean: clearness times the above
  YearSpread ground_kWh_m2_day;       // on the horizontal, of the made years
  YearSpread panel_Wh_day;            // after losses
  double coldest_C = 0.0;             // minute of all made years
  double warmest_C = 0.0;
};

struct SkyResponse {
  journey::Place place;
  sky::MonthlyClimate climate;
  std::vector<files::ClimateSource> sources;
  sky::ClimateOverride overridden;  // months whose figures are the user's
  sky::Plane plane;
  double peak_W = 0.0;
  double losses = 0.0;  // share
  int years = 0;
  std::uint64_t seed = 0;
  std::array<SkyMonth, 12> months;
  double normal_kWh_m2_year = 0.0;
  YearSpread ground_kWh_m2_year;
  YearSpread panel_kWh_year;
  YearSpread coldest_C;  // minute of a year
  YearSpread warmest_C;
};

/// Every problem of the request at once. The answer depends on the request alone, not on the threads.
base::Result<SkyResponse> place_sky(const SkyRequest& request);

/// "open rack", "ventilated roof" or "glued flat".
const char* name_of(sky::Mounting mounting);

/// "59.91° N, 10.75° E, 26 m, Europe/Oslo".
std::string position_words(const journey::Place& place);

/// What the panel is and loses, a sentence.
std::string panel_words(const SkyResponse& response);

/// The answer as one self-contained page.
std::string sky_html(const SkyResponse& response);

/// Formats: docs/formats/sky.md.
std::string to_json(const SkyResponse& response);
std::string to_csv(const SkyResponse& response);

}  // namespace voltwright::app
