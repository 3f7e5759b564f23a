#include <CLI/CLI.hpp>

#include "app/advise.h"
#include "app/json.h"
#include "app/ranking_csv.h"
#include "app/report.h"
#include "cli/answer_text.h"
#include "cli/commands.h"
#include "cli/terminal.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::AdviseRequest request;
  bool json = false;
  bool all = false;
  std::string csv;
  std::string report;
};

int run(const Options& options) {
  if (both_on_stdout(options.json, options.csv)) return kBadInput;
  const bool progress = progress_wanted();
  const auto response = app::advise(options.request, [&](int done, int planned, int in_race) {
    if (progress) {
      show_progress("season " + std::to_string(done) + " of " + std::to_string(planned) + ", " +
                    std::to_string(in_race) + " banks in the race");
    }
  });
  if (progress) show_progress("");
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  if (!options.json) show_problems(response.value().hand.warnings, false);
  bool written = true;
  if (!options.csv.empty())
    written &= deliver(options.csv, app::ranking_csv(response.value().answer), "Ranking");
  if (!options.report.empty()) written &= deliver(options.report, app::report(response.value()), "Report");
  if (options.json) {
    written &= show(app::to_json(response.value()));
  } else if (options.csv != "-") {
    written &= show(answer_text(response.value(), options.all, terminal_width()));
  }
  return written ? kAnswered : kNotWritten;
}

}  // namespace

void add_advise(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("advise", "Find the battery bank that carries a plan, and say why");
  command->add_option("PLAN", options->request.plan_path, "Plan file (TOML; see docs/formats/plan.md)")
      ->required();
  command->add_option("--start", options->request.start,
                      "Begin the whole journey on this day instead: 2027-05-01, or 2027-05 or 2027 for the "
                      "planned day of another month or year");
  command->add_flag("--json", options->json, "Print the whole answer as JSON");
  command->add_option("--csv", options->csv, "Write the ranking as CSV to a file (- for standard output)");
  command->add_option("--report", options->report, "Write a self-contained HTML report to a file");
  command->add_flag("--all", options->all,
                    "List every bank that was tried, not only the nearest of each chemistry");
  command->add_option("--threads", options->request.threads, "Processors to use; 0 = all (default)");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
