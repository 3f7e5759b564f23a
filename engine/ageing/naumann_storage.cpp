#include "engine/ageing/naumann_storage.h"

#include <algorithm>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

double NaumannStorage::rate_per_root_s(double temperature_C, double soc) const {
  const double off_middle = soc - 0.5;
  const double by_charge = constants_.cubic * off_middle * off_middle * off_middle + constants_.middle;
  return std::max(0.0, constants_.rate_per_root_s *
                           arrhenius(constants_.activation_J_per_mol, temperature_C) * by_charge);
}

void NaumannStorage::wear(Aged& aged, const Exposure& exposure, double times) const {
  double progress = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double rate = rate_per_root_s(dwell.temperature_C, dwell.soc);
    progress += rate * rate * dwell.hours * kSecondsPerHour;
  }
  aged.calendar_loss = stepped(aged.calendar_loss, 0.5, progress * times);
}

void NaumannResistance::wear(Aged& aged, const Exposure& exposure, double times) const {
  double growth = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double off_middle = dwell.soc - 0.5;
    const double by_charge = std::max(0.0, constants_.square * off_middle * off_middle + constants_.peak);
    growth += constants_.rate_per_s * arrhenius(constants_.activation_J_per_mol, dwell.temperature_C) *
              by_charge * dwell.hours * kSecondsPerHour;
  }
  aged.resistance_growth += growth * times;
}

}  // namespace voltwright::ageing
