#include "files/json_reader.h"

#include <gtest/gtest.h>

namespace voltwright::files {
namespace {

base::Problems problems_of(const std::string& text, void (*read)(JsonReader&)) {
  base::Problems problems;
  const auto value = parse_json(text, "x.json", problems);
  if (value) {
    JsonReader reader(*value, "x.json", problems);
    read(reader);
  }
  return problems;
}

TEST(JsonReader, SyntaxErrorHasLineAndColumn) {
  base::Problems problems;
  EXPECT_FALSE(parse_json("{\n  \"a\": 1,\n  oops\n}", "x.json", problems));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].where.line, 3);
  EXPECT_GE(problems[0].where.column, 3);
}

TEST(JsonText, RefusesANumberBeyondAll) {
  base::Problems problems;
  EXPECT_FALSE(parse_json(R"({"a": 151e509})", "x.json", problems));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems.front().what.find("too large"), std::string::npos);
}

TEST(JsonReader, KeyThatStandsTwiceIsRefused) {
  base::Problems problems;
  EXPECT_FALSE(parse_json(R"({"a": {"b": 1, "b": 2}})", "x.json", problems));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].field, "b");
}

TEST(JsonReader, SameKeyInTwoObjectsIsFine) {
  base::Problems problems;
  EXPECT_TRUE(parse_json(R"({"a": {"b": 1}, "c": {"b": 2}})", "x.json", problems));
  EXPECT_TRUE(problems.empty());
}

TEST(JsonReader, DeepNestingIsAProblemAndNotACrash) {
  constexpr std::size_t kDepth = 200000;
  const std::string text = R"({"id": )" + std::string(kDepth, '[') + std::string(kDepth, ']') + "}";
  const auto problems = problems_of(text, [](JsonReader& reader) { reader.text("id"); });
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems[0].what.find("deeply"), std::string::npos);
  EXPECT_EQ(problems_of(std::string(kDepth, '['), [](JsonReader&) {}).size(), 1U);
}

TEST(JsonReader, EveryProblemIsNotedWithItsPath) {
  const auto problems = problems_of(
      R"({"part": {"a": "1", "b": 7, "r": {"min": 3, "typical": 2, "max": 4}}})", [](JsonReader& reader) {
        JsonReader part = reader.object("part");
        part.number("a", 0, 1);
        part.number("b", 0, 1);
        part.range("r", 0, 10);
        part.text("missing");
      });
  ASSERT_EQ(problems.size(), 4U);
  EXPECT_EQ(problems[0].field, "part.a");
  EXPECT_EQ(problems[1].field, "part.b");
  EXPECT_EQ(problems[1].given, "7");
  EXPECT_EQ(problems[2].field, "part.r");
  EXPECT_EQ(problems[3].field, "part.missing");
}

TEST(JsonReader, MissingObjectIsNotedOnce) {
  const auto problems = problems_of("{}", [](JsonReader& reader) {
    JsonReader part = reader.object("part");
    part.number("a", 0, 1);
    part.curve("b", 0, 1, 0, 1);
    part.range("c", 0, 1);
  });
  EXPECT_EQ(problems.size(), 1U);
}

TEST(JsonReader, CurvesMustRiseAndHavePairs) {
  const auto read = [](JsonReader& reader) { reader.curve("c", 0, 1, 0, 5); };
  EXPECT_EQ(problems_of(R"({"c": [[0, 1], [0, 2]]})", read).size(), 1U);
  EXPECT_EQ(problems_of(R"({"c": [[0, 1]]})", read).size(), 1U);
  EXPECT_EQ(problems_of(R"({"c": [[0, 1], [0.5]]})", read).size(), 1U);
  EXPECT_EQ(problems_of(R"({"c": [[0, 1], [2, 2]]})", read).size(), 1U);
  EXPECT_TRUE(problems_of(R"({"c": [[0, 1], [1, 2]]})", read).empty());
}

TEST(JsonReader, WholeNumbersAndWords) {
  static constexpr std::pair<std::string_view, int> kWords[] = {{"one", 1}, {"two", 2}};
  base::Problems problems;
  const auto value = parse_json(R"({"n": 2.5, "w": "three", "v": "two"})", "x.json", problems);
  ASSERT_TRUE(value);
  JsonReader reader(*value, "x.json", problems);
  reader.whole("n", 0, 10);
  reader.choice("w", kWords);
  EXPECT_EQ(reader.choice("v", kWords), 2);
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[1].limit, "one, two");
}

TEST(JsonReader, TopLevelMustBeAnObject) {
  const auto problems = problems_of("[1, 2]", [](JsonReader& reader) { reader.number("a", 0, 1); });
  EXPECT_EQ(problems.size(), 1U);
}

}  // namespace
}  // namespace voltwright::files
