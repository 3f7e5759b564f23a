#pragma once
// Counter-based random numbers: the n-th number of a stream depends on its key and n alone, so that results
// do not depend on the order of calls or the number of threads.
#include <cmath>
#include <cstdint>
#include <numbers>

namespace voltwright::base {

/// Finaliser of the SplitMix64 generator (Steele, Lea and Flood 2014): a bijection with good avalanche.
constexpr std::uint64_t mix_bits(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15ULL;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ULL;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebULL;
  return x ^ (x >> 31);
}

/// Stream of random numbers keyed by up to four integers, e.g. {seed, season, day, purpose}.
class RandomStream {
 public:
  explicit constexpr RandomStream(std::uint64_t a, std::uint64_t b = 0, std::uint64_t c = 0,
                                  std::uint64_t d = 0)
      : key_(mix_bits(mix_bits(mix_bits(mix_bits(a) ^ b) ^ c) ^ d)) {}

  constexpr std::uint64_t next_bits() { return mix_bits(key_ ^ mix_bits(++counter_)); }

  /// Uniform in [0, 1).
  double uniform() { return static_cast<double>(next_bits() >> 11) * 0x1.0p-53; }

  /// Standard normal by the Box-Muller transform (Box and Muller 1958); uses two uniforms a call.
  double normal() {
    const double u = 1.0 - uniform();
    const double v = uniform();
    return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * std::numbers::pi * v);
  }

 private:
  std::uint64_t key_;
  std::uint64_t counter_ = 0;
};

}  // namespace voltwright::base
