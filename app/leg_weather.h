#pragma once
// Weather files of the legs of a plan, each read once.
#include <filesystem>
#include <map>
#include <string>

#include "engine/base/problem.h"
#include "engine/journey/leg.h"
#include "engine/season/series.h"
#include "files/weather/read_weather.h"

namespace voltwright::app {

class LegWeather {
 public:
  /// Files are looked for from this folder.
  explicit LegWeather(std::filesystem::path folder) : folder_(std::move(folder)) {}

  /// Adds the weather of a leg's file to its sky: a year to replay, or monthly means to make weather from.
  /// Nothing if the leg names no file. Problems and warnings of the file are added once; a leg whose dates
  /// the file does not cover is a problem. The leg's place serves a file that names none.
  void add_to(const journey::Leg& leg, season::LegSky& sky, base::Problems& problems);

 private:
  const files::ReadWeather* read(const journey::Leg& leg, base::Problems& problems);

  std::filesystem::path folder_;
  std::map<std::string, files::ReadWeather> files_;
};

}  // namespace voltwright::app
