#pragma once
// Air temperature of made weather: day-to-day change and the daily course, minute by minute.
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/base/random.h"
#include "engine/sky/monthly_curve.h"
#include "engine/sky/weather.h"

namespace voltwright::sky {

/// Temperature of the solar days of a stay. Days are told one after another from the day before the stay to
/// the day after it, because mean and range run in straight lines from noon to noon.
class MadeAir {
 public:
  MadeAir(const Site& site, const MonthlyClimate& climate);

  /// Draws the next day's mean and range. `part_of_year` 0 to 1; `relative_clearness`: of the day over its
  /// month's mean, which widens the range on clear days.
  void add_day(double part_of_year, double relative_clearness, base::RandomStream random);

  /// Writes minutes `from` to `from + count` of a solar day (0 to 1440), degC. `record` 1 is the second day
  /// told; the days before and after it must have been told too.
  void write(std::size_t record, std::size_t from, std::size_t count, float* out) const;

 private:
  struct Day {
    double mean_C = 0.0;
    double range_K = 0.0;
  };

  double at(std::size_t record, std::size_t hour) const;

  Site site_;
  MonthlyCurve temperature_, range_;
  double departure_ = 0.0;         // of the last day from the season's course, in standard deviations
  std::array<double, 25> course_;  // at whole solar hours, in parts of the range
  std::vector<Day> days_;
};

}  // namespace voltwright::sky
