#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <array>
#include <cmath>

#include "app/json.h"
#include "app/place_sky.h"
#include "app/weather.h"
#include "cli/commands.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "cli/weather_text.h"
#include "engine/units/month_names.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::SkyRequest request;
  std::string weather_file;
  files::WeatherOptions weather;
  bool json = false;
  std::string csv;
  std::string html;
};

/// Whole degrees; never "-0".
std::string degrees(double value) { return fmt::format("{:.0f}", std::round(value) + 0.0); }

std::string span_of(const app::YearSpread& spread, int decimals) {
  return fmt::format("{:.{}f} / {:.{}f} / {:.{}f}", spread.low, decimals, spread.middle, decimals,
                     spread.high, decimals);
}

std::string heading(const app::SkyResponse& r) {
  return r.place.name + ": " + app::position_words(r.place) + "\n";
}

std::string text_of(const app::SkyResponse& r, std::size_t width) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    const app::SkyMonth& month = r.months[m];
    rows.push_back(
        {std::string(units::kShortMonthNames[m]) + (r.overridden.has(m) ? " *" : ""),
         fmt::format("{:.1f}", r.climate.temperature_C[m]), fmt::format("{:.1f}", r.climate.daily_range_K[m]),
         degrees(month.coldest_C), degrees(month.warmest_C), fmt::format("{:.2f}", r.climate.clearness[m]),
         fmt::format("{:.2f}", month.normal_kWh_m2_day), fmt::format("{:.1f}", r.climate.linke_turbidity[m]),
         fmt::format("{:.1f}", r.climate.wind_m_s[m]), span_of(month.panel_Wh_day, 0)});
  }
  std::string text = heading(r) + wrapped(app::panel_words(r), width, "  ") + "\n";
  text += table({{"Month", Align::kLeft},
                 {"mean °C", Align::kRight},
                 {"daily range K", Align::kRight},
                 {"coldest", Align::kRight},
                 {"warmest", Align::kRight},
                 {"clearness", Align::kRight},
                 {"kWh/m2 day", Align::kRight},
                 {"turbidity", Align::kRight},
                 {"wind m/s", Align::kRight},
                 {"panel Wh a day", Align::kRight}},
                rows);
  text += fmt::format("\nYear: {:.0f} kWh/m2 on the level; panel {} kWh\n", r.normal_kWh_m2_year,
                      span_of(r.panel_kWh_year, 0));
  text += fmt::format("Coldest minute of a year {} °C, warmest {} °C\n", span_of(r.coldest_C, 0),
                      span_of(r.warmest_C, 0));
  text +=
      wrapped(fmt::format("Three figures: one year in ten lies below the first, half below the second, one "
                          "in ten above the third, of {} made years. Coldest and warmest: minute of all of "
                          "them; a true record may lie further out. kWh/m2: long-term mean on the level.",
                          r.years),
              width, "  ");
  if (!(r.overridden == sky::ClimateOverride{})) text += "  * with figures of your own\n";
  text += "\nWhere the numbers come from\n" + wrapped(r.climate.origin, width, "  ");
  return text;
}

/// What a weather file holds, in place of what the tables say.
int run_file(const Options& options) {
  files::WeatherOptions weather = options.weather;
  if (options.request.latitude_deg && options.request.longitude_deg) {
    weather.place = sky::Site{*options.request.latitude_deg, *options.request.longitude_deg, 0.0};
  }
  const auto response = app::read_weather(options.weather_file, weather);
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  if (options.json) return show(app::to_json(response.value())) ? kAnswered : kNotWritten;
  show_problems(response.value().warnings, false);
  return show(weather_text(response.value(), terminal_width())) ? kAnswered : kNotWritten;
}

int run(const Options& options) {
  if (!options.weather_file.empty()) return run_file(options);
  if (both_on_stdout(options.json, options.csv)) return kBadInput;
  const auto response = app::place_sky(options.request);
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  bool written = true;
  if (!options.html.empty()) written &= deliver(options.html, app::sky_html(response.value()), "Page");
  if (!options.csv.empty()) written &= deliver(options.csv, app::to_csv(response.value()), "Months");
  if (options.json) {
    written &= show(app::to_json(response.value()));
  } else if (options.csv != "-") {
    written &= show(text_of(response.value(), terminal_width()));
  }
  return written ? kAnswered : kNotWritten;
}

}  // namespace

void add_sky(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  app::SkyRequest& r = options->request;
  CLI::App* command =
      app.add_subcommand("sky", "Show the climate of a place and what a solar panel gives there");
  command->add_option("PLACE", r.place, "Town, \"Oslo\" or \"Oslo, NO\"; or give --lat and --lon");
  command->add_option("--lat", r.latitude_deg, "Degrees, north positive");
  command->add_option("--lon", r.longitude_deg, "Degrees, east positive");
  command->add_option("--elevation", r.elevation, "\"120 m\" (default: of the town, else 0 m)");
  command->add_option("--peak", r.peak, "Of the panel or array (default 100 W)");
  command->add_option("--tilt", r.tilt, "From the level, \"30 deg\" (default: flat)");
  command->add_option("--azimuth", r.azimuth,
                      "Where it looks, \"200 deg\" or \"SSW\" (default: towards the equator)");
  command->add_option("--mounting", r.mounting, "open rack, ventilated roof or glued flat (default)");
  command->add_option("--losses", r.losses,
                      "Lost to dirt, mismatch, wiring and controller (default 10 %, an assumption)");
  command->add_option("--climate", r.climate_file,
                      "TOML file with monthly figures in place of the tables' ([leg.climate] of a plan)");
  CLI::Option* file = command->add_option(
      "--weather", options->weather_file,
      "Show what this weather file holds instead; --lat and --lon serve a file that names no position");
  file->excludes(command->get_option("PLACE"));
  command
      ->add_option("--zone", options->weather.zone_h,
                   "Clock of that file less UTC in hours, whatever the file says (5.5)")
      ->check(CLI::Range(-12.0, 14.0))
      ->needs(file);
  command
      ->add_option("--year", options->weather.year,
                   "Which year of a file of many (default the last whole one)")
      ->needs(file);
  command->add_option("--years", r.years, "Made years of weather (default 40)");
  command->add_option("--seed", r.seed, "Start of the random numbers (default 1)");
  command->add_flag("--json", options->json, "Print the answer as JSON");
  command->add_option("--csv", options->csv, "Write the months as CSV to a file (- for standard output)")
      ->excludes(file);
  command->add_option("--html", options->html, "Write a page for screen and paper to a file")->excludes(file);
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
