#pragma once
// The page of a place: its climate by month, what a panel gives there, and where the numbers come from.
#include <array>
#include <string>
#include <vector>

namespace voltwright::files::report {

/// Low, middle and high of the made years.
struct MonthSpread {
  double low = 0.0, middle = 0.0, high = 0.0;
};

struct SkyPageMonth {
  double mean_C = 0.0, daily_range_K = 0.0, coldest_C = 0.0, warmest_C = 0.0;
  double clearness = 0.0, turbidity = 0.0, wind_m_s = 0.0;
  double normal_kWh_m2_day = 0.0;  // on the level, long-term mean
  MonthSpread panel_Wh_day;
  bool own = false;  // with figures of the user's
};

struct SkyPageSource {
  std::string use, name;
  double distance_km = 0.0, height_m = 0.0, weight = 0.0;
};

struct SkyPageInput {
  std::string place;     // "Oslo"
  std::string position;  // in words, with height and zone
  std::string panel;     // what the panel is, a sentence
  double peak_W = 0.0;
  int years = 0;
  std::array<SkyPageMonth, 12> months;
  double normal_kWh_m2_year = 0.0;
  MonthSpread panel_kWh_year, coldest_C, warmest_C;
  std::vector<SkyPageSource> sources;
  std::string origin;  // sentences
  std::string seed, engine_version;
};

/// One self-contained page for screen and paper.
std::string sky_page(const SkyPageInput& input);

}  // namespace voltwright::files::report
