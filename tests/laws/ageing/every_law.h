#pragma once
// Every opinion of the catalogue, and random exposures to try them with.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "engine/ageing/opinion.h"
#include "engine/base/random.h"
#include "files/ageing_record.h"

namespace voltwright::ageing {

inline std::vector<Opinion> every_opinion() {
  const auto result = files::read_ageing_catalogue();
  if (!result) return {};
  std::vector<Opinion> all;
  for (const Opinions& opinions : result.value().opinions)
    all.insert(all.end(), opinions.opinions.begin(), opinions.opinions.end());
  return all;
}

/// A stretch of up to a month of mixed use.
inline Exposure random_exposure(base::RandomStream& random) {
  Exposure exposure;
  const int dwells = 1 + static_cast<int>(random.uniform() * 5.0);
  for (int i = 0; i < dwells; ++i) {
    exposure.dwell.push_back({-10.0 + 65.0 * random.uniform(), random.uniform(), 150.0 * random.uniform()});
    exposure.hours += exposure.dwell.back().hours;
  }
  const int swings = static_cast<int>(random.uniform() * 6.0);
  for (int i = 0; i < swings; ++i) {
    const double depth = random.uniform();
    const double mean = 0.5 * depth + (1.0 - depth) * random.uniform();
    const bool is_half = random.uniform() < 0.4;
    const bool rises = random.uniform() < 0.5;
    exposure.swings.push_back({depth, mean, is_half ? 0.5 : 1.0, is_half && !rises ? 0.0 : random.uniform(),
                               is_half && rises ? 0.0 : random.uniform(), -10.0 + 65.0 * random.uniform()});
  }
  return exposure;
}

/// A day of rest at one temperature and charge.
inline Exposure day_of_rest(double temperature_C, double soc) {
  Exposure day;
  day.hours = 24.0;
  day.dwell = {{temperature_C, soc, 24.0}};
  return day;
}

/// A day with one swing about half charge at a gentle rate.
inline Exposure day_of_use(double temperature_C, double depth) {
  Exposure day = day_of_rest(temperature_C, 0.5);
  day.swings = {{depth, 0.5, 1.0, 0.2, 0.2, temperature_C}};
  return day;
}

}  // namespace voltwright::ageing
