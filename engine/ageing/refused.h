#pragma once
// A published law that cannot be used with the constants printed for it.
#include <optional>

namespace voltwright::ageing {

/// loss per Ah = (square T^2 + slope T + base) exp((by_K T + constant) C): the cycling term of Wang et al.
/// 2014, T in kelvin.
struct RatePolynomial {
  double square = 0.0;
  double slope = 0.0;
  double base = 0.0;
};

double polynomial_at(const RatePolynomial& polynomial, double temperature_C);

/// Temperatures between which cycling would add capacity.
struct GainingSpan {
  double from_C = 0.0;
  double to_C = 0.0;
};

/// Where the polynomial is below 0; nothing if it never is. Precondition: it opens upwards (square > 0).
std::optional<GainingSpan> gaining_span(const RatePolynomial& polynomial);

}  // namespace voltwright::ageing
