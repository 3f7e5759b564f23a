#include "engine/ageing/storage_error.h"

#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

constexpr double kPercent = 100.0;

double lost_percent(const Aged& aged) { return kPercent * (1.0 - aged.capacity()); }

}  // namespace

Aged stored(const Law& law, double temperature_C, double soc, double days) {
  Exposure exposure;
  exposure.hours = days * kHoursPerDay;
  exposure.dwell.push_back({temperature_C, soc, exposure.hours});
  Aged aged;
  law.age(aged, exposure, 1.0);
  return aged;
}

StorageError storage_error(const Law& law, const StorageTable& table, double coldest_C, double hottest_C) {
  StorageError error;
  double sum = 0.0, squares = 0.0;
  for (const StorageCondition& condition : table) {
    if (condition.temperature_C < coldest_C || condition.temperature_C > hottest_C) continue;
    for (const base::CurvePoint& point : condition.loss_percent_by_day) {
      const double apart =
          lost_percent(stored(law, condition.temperature_C, condition.soc, point.x)) - point.y;
      sum += apart;
      squares += apart * apart;
      if (std::fabs(apart) > std::fabs(error.worst_points)) error.worst_points = apart;
      ++error.check_ups;
    }
  }
  if (error.check_ups == 0) return error;
  error.bias_points = sum / error.check_ups;
  error.rms_points = std::sqrt(squares / error.check_ups);
  return error;
}

double over_measured(const Law& law, const StorageTable& table, double temperature_C, double soc,
                     double days) {
  for (const StorageCondition& condition : table) {
    if (condition.temperature_C != temperature_C || condition.soc != soc) continue;
    for (const base::CurvePoint& point : condition.loss_percent_by_day) {
      if (point.x == days && point.y > 0.0)
        return lost_percent(stored(law, temperature_C, soc, days)) / point.y;
    }
  }
  return 0.0;
}

}  // namespace voltwright::ageing
