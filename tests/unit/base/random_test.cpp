#include "engine/base/random.h"

#include <gtest/gtest.h>

#include <set>

namespace voltwright::base {
namespace {

// SplitMix64, first outputs of the reference generator started at 0 (Steele, Lea and Flood 2014; values from memory).
TEST(RandomStream, MixesLikeTheReference) {
  EXPECT_EQ(mix_bits(0), 0xe220a8397b1dcdafULL);
  EXPECT_EQ(mix_bits(0x9e3779b97f4a7c15ULL), 0x6e789e6aa1b965f4ULL);
}

TEST(RandomStream, DependsOnItsKeyAlone) {
  RandomStream a(1, 2, 3, 4);
  RandomStream b(1, 2, 3, 4);
  for (int i = 0; i < 100; ++i) EXPECT_EQ(a.next_bits(), b.next_bits());
  std::set<std::uint64_t> firsts;
  for (std::uint64_t k = 0; k < 1000; ++k) {
    firsts.insert(RandomStream(k).next_bits());
    firsts.insert(RandomStream(0, k + 1).next_bits());
    firsts.insert(RandomStream(0, 0, k + 1).next_bits());
    firsts.insert(RandomStream(0, 0, 0, k + 1).next_bits());
  }
  EXPECT_EQ(firsts.size(), 4000U);
}

// Means and spreads of 200,000 numbers; five standard errors.
TEST(RandomStream, UniformAndNormal) {
  constexpr int kCount = 200000;
  RandomStream random(42);
  double sum = 0.0, squares = 0.0;
  for (int i = 0; i < kCount; ++i) {
    const double u = random.uniform();
    ASSERT_GE(u, 0.0);
    ASSERT_LT(u, 1.0);
    sum += u;
    squares += u * u;
  }
  EXPECT_NEAR(sum / kCount, 0.5, 5.0 * 0.2887 / std::sqrt(kCount));
  EXPECT_NEAR(squares / kCount, 1.0 / 3.0, 5.0 * 0.2981 / std::sqrt(kCount));
  sum = squares = 0.0;
  for (int i = 0; i < kCount; ++i) {
    const double x = random.normal();
    sum += x;
    squares += x * x;
  }
  EXPECT_NEAR(sum / kCount, 0.0, 5.0 / std::sqrt(kCount));
  EXPECT_NEAR(squares / kCount, 1.0, 5.0 * 1.4142 / std::sqrt(kCount));
}

}  // namespace
}  // namespace voltwright::base
