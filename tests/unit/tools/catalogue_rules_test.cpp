#include "tools/catalogue_rules.h"

#include <gtest/gtest.h>

namespace voltwright::tools {
namespace {

std::string problems_of(const std::string& inside) {
  std::string text;
  for (const auto& problem : check_record(R"({"format": 1, "id": "x", )" + inside + "}", "x.json", "x")) {
    text += base::to_text(problem) + '\n';
  }
  return text;
}

TEST(CatalogueRules, GoodRecordPasses) {
  EXPECT_EQ(problems_of(R"("mass": {"mass_kg": {"min": 1, "typical": 2, "max": 3}, "source": "bib:a"})"), "");
  EXPECT_EQ(problems_of(R"("c": {"ocv_V_by_soc": [[0, 1], [1, 2]], "derived_from": "a fit"})"), "");
  EXPECT_EQ(problems_of(R"("size": {"diameter_mm": 18, "height_mm": 65, "source": "bib:a"})"), "");
  EXPECT_EQ(problems_of(R"("evidence": {"sources_n": 3})"), "");
  EXPECT_EQ(problems_of(R"("c": {"a_V": 3, "source": ["bib:a", "common practice, no source"]})"), "");
}

TEST(CatalogueRules, IdMustBeTheFileName) {
  EXPECT_FALSE(check_record(R"({"id": "y"})", "x.json", "x").empty());
  EXPECT_FALSE(check_record(R"({})", "x.json", "x").empty());
}

TEST(CatalogueRules, UnitIsAsked) {
  EXPECT_NE(
      problems_of(R"("c": {"mass": 3, "source": "bib:a"})").find("c.mass: This numeric key has no unit"),
      std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"ocv_by_soc": [[0, 1], [1, 2]], "source": "bib:a"})").find("no unit"),
            std::string::npos);
}

TEST(CatalogueRules, OriginIsAskedOnce) {
  EXPECT_NE(problems_of(R"("c": {"a_V": 3})").find("c: These numbers do not say"), std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V": 3, "source": "bib:a", "assumption": "b"})").find("say twice"),
            std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V": 3, "assumption": " "})").find("empty"), std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V": 3, "source": "somewhere"})").find("names no key"), std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V": 3, "source": []})").find("must be a text"), std::string::npos);
  EXPECT_NE(problems_of(R"("f": {"p": [{"a_V": 3}]})").find("f.p[0]"), std::string::npos);
}

TEST(CatalogueRules, RangesAndCurvesAreInOrder) {
  EXPECT_NE(
      problems_of(R"("c": {"a_V": {"min": 3, "typical": 2, "max": 4}, "source": "bib:a"})").find("order"),
      std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V_by_soc": [[0, 1], [0, 2]], "source": "bib:a"})").find("must rise"),
            std::string::npos);
  EXPECT_NE(problems_of(R"("c": {"a_V": [1, 2, 3], "source": "bib:a"})").find("neither"), std::string::npos);
}

TEST(CatalogueRules, BibliographyKeys) {
  base::Problems problems;
  const auto keys =
      bib_keys("@comment{Sources.}\n@misc{a2001,\n}\n@article{b,\n}\n@misc{b,\n}", "r.bib", problems);
  EXPECT_EQ(keys, (std::set<std::string>{"a2001", "b"}));
  EXPECT_EQ(problems.size(), 1U);
}

TEST(CatalogueRules, CitationsOfPages) {
  const std::set<std::string> known = {"bpx"};
  EXPECT_EQ(cited_in_page("as in [naumann2018; bpx], not [V] nor [link2020](x.md) nor [0, 1]", known),
            (std::set<std::string>{"naumann2018", "bpx"}));
}

TEST(CatalogueRules, CitationsMustResolveAndBeUsed) {
  EXPECT_TRUE(check_citations({"a"}, {{"a", "x.json"}}, "r.bib").empty());
  EXPECT_EQ(check_citations({"a"}, {{"b", "x.json"}}, "r.bib").size(), 2U);
}

}  // namespace
}  // namespace voltwright::tools
