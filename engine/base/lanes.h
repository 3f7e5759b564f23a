#pragma once
// One step function serves a single bank (double) and many banks side by side (SIMD lanes). This header holds
// the few operations that differ: choosing by a mask, testing a mask, and looking values up in tables.
#include <array>
#include <cmath>
#include <cstddef>
#include <experimental/simd>

namespace voltwright::base {

namespace simd = std::experimental;

template <class R>
struct Lanes;

template <>
struct Lanes<double> {
  using Mask = bool;
  static constexpr std::size_t kCount = 1;
  template <class T>
  using PerLane = T;

  static double select(bool mask, double yes, double no) { return mask ? yes : no; }
  static bool any(bool mask) { return mask; }
  /// f(0): the value of the only lane.
  template <class F>
  static double generate(F f) {
    return f(std::size_t{0});
  }
  template <class T>
  static const T& lane(const T& value, std::size_t) {
    return value;
  }
  static double lane_value(double value, std::size_t) { return value; }
  /// Whole part of a number that is not negative.
  static double whole(double value) { return static_cast<double>(static_cast<long>(value)); }
};

template <class Abi>
struct Lanes<simd::simd<double, Abi>> {
  using R = simd::simd<double, Abi>;
  using Mask = typename R::mask_type;
  static constexpr std::size_t kCount = R::size();
  template <class T>
  using PerLane = std::array<T, kCount>;

  static R select(const Mask& mask, const R& yes, const R& no) {
    R result = no;
    simd::where(mask, result) = yes;
    return result;
  }
  static bool any(const Mask& mask) { return simd::any_of(mask); }
  template <class F>
  static R generate(F f) {
    return R([&](auto i) { return f(static_cast<std::size_t>(i)); });
  }
  template <class T>
  static const T& lane(const std::array<T, kCount>& values, std::size_t i) {
    return values[i];
  }
  static double lane_value(const R& value, std::size_t i) { return value[i]; }
  static R whole(const R& value) { return simd::floor(value); }
};

template <class R>
R min_of(const R& a, const R& b) {
  return Lanes<R>::select(b < a, b, a);
}
template <class R>
R max_of(const R& a, const R& b) {
  return Lanes<R>::select(a < b, b, a);
}
template <class R>
R clamp_of(const R& x, const R& low, const R& high) {
  return max_of(low, min_of(x, high));
}

}  // namespace voltwright::base
