// The report as a document: well-formed, self-contained, and saying what the answer says. The sums of the
// ledger follow from the sample's own figures.
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "tests/unit/files/report/markup_check.h"
#include "tests/unit/files/report/sample_report.h"

namespace voltwright::files {
namespace {

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

void keep(const std::string& name, const std::string& html) {
  std::ofstream(std::string(VW_REPORT_OUT) + "/" + name, std::ios::binary) << html;
}

TEST(MarkupCheck, SeesWhatDoesNotClose) {
  EXPECT_EQ(unbalanced("<p><b>a</b></p>"), "");
  EXPECT_NE(unbalanced("<p><b>a</p></b>"), "");
  EXPECT_NE(unbalanced("<p>"), "");
  EXPECT_NE(unbalanced("<p"), "");
}

TEST(Report, IsWellFormedForLongAndShortJourneysAndWhenNothingHolds) {
  const std::string year = report_html(sample_report(365)->input);
  const std::string fortnight = report_html(sample_report(14)->input);
  const std::string nothing = report_html(sample_report(60, true)->input);
  keep("sample_report.html", year);
  keep("sample_fortnight.html", fortnight);
  keep("sample_nothing_holds.html", nothing);
  EXPECT_EQ(unbalanced(year), "");
  EXPECT_EQ(unbalanced(fortnight), "");
  EXPECT_EQ(unbalanced(nothing), "");
}

TEST(Report, LoadsNothingFromElsewhere) {
  const std::string html = report_html(sample_report(365)->input);
  for (const char* part : {"<script", "http://", "https://", "<link", "@import", "url(http", "src="}) {
    EXPECT_EQ(html.find(part), std::string::npos) << part;
  }
  EXPECT_LT(html.size(), std::size_t{600000});
}

TEST(Report, EscapesEveryText) {
  const auto sample = sample_report(30);
  sample->input.assumptions.push_back("</ul><img src=x onerror=alert(1)>");
  sample->input.worst.label = "<i>worst</i>";
  sample->input.plan_mark = "\"><b>";
  const std::string html = report_html(sample->input);
  EXPECT_EQ(unbalanced(html), "");
  EXPECT_EQ(html.find("<Åse>"), std::string::npos);
  EXPECT_EQ(html.find("<img"), std::string::npos);
  EXPECT_EQ(html.find("<i>worst"), std::string::npos);
  EXPECT_NE(visible_text(html).find("Night ferry <Åse> & \"sons\""), std::string::npos);
}

TEST(Report, LedgerColumnsAddUpToTheSamePrintedSum) {
  // In: 235.412 + 169.133 + 84.716 + 0.283 from the store = 489.544 kWh a season.
  const std::string html = report_html(sample_report(365)->input);
  EXPECT_NE(html.find("In, 489.5\u202FkWh"), std::string::npos);
  EXPECT_NE(html.find("Out, 489.5\u202FkWh"), std::string::npos);
  const std::size_t table = html.find("<table class=\"ledger\">");
  ASSERT_NE(table, std::string::npos);
  const std::string body = html.substr(table, html.find("</table>", table) - table);
  double columns[2] = {0.0, 0.0};
  double sums[2] = {0.0, 0.0};
  const std::size_t sum_row = body.find("<tr class=\"sum\">");
  int column = -2;  // the two heads come first
  for (std::size_t at = body.find("class=\"r\">"); at != std::string::npos;
       at = body.find("class=\"r\">", at + 1)) {
    const std::string figure = body.substr(at + 10, body.find('<', at + 10) - at - 10);
    if (column >= 0 && !figure.empty()) {
      double* const target = at > sum_row ? sums : columns;
      target[column % 2] += std::stod(figure);
    }
    ++column;
  }
  EXPECT_NEAR(columns[0], sums[0], 1e-9);
  EXPECT_NEAR(columns[1], sums[1], 1e-9);
  EXPECT_DOUBLE_EQ(sums[0], sums[1]);
  EXPECT_DOUBLE_EQ(sums[0], 489.5);
}

TEST(Report, RankingShowsEveryBankWithItsFigures) {
  const auto sample = sample_report(365);
  const std::string text = visible_text(report_html(sample->input));
  for (const advise::Ranked& r : sample->answer.ranking) {
    const bank::BankFigures& f = r.trial.candidate.figures;
    EXPECT_NE(text.find(r.trial.candidate.name()), std::string::npos);
    EXPECT_NE(text.find(" " + advise::figure(f.mass_kg.typical) + " "), std::string::npos);
    EXPECT_NE(text.find(" " + advise::figure(r.price.amount.typical) + " "), std::string::npos);
    EXPECT_NE(text.find(" " + advise::figure(std::round(r.trial.life_years().typical)) + " "),
              std::string::npos);
    const advise::Chance c = r.trial.chance();
    EXPECT_NE(text.find(std::to_string(c.events) + " of " + advise::figure(c.seasons)), std::string::npos);
    EXPECT_NE(text.find(r.brief.empty() ? r.reason : r.brief), std::string::npos);
  }
  EXPECT_NE(text.find("3 more banks"), std::string::npos);
  for (const std::string& sentence : sample->answer.sentences) {
    EXPECT_NE(text.find(sentence), std::string::npos);
  }
}

TEST(Report, ShowsLifeAndCostWithTheWorking) {
  const auto sample = sample_report(30);
  const std::string html = report_html(sample->input);
  const std::string text = visible_text(html);
  EXPECT_NE(text.find("Life and cost"), std::string::npos);
  const advise::BankCost& shown = sample->costs.banks[sample->costs.shown];
  ASSERT_TRUE(shown.known());
  for (const cost::WorkingLine& line : shown.life_cycle.working)
    EXPECT_NE(text.find(line.words), std::string::npos) << line.name;
  const cost::Bar* decisive = shown.tornado.decisive();
  ASSERT_NE(decisive, nullptr);
  EXPECT_NE(text.find("Most hangs on the " + decisive->assumption.name), std::string::npos);
  EXPECT_NE(html.find("<desc>"), std::string::npos);
  // Marks of patterns are used once a drawing, or one would take the other's.
  const std::size_t patterns = count_of(html, "<pattern id=\"tornado-");
  EXPECT_GE(patterns, 4U);
  for (std::size_t at = html.find("<pattern id=\"tornado-"); at != std::string::npos;
       at = html.find("<pattern id=\"tornado-", at + 1)) {
    const std::string id = html.substr(at, html.find(' ', at + 12) - at);
    EXPECT_EQ(count_of(html, id), 1U) << id;
  }
}

// Catalogue prices are dollars: without a rate they are neither shown as euros nor held against euros.
TEST(Report, SaysThatAPriceInAnotherCurrencyIsNotKnown) {
  auto sample = sample_report(30);
  sample->plan.money->per_dollar.reset();
  std::vector<advise::Trial> trials;
  for (const advise::Ranked& r : sample->answer.ranking) trials.push_back(r.trial);
  sample->answer = advise::recommend(sample->plan, std::move(trials));
  sample->costs = advise::life_cost(sample->plan, {}, sample->answer);
  const std::string html = report_html(sample->input);
  const std::string text = visible_text(html);
  EXPECT_EQ(unbalanced(html), "");
  EXPECT_EQ(sample->answer.best, -1);
  EXPECT_NE(text.find("price not known in EUR"), std::string::npos);
  EXPECT_NE(text.find("not compared"), std::string::npos);
  EXPECT_NE(text.find("costs is not known"), std::string::npos);
  EXPECT_NE(text.find("[[money.price]]"), std::string::npos);
}

TEST(Report, WarnsOfWhatTheBankCallsFor) {
  const std::string cold = visible_text(report_html(sample_report(30)->input));
  EXPECT_NE(cold.find("Cold charging"), std::string::npos);
  EXPECT_NE(cold.find("Mains voltage"), std::string::npos);
  EXPECT_EQ(cold.find("Hydrogen"), std::string::npos);
  const auto lead = sample_report(30);
  for (advise::Ranked& r : lead->answer.ranking) r.trial.candidate.chemistry = &lead->chemistries[1];
  EXPECT_NE(visible_text(report_html(lead->input)).find("Hydrogen"), std::string::npos);
}

TEST(Report, EveryPictureHasItsWords) {
  const std::string html = report_html(sample_report(365)->input);
  const std::size_t pictures = count_of(html, "<svg class=") - count_of(html, "<svg class=\"joint\"");
  EXPECT_GT(pictures, std::size_t{20});
  EXPECT_EQ(count_of(html, "role=\"img\" aria-label=\""), pictures);
}

TEST(Report, EmptyAnswerStillMakesAPage) {
  advise::Plan plan;
  advise::Recommendation answer;
  ReportInput input;
  input.plan = &plan;
  input.answer = &answer;
  const std::string html = report_html(input);
  EXPECT_EQ(unbalanced(html), "");
  EXPECT_NE(html.find("No bank was tried."), std::string::npos);
}

TEST(Axis, TicksAreRoundAndInside) {
  // 1, 2, 5 times a power of ten; by hand.
  EXPECT_EQ(report::round_ticks(-20.0, 10.0, 3), (std::vector<double>{-20.0, -10.0, 0.0, 10.0}));
  EXPECT_TRUE(report::round_ticks(1.0, 1.0, 3).empty());
  EXPECT_TRUE(report::round_ticks(0.0, std::nan(""), 3).empty());
}

}  // namespace
}  // namespace voltwright::files
