// Claims as page and slide: every claim stands there with number, range, source and verdict in words,
// whatever the sheet is called. The findings are invented; what is checked is the drawing, so no figure needs
// a source.
#include "files/report/claims_page.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "files/report/claim_lines.h"
#include "files/report/claim_scale.h"
#include "files/report/claims_slide.h"
#include "files/report/slide.h"
#include "tests/unit/files/report/markup_check.h"

namespace voltwright::files::report {
namespace {

using claims::Finding;
using claims::Findings;
using claims::Severity;

constexpr const char* kHostile = "\"><script>alert(1)</script> & <i>Co</i>";

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

Finding finding(const std::string& id, Severity severity, std::optional<double> number,
                std::optional<double> least, std::optional<double> most) {
  Finding f;
  f.id = id;
  f.severity = severity;
  f.claim = "Claim of " + id;
  f.number = number;
  f.unit = "Wh/kg";
  f.least = least;
  f.most = most;
  f.source = "source of " + id;
  f.working = "working of " + id;
  f.say = "Sentence for " + id + ".";
  return f;
}

/// One of each severity, an open end on either side, one without a number, a pair that belongs together.
Findings sample() {
  Findings all = {finding("possible.energy_per_mass", Severity::kContradiction, 208.0, std::nullopt, 190.0),
                  finding("possible.cold_charge", Severity::kDoubt, -20.0, 0.0, std::nullopt),
                  finding("complete.mass", Severity::kNote, std::nullopt, std::nullopt, std::nullopt),
                  finding("consistent.energy", Severity::kHolds, 1280.0, 1178.0, 1382.0),
                  finding("usual.energy_per_mass", Severity::kHolds, 208.0, 76.0, 145.0)};
  all[1].unit = "°C";
  all[3].unit = "Wh";
  all[3].claimed = 1300.0;
  return all;
}

ClaimsInput input_of(const Findings& findings, const std::string& name) {
  ClaimsInput input;
  input.sheets = {{name, "iron-phosphate", "Of 5 findings, 2 hold.", &findings}};
  input.cautions = {"A judgement is no test. Only a test is.", "One sentence alone."};
  input.works = {"[someKey] Somebody (2020): Something."};
  input.sheet_mark = "abcd1234";
  input.catalogue_mark = "efab5678";
  input.engine_version = "0.0.0";
  return input;
}

TEST(ClaimLines, TheWorseOfPossibleAndUsualSpeaksAndTheOtherStandsBeside) {
  const Findings findings = sample();
  const std::vector<ClaimLine> lines = claim_lines(findings);
  ASSERT_EQ(lines.size(), 4U);
  EXPECT_EQ(lines[0].finding->id, "possible.energy_per_mass");
  ASSERT_NE(lines[0].beside, nullptr);
  EXPECT_EQ(lines[0].usual(), lines[0].beside);
  Findings turned = findings;
  turned[0].severity = Severity::kHolds;
  turned[4].severity = Severity::kDoubt;
  const std::vector<ClaimLine> other = claim_lines(turned);
  EXPECT_EQ(other.back().finding->id, "usual.energy_per_mass");
  EXPECT_EQ(other.back().beside->id, "possible.energy_per_mass");
}

TEST(ClaimLines, TheFlagStandsWhereTheClaimIsNotWhereTheSumIs) {
  const Findings findings = sample();
  const std::vector<ClaimLine> lines = claim_lines(findings);
  EXPECT_DOUBLE_EQ(*lines[3].flag(), 1300.0);
  EXPECT_FALSE(lines[2].has_scale());
  EXPECT_EQ(worked_out_words(findings[3]), "worked out: 1,280\u202FWh");
  EXPECT_EQ(range_words(findings[0]), "possible: at most 190\u202FWh/kg");
  EXPECT_EQ(range_words(findings[4]), "others state 76 to 145\u202FWh/kg");
  EXPECT_EQ(range_words(findings[2]), "");
}

TEST(ClaimLines, EverySeverityHasItsOwnShape) {
  std::set<std::string> signs;
  for (const Severity s : {Severity::kHolds, Severity::kNote, Severity::kDoubt, Severity::kContradiction}) {
    signs.insert(std::string(sign_of(s)));
    EXPECT_NE(severity_mark(s).find(claims::name_of(s)), std::string::npos);
  }
  EXPECT_EQ(signs.size(), 4U) << "told apart without colour";
}

TEST(ClaimScale, FlagBeyondTheWallIsDrawnBeyondIt) {
  const Findings findings = sample();
  const std::string svg = claim_picture(claim_lines(findings)[0]);
  EXPECT_EQ(unbalanced(svg), "");
  const auto x_of = [&](const std::string& css) {
    const std::size_t at = svg.find("class=\"" + css + "\" d=\"M");
    EXPECT_NE(at, std::string::npos) << css;
    return std::stod(svg.substr(at + css.size() + 13));
  };
  EXPECT_GT(x_of("flag bad"), x_of("wall"));
  EXPECT_NE(svg.find(">Wh/kg</text>"), std::string::npos) << "a scale without its unit";
  EXPECT_NE(svg.find("aria-label=\"208\u202FWh/kg"), std::string::npos);
}

TEST(ClaimScale, OddNumbersDrawNothingThatIsNoNumber) {
  for (const double number : {0.0, -1e300, 1e300, 1e-300, std::nan("")}) {
    Findings findings = {finding("consistent.x", Severity::kHolds, number, 0.0, number)};
    const std::string svg = claim_picture(claim_lines(findings)[0]);
    EXPECT_EQ(unbalanced(svg), "");
    EXPECT_EQ(svg.find("=\"nan"), std::string::npos) << number;
    EXPECT_EQ(svg.find("inf"), std::string::npos) << number;
  }
}

TEST(ClaimsPage, HoldsEveryClaimWithRangeSourceAndSentence) {
  const Findings findings = sample();
  const std::string html = claims_page(input_of(findings, "Leaflet"));
  EXPECT_EQ(unbalanced(html), "");
  const std::string text = visible_text(html);
  for (const Finding& f : findings) {
    EXPECT_NE(text.find(f.working), std::string::npos) << f.id;
    EXPECT_NE(text.find(f.source), std::string::npos) << f.id;
    EXPECT_NE(text.find(range_words(f)), std::string::npos) << f.id;
    if (f.id == "usual.energy_per_mass") continue;  // stands beside the worse one
    EXPECT_NE(text.find(f.claim), std::string::npos) << f.id;
    EXPECT_NE(text.find(f.say), std::string::npos) << f.id;
  }
  for (const char* word : {"contradiction", "doubt", "note", "holds", "Caution 1. A judgement is no test.",
                           "Caution 2. One sentence alone.", "[someKey]", "abcd1234", "efab5678"}) {
    EXPECT_NE(text.find(word), std::string::npos) << word;
  }
  EXPECT_EQ(count_of(html, "<svg class=\"scale\""), 3U) << "a picture for every claim with a number";
  EXPECT_NE(html.find("href=\"#source1\""), std::string::npos);
  EXPECT_EQ(count_of(html, "<li id=\"source"), 5U);
}

TEST(ClaimsPage, StaysWholeWithHostileNames) {
  Findings findings = sample();
  for (Finding& f : findings) f.claim = f.say = f.working = f.source = f.unit = kHostile;
  const std::string html = claims_page(input_of(findings, kHostile));
  const std::string svg = claims_slide(kHostile, kHostile, findings);
  // The namespace of the file is an address, but nothing is loaded from it.
  for (const std::string& out : {html, svg.substr(svg.find("viewBox"))}) {
    for (const char* part : {"<script", "<i>Co", "http://", "https://", "<link", "@import", "url(", "src="})
      EXPECT_EQ(out.find(part), std::string::npos) << part;
  }
  EXPECT_EQ(unbalanced(html), "");
  EXPECT_EQ(unbalanced(svg), "");
  EXPECT_NE(visible_text(html).find(kHostile), std::string::npos);
}

TEST(ClaimsPage, SeveralSheetsStandOneAfterTheOther) {
  const Findings findings = sample();
  const Findings none;
  ClaimsInput input = input_of(findings, "First");
  input.sheets.push_back({"Second", "glass mat", "Of 0 findings.", &none});
  const std::string html = claims_page(input);
  EXPECT_EQ(unbalanced(html), "");
  EXPECT_LT(html.find(">First<"), html.find(">Second<"));
  EXPECT_NE(visible_text(html).find("2 data sheets"), std::string::npos);
}

TEST(ClaimsSlide, IsOfTheSizeOfASlideAndCountsWhatItLeavesOut) {
  Findings many;
  for (int i = 0; i < 30; ++i)
    many.push_back(finding("consistent.rule" + std::to_string(i), Severity::kHolds, 5.0, 4.0, 6.0));
  const std::string svg = claims_slide("Leaflet", "Of 30 findings, 30 hold.", many);
  EXPECT_EQ(unbalanced(svg), "");
  EXPECT_TRUE(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1600\" height=\"900\""));
  const std::size_t shown = count_of(svg, "Sentence for");
  EXPECT_GE(shown, 5U);
  EXPECT_NE(svg.find(std::to_string(30 - shown) + " more lines not shown; all of them hold."),
            std::string::npos);
}

TEST(Slide, WordsBreakAtBlanksAndLongOnesAreCut) {
  EXPECT_EQ(broken_lines("one two three", 7, 9), (std::vector<std::string>{"one two", "three"}));
  EXPECT_EQ(broken_lines("abcdefgh", 3, 9), (std::vector<std::string>{"abc", "def", "gh"}));
  EXPECT_EQ(broken_lines("äöü äöü", 3, 9), (std::vector<std::string>{"äöü", "äöü"}));
  EXPECT_EQ(broken_lines("one two three", 5, 1), (std::vector<std::string>{"one…"}));
  EXPECT_EQ(broken_lines("", 5, 1), (std::vector<std::string>{""}));
}

TEST(Slide, ThePageShowsTheShapesOfTheFile) {
  const std::string svg = claims_slide("Leaflet", "Of 5 findings, 2 hold.", sample());
  const std::string figure = slide_figure(svg, "How to read");
  const std::string shapes = svg.substr(svg.find("</style>") + 8);
  EXPECT_NE(figure.find(shapes.substr(0, shapes.size() - 1)), std::string::npos);
  EXPECT_EQ(figure.find("<style>"), std::string::npos) << "its rules would reach the rest of the page";
  EXPECT_EQ(unbalanced(figure), "");
}

}  // namespace
}  // namespace voltwright::files::report
