#pragma once
// How much larger a vented lead-acid battery must be for its temperature, in the manner of IEEE Std 485. See
// docs/method/temperature_factor.md.
#include <span>

#include "engine/base/curve.h"

namespace voltwright::cell {

/// A factor and whether the temperature lies within the table, -3.9 to 51.7 degC.
struct SizeFactor {
  double factor = 1.0;
  bool within = true;
};

/// Rows of table 1, size factor against degC, 1 at 25 degC (from memory; two published fits agree within 0.9
/// and 1.1 %).
std::span<const base::CurvePoint> size_factor_table();

/// Size factor, straight between the rows of the table. Colder than the table: the cubic fit, and at least
/// the first row; warmer: the last row, so that heat never makes a battery smaller than the standard allows.
/// Both are extrapolations and flagged.
SizeFactor size_factor(double temperature_C);

/// The same as a smooth form: one over the capacity share 0.711009126 + 0.0138667895 T - 0.0000933332591 T^2
/// that programs use for the table. Outside it the temperature is held at the end and flagged.
SizeFactor smooth_size_factor(double temperature_C);

/// Published cubic fit of the table, 1.405 - 2.4941 x + 4.1916 x^2 - 2.8117 x^3 with x = T / 100; -20 to 51.7
/// degC, below -3.9 an extrapolation.
double cubic_size_factor(double temperature_C);

}  // namespace voltwright::cell
