#pragma once
// Degrees and radians, and float approximations of inverse and circular functions that vectorise.
#include <algorithm>
#include <cmath>
#include <numbers>

namespace voltwright::sky {

constexpr double radians(double degrees) { return degrees * (std::numbers::pi / 180.0); }
constexpr double degrees(double radians) { return radians * (180.0 / std::numbers::pi); }

/// Arc cosine in rad of x in [0, 1] (values outside are clamped), absolute error below 5e-7:
/// polynomial 4.4.46 of Abramowitz and Stegun 1964, whose own error is 2e-8, evaluated in single precision.
inline float fast_acos(float x) {
  const float c = std::clamp(x, 0.0F, 1.0F);
  float p = -0.0012624911F;
  p = p * c + 0.0066700901F;
  p = p * c - 0.0170881256F;
  p = p * c + 0.0308918810F;
  p = p * c - 0.0501743046F;
  p = p * c + 0.0889789874F;
  p = p * c - 0.2145988016F;
  p = p * c + 1.5707963050F;
  return p * std::sqrt(1.0F - c);
}

/// Angle in rad, in [-pi, pi], of the point (x, y), absolute error below 5e-7: polynomial 4.4.49 of
/// Abramowitz and Stegun 1964, whose own error is 2e-8, evaluated in single precision. The origin gives 0.
inline float fast_atan2(float y, float x) {
  const float ax = std::abs(x);
  const float ay = std::abs(y);
  const float t = std::min(ax, ay) / std::max(std::max(ax, ay), 1e-30F);
  const float s = t * t;
  float p = 0.0028662257F;
  p = p * s - 0.0161657367F;
  p = p * s + 0.0429096138F;
  p = p * s - 0.0752896400F;
  p = p * s + 0.1065626393F;
  p = p * s - 0.1420889944F;
  p = p * s + 0.1999355085F;
  p = p * s - 0.3333314528F;
  p = (p * s + 1.0F) * t;
  constexpr float kPi = std::numbers::pi_v<float>;
  p = ay > ax ? 0.5F * kPi - p : p;
  p = x < 0.0F ? kPi - p : p;
  return y < 0.0F ? -p : p;
}

/// Cosine of an angle in rad in [-4 pi, 4 pi], absolute error below 2e-6: folded into a quarter turn, then
/// the Taylor series of the sine to the 11th power.
inline float fast_cos(float angle_rad) {
  constexpr float kPi = std::numbers::pi_v<float>;
  float a = std::abs(angle_rad);
  a = a > 2.0F * kPi ? a - 2.0F * kPi : a;
  a = a > kPi ? 2.0F * kPi - a : a;
  const float q = 0.5F * kPi - a;
  const float s = q * q;
  float p = -2.5052108e-8F;
  p = p * s + 2.7557319e-6F;
  p = p * s - 1.9841270e-4F;
  p = p * s + 8.3333333e-3F;
  p = p * s - 1.6666667e-1F;
  return q + q * s * p;
}

}  // namespace voltwright::sky
