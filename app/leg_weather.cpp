#include "app/leg_weather.h"

#include <utility>

#include "files/text_file.h"
#include "files/text_problem.h"
#include "files/utc_text.h"

namespace voltwright::app {

const files::ReadWeather* LegWeather::read(const journey::Leg& leg, base::Problems& problems) {
  if (const auto found = files_.find(leg.weather_file); found != files_.end()) return &found->second;
  const std::string path = (folder_ / leg.weather_file).string();
  const auto text = files::read_text(path);
  if (!text) {
    problems.insert(problems.end(), text.problems().begin(), text.problems().end());
    return nullptr;
  }
  files::WeatherOptions options;
  options.place = leg.place.site;
  auto weather = files::read_weather(text.value(), path, options);
  if (!weather) {
    problems.insert(problems.end(), weather.problems().begin(), weather.problems().end());
    return nullptr;
  }
  files::ReadWeather& year = files_[leg.weather_file];
  year = std::move(weather).value();
  problems.insert(problems.end(), year.warnings.begin(), year.warnings.end());
  // What was mended or assumed is told as a warning too; a shifted clock has its own.
  for (const std::string& repair : year.repairs) {
    if (repair.starts_with("The sun of this file")) continue;
    problems.push_back(files::text_warning(
        path, 0, 0, {.what = repair, .field = "", .given = "", .limit = "", .remedy = ""}));
  }
  return &year;
}

void LegWeather::add_to(const journey::Leg& leg, season::LegSky& sky, base::Problems& problems) {
  if (leg.weather_file.empty()) return;
  const files::ReadWeather* year = read(leg, problems);
  if (year == nullptr) return;
  if (year->climate) {
    const auto turbidity = sky.climate.linke_turbidity;
    const bool known = !sky.climate.origin.empty();
    sky.climate = *year->climate;
    if (known) sky.climate.linke_turbidity = turbidity;
    return;
  }
  if (!year->covers(leg.start_utc_s, leg.end_utc_s)) {
    const std::int64_t first = year->weather.start_utc_s + 3600 * static_cast<std::int64_t>(year->first_hour);
    const std::int64_t last = first + 3600 * static_cast<std::int64_t>(year->hours);
    // The month and day of "2023-05-01T00:00Z": the year means nothing.
    const auto day = [](std::int64_t utc_s) { return files::utc_text(utc_s).substr(5, 5); };
    problems.push_back(files::text_problem(
        (folder_ / leg.weather_file).string(), 0, 0,
        {.what = "The weather file does not cover the dates of the leg at " + leg.place.name + ".",
         .field = "weather",
         .given = day(leg.start_utc_s) + " to " + day(leg.end_utc_s - 1) + " (month-day)",
         .limit = day(first) + " to " + day(last - 1) + " of any year",
         .remedy = "Use a file of the whole year, change the dates, or leave `weather` out of this leg."}));
    return;
  }
  sky.typical_year = year->weather;
}

}  // namespace voltwright::app
