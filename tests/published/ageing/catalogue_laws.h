#pragma once
// The ageing laws of the catalogue, by the id of the opinion.
#include <gtest/gtest.h>

#include <string_view>

#include "engine/ageing/opinion.h"
#include "engine/ageing/storage_error.h"
#include "files/ageing_record.h"

namespace voltwright::published {

inline const files::AgeingCatalogue& ageing_catalogue() {
  static const auto result = files::read_ageing_catalogue();
  return result.value();
}

inline const ageing::Law& law(std::string_view id) {
  for (const ageing::Opinions& opinions : ageing_catalogue().opinions) {
    for (const ageing::Opinion& opinion : opinions.opinions) {
      if (opinion.id == id) return *opinion.law;
    }
  }
  throw std::out_of_range(std::string(id));
}

inline constexpr double kYear_days = 365.0;

/// Share lost at rest.
inline double rest_loss(std::string_view id, double temperature_C, double soc, double days) {
  return 1.0 - ageing::stored(law(id), temperature_C, soc, days).capacity();
}

/// Closed swings of one depth at one rate both ways, without time passing.
inline ageing::Aged swung(std::string_view id, double depth, double mean_soc, double rate_per_h,
                          double temperature_C, double full_cycles) {
  ageing::Exposure exposure;
  exposure.swings.push_back({depth, mean_soc, 1.0, rate_per_h, rate_per_h, temperature_C});
  ageing::Aged aged;
  law(id).age(aged, exposure, full_cycles / depth);
  return aged;
}

}  // namespace voltwright::published
