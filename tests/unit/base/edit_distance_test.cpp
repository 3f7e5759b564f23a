#include "engine/base/edit_distance.h"

#include <gtest/gtest.h>

#include <string>

namespace voltwright::base {
namespace {

TEST(EditDistance, KnownPairs) {
  EXPECT_EQ(edit_distance("", ""), 0);
  EXPECT_EQ(edit_distance("solar", "solar"), 0);
  EXPECT_EQ(edit_distance("solar", ""), 5);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3);  // the usual example of the literature
  EXPECT_EQ(edit_distance("tilt", "titl"), 1);       // neighbours swapped
  EXPECT_EQ(edit_distance("azimuth", "azimut"), 1);
}

TEST(EditDistance, IsSymmetricAndBounded) {
  const std::string words[] = {"battery", "bank", "season", "journey", ""};
  for (const auto& a : words) {
    for (const auto& b : words) {
      EXPECT_EQ(edit_distance(a, b), edit_distance(b, a));
      EXPECT_LE(edit_distance(a, b), static_cast<int>(std::max(a.size(), b.size())));
    }
  }
}

TEST(EditDistance, OnlySixtyFourBytesCount) {
  const std::string longer(1000, 'x');
  EXPECT_EQ(edit_distance(longer, longer + "abc"), 0);
  EXPECT_EQ(edit_distance(longer, ""), 64);
}

}  // namespace
}  // namespace voltwright::base
