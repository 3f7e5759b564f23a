#include "app/chart.h"

#include <algorithm>

#include "files/catalogue.h"
#include "files/chart_catalogue.h"
#include "files/report/chemistry_slide.h"
#include "files/suggest.h"

namespace voltwright::app {

namespace {

constexpr int kEarliestYear = 1950;
constexpr int kLatestYear = 2100;

base::Problem problem_of(std::string field, std::string what, std::string given, std::string remedy) {
  base::Problem problem;
  problem.field = std::move(field);
  problem.what = std::move(what);
  problem.given = std::move(given);
  problem.remedy = std::move(remedy);
  return problem;
}

void check_years(const ChartRequest& request, const chart::Chart& chart, base::Problems& problems) {
  const auto check = [&](const char* field, int year) {
    if (year >= kEarliestYear && year <= kLatestYear) return;
    problems.push_back(problem_of(field, "This is not a year of the chart.", std::to_string(year),
                                  "The figures are of " + std::to_string(chart.first_year) + " to " +
                                      std::to_string(chart.last_year) + "."));
  };
  if (request.year != 0) check("--year", request.year);
  if (!request.since) return;
  check("--since", *request.since);
  if (*request.since >= chart.year) {
    problems.push_back(problem_of("--since", "There is nothing between these years.",
                                  std::to_string(*request.since),
                                  "Give a year before " + std::to_string(chart.year) + "."));
  }
}

void take_weighting(const ChartRequest& request, ChartResponse& response, base::Problems& problems) {
  response.weighting = chart::even_weighting();
  if (!request.use.empty() && !request.weigh.empty()) {
    problems.push_back(problem_of("--weigh", "A use and weights of your own do not go together.", "",
                                  "Give one of the two."));
    return;
  }
  response.weighed = !request.use.empty() || !request.weigh.empty();
  if (!request.weigh.empty()) {
    auto own = chart::parse_weighting(request.weigh);
    if (own) {
      response.weighting = std::move(own).value();
    } else {
      problems.insert(problems.end(), own.problems().begin(), own.problems().end());
    }
  }
  if (request.use.empty()) return;
  std::vector<std::string> ids;
  for (const chart::Weighting& use : response.uses) {
    ids.push_back(use.id);
    if (use.id == request.use) response.weighting = use;
  }
  if (response.weighting.id == request.use) return;
  const std::string near = files::nearest_word(request.use, ids);
  std::string all;
  for (const std::string& id : ids) all += (all.empty() ? "" : ", ") + id;
  problems.push_back(problem_of("--for", "No use has this name.", request.use,
                                near.empty() ? "Use one of " + all + "." : "Did you mean \"" + near + "\"?"));
}

}  // namespace

base::Result<ChartResponse> chart_chemistries(const ChartRequest& request) {
  auto read = files::read_chart_catalogue();
  if (!read) return read.problems();
  const auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  ChartResponse response;
  response.catalogue_mark = catalogue.value().mark;
  response.kinds = std::move(read.value().kinds);
  response.uses = std::move(read.value().uses);
  response.tree = std::move(read.value().tree);
  response.chart = chart::draw(response.kinds, request.year, request.since);
  base::Problems problems;
  check_years(request, response.chart, problems);
  take_weighting(request, response, problems);
  if (!problems.empty()) return problems;
  response.scores = chart::score(response.chart, response.weighting);
  return response;
}

std::string chart_svg(const ChartResponse& response) {
  return files::report::chemistry_slide(response.chart, response.scores,
                                        response.weighed ? &response.weighting : nullptr);
}

}  // namespace voltwright::app
