#pragma once
// Ageing that feeds back: the use of each year is that of the capacity that is left.
#include <functional>
#include <vector>

#include "engine/ageing/year_of_use.h"

namespace voltwright::advise {

/// The use of a year when so much of the capacity is left and so many years have passed.
using UseAt = std::function<ageing::YearOfUse(double capacity, double years)>;

/// A moment on the way.
struct CoursePoint {
  double years = 0.0;
  ageing::Aged aged;
};

/// From new until the capacity is down to `floor` or `most_years` have passed: steps of a quarter of a year,
/// shorter where more than 1 % of the capacity would go in one. The last point is the first at or below the
/// floor.
std::vector<CoursePoint> ageing_course(const ageing::Law& law, const UseAt& use, double floor,
                                       double most_years);

/// When the course is down to a share, along the straight line between its points; the last year if it never
/// is.
double years_at(const std::vector<CoursePoint>& course, double share);

}  // namespace voltwright::advise
