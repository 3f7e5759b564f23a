#include "engine/advise/ageing_course.h"

#include <algorithm>

namespace voltwright::advise {

std::vector<CoursePoint> ageing_course(const ageing::Law& law, const UseAt& use, double floor,
                                       double most_years) {
  constexpr double kStep_years = 0.25;
  constexpr double kShortest_years = kStep_years / 64.0;
  constexpr double kMostLost = 0.01;
  std::vector<CoursePoint> course(1);
  double step_years = kStep_years;
  while (course.back().aged.capacity() > floor && course.back().years < most_years) {
    const CoursePoint& now = course.back();
    const ageing::YearOfUse year = use(now.aged.capacity(), now.years);
    CoursePoint next;
    for (;;) {
      const double years = std::min(step_years, most_years - now.years);
      next.aged = now.aged;
      ageing::age_by_years(law, next.aged, year, years);
      next.years = now.years + years;
      const double lost = now.aged.capacity() - next.aged.capacity();
      if (lost <= kMostLost || step_years <= kShortest_years) break;
      step_years *= 0.5;
    }
    // Laws are steep when new: try longer steps again.
    step_years = std::min(kStep_years, 2.0 * step_years);
    course.push_back(next);
  }
  return course;
}

double years_at(const std::vector<CoursePoint>& course, double share) {
  for (std::size_t i = 0; i < course.size(); ++i) {
    const double after = course[i].aged.capacity();
    if (after > share) continue;
    if (i == 0) return course[0].years;
    const double before = course[i - 1].aged.capacity();
    const double way = (before - share) / (before - after);
    return course[i - 1].years + way * (course[i].years - course[i - 1].years);
  }
  return course.back().years;
}

}  // namespace voltwright::advise
