#pragma once
// Where a continuous function of one variable is nought.
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

namespace voltwright::oracle {

/// Zero of f between two places where it has opposite signs, to the last bits: secants kept in a bracket,
/// halving where they do not at least halve (after Dekker). Each secant steps a hair too far, so that the
/// bracket closes from both sides.
template <class F>
double zero_of(F f, double a, double b) {
  constexpr int kMostIterations = 200;
  double f_a = f(a);
  double f_b = f(b);
  if (f_a == 0.0) return a;
  if (f_b == 0.0) return b;
  if ((f_a > 0.0) == (f_b > 0.0)) throw std::runtime_error("no zero between the bounds");
  double width = std::fabs(b - a);
  for (int i = 0; i < kMostIterations; ++i) {
    if (std::fabs(f_a) < std::fabs(f_b)) {  // b is the better end
      std::swap(a, b);
      std::swap(f_a, f_b);
    }
    const double hair = 2.0 * std::numeric_limits<double>::epsilon() * std::fabs(b);
    const double middle = 0.5 * (b + a);
    if (std::fabs(a - b) <= 2.0 * hair) return b;
    double x = b - f_b * (b - a) / (f_b - f_a);
    x += std::copysign(hair, a - b);
    const bool halve = i % 4 == 3 && std::fabs(a - b) > 0.25 * width;
    if (halve || (x - b) * (x - a) >= 0.0) x = middle;
    if (i % 4 == 3) width = std::fabs(a - b);
    const double f_x = f(x);
    if (f_x == 0.0) return x;
    if ((f_x > 0.0) == (f_b > 0.0)) {
      b = x;
      f_b = f_x;
    } else {
      a = x;
      f_a = f_x;
    }
  }
  return b;
}

}  // namespace voltwright::oracle
