#pragma once
// Days of a lead-acid bank made up for tests: down in the evening, up by day, at plausible cell voltages.
#include "engine/ageing/exposure_recorder.h"
#include "engine/ageing/plate_recorder.h"
#include "files/catalogue.h"

namespace voltwright::ageing {

inline const cell::Chemistry& lead(const char* id) {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return *kCatalogue.chemistry(id);
}

struct Day {
  double depth = 0.3;
  double discharge_per_h = 0.05;
  double charge_per_h = 0.1;
  double end_soc = 1.0;  // at which charging ends
  double temperature_C = 25.0;
};

/// Feeds whole days of minutes to both recorders.
class PlateDays {
 public:
  explicit PlateDays(const cell::Chemistry& chemistry)
      : plates_(*chemistry.plate_wear, chemistry.ocv_V, 100.0) {}

  void days(int count, const Day& day) {
    for (int i = 0; i < count; ++i) {
      double hours = move(day, day.end_soc - day.depth, day.discharge_per_h, 2.03);
      hours += move(day, day.end_soc, -day.charge_per_h, 2.35);
      const double float_V = day.end_soc >= 1.0 ? 2.25 : 2.12;
      while (hours < 24.0) hours += step(day, soc_, 0.0, float_V);
    }
  }

  Exposure exposure() const {
    Exposure all = recorder_.exposure();
    all.plates = plates_.use();
    return all;
  }

 private:
  double step(const Day& day, double soc, double per_h, double cell_V) {
    constexpr double kStep_h = 1.0 / 60.0;
    soc_ = soc;
    recorder_.add(soc, day.temperature_C, kStep_h);
    plates_.add({soc, day.temperature_C, cell_V, per_h, kStep_h});
    return kStep_h;
  }

  double move(const Day& day, double to, double per_h, double cell_V) {
    double hours = 0.0;
    const double change = -per_h / 60.0;
    while ((to - soc_) * change > 1e-12) {
      const double next = soc_ + change;
      const bool beyond = (to - next) * change < 0.0;
      hours += step(day, beyond ? to : next, per_h, cell_V);
    }
    return hours;
  }

  ExposureRecorder recorder_;
  PlateRecorder plates_;
  double soc_ = 1.0;
};

}  // namespace voltwright::ageing
