#include "files/suggest.h"

#include <gtest/gtest.h>

#include "engine/base/edit_distance.h"

namespace voltwright::files {
namespace {

TEST(EditDistance, CountsSwapsAsOne) {
  // Worked by hand after the definition of optimal string alignment.
  EXPECT_EQ(base::edit_distance("kitten", "sitting"), 3);
  EXPECT_EQ(base::edit_distance("power", "pwoer"), 1);
  EXPECT_EQ(base::edit_distance("", "abc"), 3);
  EXPECT_EQ(base::edit_distance("ca", "abc"), 3);
}

TEST(Suggest, FindsTheNearestWord) {
  const std::vector<std::string> known = {"power", "standby", "surge", "surge_time"};
  EXPECT_EQ(nearest_word("powr", known), "power");
  EXPECT_EQ(nearest_word("Surge-Time", known), "surge_time");
  EXPECT_EQ(nearest_word("stand_by", known), "standby");
  EXPECT_EQ(nearest_word("xyz", known), "");
  EXPECT_EQ(nearest_word("", known), "");
  EXPECT_EQ(nearest_word(std::string(100000, 'a'), known), "");
}

}  // namespace
}  // namespace voltwright::files
