#include "engine/ageing/refused.h"

#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

double polynomial_at(const RatePolynomial& polynomial, double temperature_C) {
  const double temperature_K = temperature_C + kFreezing_K;
  return (polynomial.square * temperature_K + polynomial.slope) * temperature_K + polynomial.base;
}

std::optional<GainingSpan> gaining_span(const RatePolynomial& polynomial) {
  const double inside = polynomial.slope * polynomial.slope - 4.0 * polynomial.square * polynomial.base;
  if (!(inside > 0.0)) return std::nullopt;
  const double apart = std::sqrt(inside);
  const double twice = 2.0 * polynomial.square;
  return GainingSpan{(-polynomial.slope - apart) / twice - kFreezing_K,
                     (-polynomial.slope + apart) / twice - kFreezing_K};
}

}  // namespace voltwright::ageing
