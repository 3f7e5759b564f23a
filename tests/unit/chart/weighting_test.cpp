#include "engine/chart/weighting.h"

#include <gtest/gtest.h>

namespace voltwright::chart {
namespace {

std::string problems_of(std::string_view text) {
  const auto read = parse_weighting(text);
  std::string all;
  if (read) return all;
  for (const base::Problem& problem : read.problems()) all += base::to_text(problem) + "\n";
  return all;
}

TEST(Weighting, ReadsAndShowsTheSame) {
  const auto read = parse_weighting(" energy = 3 , price=1.5,cold=0");
  ASSERT_TRUE(read);
  EXPECT_EQ(to_text(read.value()), "energy 3, price 1.5");
}

TEST(Weighting, TellsEveryFault) {
  const std::string all = problems_of("enrgy=3,price,life=x,cold=-1,safety=101,power=1,power=2");
  EXPECT_NE(all.find("\"energy\""), std::string::npos) << all;
  EXPECT_NE(all.find("energy=3"), std::string::npos) << all;
  EXPECT_NE(all.find("Given: x."), std::string::npos) << all;
  EXPECT_NE(all.find("Given: -1."), std::string::npos) << all;
  EXPECT_NE(all.find("Given: 101."), std::string::npos) << all;
  EXPECT_NE(all.find("twice"), std::string::npos) << all;
}

TEST(Weighting, SomethingMustCount) {
  EXPECT_NE(problems_of("energy=0"), "");
  EXPECT_NE(problems_of(""), "");
  EXPECT_NE(problems_of(","), "");
  EXPECT_NE(problems_of("energy=nan"), "");
  EXPECT_NE(problems_of("energy=inf"), "");
  EXPECT_NE(problems_of("energy=1e400"), "");
}

TEST(Weighting, EvenWeighsEveryMatterOnce) {
  const Weighting even = even_weighting();
  EXPECT_EQ(even.weights.size(), kMatters.size());
  for (const Weight& weight : even.weights) EXPECT_EQ(weight.weight, 1.0);
}

}  // namespace
}  // namespace voltwright::chart
