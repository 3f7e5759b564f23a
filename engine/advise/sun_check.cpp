#include "engine/advise/sun_check.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

#include "engine/advise/wording.h"
#include "engine/journey/calendar.h"
#include "engine/sky/calendar.h"
#include "engine/supply/solar_controller.h"

namespace voltwright::advise {

namespace {

constexpr double kNoLeg_C = 25.0;
constexpr double kRecordBelow_K = 5.0;
constexpr double kRecordPerSwing = 0.65;
/// Snow lies on modules flatter than this; common practice, no source.
constexpr double kSnowLiesBelow_deg = 30.0;
/// A sunlit module without wind behind it (King, Boyson and Kratochvil 2004: 83 degC at 1000 W/m2 and 25
/// degC).
constexpr double kHotCell_C = 70.0;
constexpr double kLabel_C = 25.0;
constexpr double kCurrentPerK = 0.0005;  // typical of crystalline silicon (from memory)
constexpr double kChargeOver12V = 14.4 / 12.0;
constexpr std::int64_t kMinute_s = 60;

std::array<bool, 12> months_of(const journey::Leg& leg) {
  using namespace std::chrono;
  std::array<bool, 12> there{};
  const std::int64_t end_s =
      leg.start_utc_s + kMinute_s * static_cast<std::int64_t>(journey::minutes_of(leg));
  for (std::int64_t at_s = leg.start_utc_s; at_s < end_s; at_s += sky::kSecondsPerDay) {
    const year_month_day date{sys_days{days{sky::floor_divide(at_s, sky::kSecondsPerDay)}}};
    there[static_cast<unsigned>(date.month()) - 1] = true;
  }
  return there;
}

/// The least of f(climate, month) over the months of the journey.
template <class F>
double least_of_months(std::span<const journey::Leg> legs, std::span<const season::LegSky> skies, F f) {
  double least = kNoLeg_C;
  for (std::size_t k = 0; k < std::min(legs.size(), skies.size()); ++k) {
    const std::array<bool, 12> there = months_of(legs[k]);
    for (std::size_t m = 0; m < there.size(); ++m) {
      if (there[m]) least = std::min(least, f(skies[k].climate, m));
    }
  }
  return least;
}

std::string signed_percent(double share) { return figure(100.0 * share) + " %/K"; }

SunFinding cold_string(const supply::SolarArray& array, double coldest_C) {
  SunFinding f;
  f.array = array.name;
  f.matter = "String voltage in the cold";
  f.value = supply::string_open_V(array, coldest_C);
  f.limit = units::as_volts(array.input_limit);
  f.unit = "V";
  f.holds = f.value <= f.limit;
  const std::string cold = figure(std::round(coldest_C), "°C");
  f.working =
      figure(array.in_series) + " x " + figure(units::as_volts(array.module.open_circuit), "V") + " x (1 + " +
      signed_percent(array.module.voltage_per_K) + " x (" + cold + " - 25 °C)) = " + figure(f.value, "V") +
      "; the controller bears " + figure(f.limit, "V") +
      ". The coldest air is estimated from the monthly normals, 6 K either way, unless the plan gives "
      "record_cold.";
  const double at_C = supply::limit_reached_C(array);
  f.say = f.holds
              ? "The strings stay below the input limit at " + cold + ", the coldest to reckon with"
              : "At " + cold + ", the coldest to reckon with, the strings reach " + figure(f.value, "V") +
                    " and the controller bears " + figure(f.limit, "V") +
                    ". Beyond its limit a controller is destroyed, can arc and burn. Put fewer modules in "
                    "series or take a controller for more";
  if (at_C > -273.0) f.say += "; the limit is reached at " + figure(std::round(at_C), "°C");
  f.say += ".";
  return f;
}

SunFinding snow(const supply::SolarArray& array, double month_C) {
  SunFinding f;
  f.array = array.name;
  f.matter = "Snow";
  f.value = month_C;
  f.unit = "°C";
  f.holds = month_C >= 0.0 || array.tilt_deg >= kSnowLiesBelow_deg;
  f.working = "Coldest monthly mean of the air on the journey " + figure(month_C, "°C") + ", tilt " +
              figure(array.tilt_deg) + " degrees; snow lies below " + figure(kSnowLiesBelow_deg) +
              " degrees (common practice, no source).";
  const bool stated = !array.soiling_by_month.empty();
  f.say = f.holds ? "Snow is not expected to lie on the modules."
                  : "Snow can cover these modules for days or weeks, and they then give next to nothing. " +
                        std::string(stated ? "The plan's losses by month are used as they stand."
                                           : "The simulated yield does not count on that: clear them, tilt "
                                             "them, or state the loss in soiling_by_month.");
  return f;
}

SunFinding hot_string(const supply::SolarArray& array, double system_V) {
  SunFinding f;
  f.array = array.name;
  f.matter = "Modules too low for the battery";
  const double per_K = array.module.power_per_K - kCurrentPerK;
  f.value = array.in_series * units::as_volts(array.module.at_peak_voltage) *
            (1.0 + per_K * (kHotCell_C - kLabel_C));
  f.limit = system_V * kChargeOver12V;
  f.unit = "V";
  f.holds = f.value >= f.limit;
  f.working = figure(array.in_series) + " x " + figure(units::as_volts(array.module.at_peak_voltage), "V") +
              " x (1 + " + signed_percent(per_K) + " x 45 K) = " + figure(f.value, "V") + " at " +
              figure(kHotCell_C, "°C") + "; absorption asks for " + figure(f.limit, "V") + ".";
  f.say = f.holds ? "Hot modules still have the voltage that charging asks for."
                  : "Hot modules have their peak power below the voltage that charging asks for and give "
                    "less than their power. Put more in series. A controller that raises the voltage is not "
                    "simulated.";
  return f;
}

}  // namespace

double coldest_air_C(std::span<const journey::Leg> legs, std::span<const season::LegSky> skies) {
  double coldest_C = least_of_months(legs, skies, [](const sky::MonthlyClimate& climate, std::size_t m) {
    const auto [low, high] = std::minmax_element(climate.temperature_C.begin(), climate.temperature_C.end());
    return climate.temperature_C[m] - 0.5 * climate.daily_range_K[m] - kRecordBelow_K -
           kRecordPerSwing * (*high - *low);
  });
  for (const season::LegSky& sky : skies) {
    if (!sky.typical_year.has_value()) continue;
    for (const double air_C : sky.typical_year->temperature_C) coldest_C = std::min(coldest_C, air_C);
  }
  return coldest_C;
}

double coldest_month_C(std::span<const journey::Leg> legs, std::span<const season::LegSky> skies) {
  return least_of_months(legs, skies, [](const sky::MonthlyClimate& climate, std::size_t m) {
    return climate.temperature_C[m];
  });
}

std::vector<SunFinding> sun_findings(const Plan& plan, std::span<const season::LegSky> skies) {
  std::vector<SunFinding> findings;
  const double coldest_C = coldest_air_C(plan.legs, skies);
  const double month_C = coldest_month_C(plan.legs, skies);
  for (const supply::SolarArray& array : plan.arrays) {
    const double cold_C = array.record_cold ? array.record_cold->as_celsius() : coldest_C;
    findings.push_back(cold_string(array, cold_C));
    findings.push_back(snow(array, month_C));
    findings.push_back(hot_string(array, units::as_volts(plan.system_voltage)));
  }
  return findings;
}

std::vector<Caution> sun_cautions(std::span<const SunFinding> findings) {
  std::vector<Caution> cautions;
  for (const SunFinding& f : findings) {
    if (!f.holds) cautions.push_back({f.matter + ", " + f.array, f.say + " Working: " + f.working});
  }
  return cautions;
}

}  // namespace voltwright::advise
