#include "engine/cell/two_tank.h"

#include <cmath>
#include <cstddef>

namespace voltwright::cell {

namespace {

/// The two functions of x = k t of which every closed form is made: what has decayed, 1 - exp(-x), and what
/// has run on, x - 1 + exp(-x). Both are written so that nothing cancels for small x.
struct Course {
  double decayed;
  double run_on;
};

Course course_of(double x) {
  constexpr double kSmall = 1e-2;
  const double decayed = -std::expm1(-x);
  // The series x^2/2 - x^3/6 + x^4/24 - x^5/120 is exact to 1e-12 of itself there.
  const double series = x * x * (0.5 - x * (1.0 / 6.0 - x * (1.0 / 24.0 - x * (1.0 / 120.0 - x / 720.0))));
  return {decayed, x < kSmall ? series : x - decayed};
}

/// Current that brings the available tank from `content` to `target` in `hours`.
double current_to(const Availability& tanks, const TankContent& content, double target, double hours) {
  const double k = tanks.exchange_per_h;
  const double c = tanks.fraction;
  const Course course = course_of(k * hours);
  const double left =
      content.available * (1.0 - course.decayed) + (content.available + content.bound) * c * course.decayed;
  return k * (left - target) / (course.decayed + c * course.run_on);
}

base::Problem no_fit(const char* what) {
  base::Problem problem;
  problem.what = what;
  problem.remedy = "Give three capacities of one battery at one end voltage, longest time last.";
  return problem;
}

/// T / q is a decayed(k T) + b run_on(k T) with a = 1 / (k c q_max) and b = 1 / (k q_max): two lines
/// determine a and b for a given k, and the third line is met where this determinant is nought.
struct Lines {
  std::array<double, 3> hours{};
  std::array<double, 3> hours_per_share{};

  double determinant(double k) const {
    std::array<Course, 3> at{};
    for (std::size_t i = 0; i < 3; ++i) at[i] = course_of(k * hours[i]);
    const auto minor = [&](std::size_t i, std::size_t j) {
      return at[i].decayed * at[j].run_on - at[j].decayed * at[i].run_on;
    };
    const auto& y = hours_per_share;
    return y[0] * minor(1, 2) - y[1] * minor(0, 2) + y[2] * minor(0, 1);
  }

  Availability constants(double k) const {
    const Course first = course_of(k * hours[0]);
    const Course last = course_of(k * hours[2]);
    const double whole = first.decayed * last.run_on - last.decayed * first.run_on;
    const double a = (hours_per_share[0] * last.run_on - hours_per_share[2] * first.run_on) / whole;
    const double b = (first.decayed * hours_per_share[2] - last.decayed * hours_per_share[0]) / whole;
    return {b / a, k, 1.0 / (b * k)};
  }
};

/// Halves a bracket [low, high] of a root of f by geometric means until it is down to rounding.
template <class F>
double root_between(double low, double high, F f) {
  constexpr int kHalvings = 200;
  const bool starts_below = f(low) < 0.0;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = std::sqrt(low * high);
    if (middle <= low || middle >= high) break;
    if ((f(middle) < 0.0) == starts_below) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return std::sqrt(low * high);
}

}  // namespace

TankContent full_tanks(const Availability& tanks) {
  return {tanks.fraction * tanks.full_over_rated, (1.0 - tanks.fraction) * tanks.full_over_rated};
}

double capacity_in_hours(const Availability& tanks, double hours) {
  const double x = tanks.exchange_per_h * hours;
  const Course course = course_of(x);
  return tanks.full_over_rated * tanks.fraction * x / (course.decayed + tanks.fraction * course.run_on);
}

double hours_at(const Availability& tanks, double current_per_h) {
  // The capacity lies between its limits, and what is drawn rises faster with time than the capacity does.
  const double longest = tanks.full_over_rated / current_per_h;
  const double shortest = tanks.fraction * longest;
  if (shortest >= longest) return longest;
  return root_between(shortest, longest,
                      [&](double hours) { return current_per_h * hours - capacity_in_hours(tanks, hours); });
}

double largest_discharge(const Availability& tanks, const TankContent& content, double hours) {
  return current_to(tanks, content, 0.0, hours);
}

double largest_charge(const Availability& tanks, const TankContent& content, double hours) {
  return std::fmin(current_to(tanks, content, full_tanks(tanks).available, hours), 0.0);
}

double exchange_from_conductance(double fraction, double conductance_per_h) {
  return conductance_per_h / (fraction * (1.0 - fraction));
}

base::Result<Availability> fit_two_tanks(const std::array<RatedCapacity, 3>& capacities, double rated_Ah) {
  if (!(capacities[0].hours > 0.0 && capacities[0].capacity_Ah > 0.0 && rated_Ah > 0.0)) {
    return no_fit("A time or a capacity is not above 0.");
  }
  Lines lines;
  for (std::size_t i = 0; i < 3; ++i) {
    lines.hours[i] = capacities[i].hours;
    lines.hours_per_share[i] = capacities[i].hours / (capacities[i].capacity_Ah / rated_Ah);
    if (i == 0) continue;
    const bool in_order = capacities[i].hours > capacities[i - 1].hours &&
                          capacities[i].capacity_Ah > capacities[i - 1].capacity_Ah &&
                          lines.hours_per_share[i] > lines.hours_per_share[i - 1];
    if (!in_order) return no_fit("With more time the capacity must rise, and the current fall.");
  }
  // Beyond these ends the three rows would lie on the limits of the model, where k no longer shows.
  const double slowest = 1e-3 / lines.hours[2];
  const double fastest = 1e2 / lines.hours[0];
  constexpr int kParts = 400;
  const double ratio = std::pow(fastest / slowest, 1.0 / kParts);
  double low = slowest;
  for (int i = 0; i < kParts; ++i) {
    const double high = low * ratio;
    if ((lines.determinant(low) < 0.0) != (lines.determinant(high) < 0.0)) {
      const double k = root_between(low, high, [&](double at) { return lines.determinant(at); });
      const Availability found = lines.constants(k);
      if (found.fraction > 0.0 && found.fraction < 1.0 && found.full_over_rated > 0.0) return found;
    }
    low = high;
  }
  return no_fit("No two tanks give these three capacities.");
}

}  // namespace voltwright::cell
