#include <CLI/CLI.hpp>

#include "app/json.h"
#include "app/simulate.h"
#include "cli/answer_text.h"
#include "cli/commands.h"
#include "cli/terminal.h"
#include "files/minutes_csv.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::SimulateRequest request;
  bool json = false;
  std::string csv;
};

int run(const Options& options) {
  if (both_on_stdout(options.json, options.csv)) return kBadInput;
  const auto response = app::simulate(options.request);
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  if (!options.json) show_problems(response.value().hand.warnings, false);
  bool written = true;
  const app::ShownSeason& shown = response.value().shown;
  if (!options.csv.empty()) {
    written = deliver(options.csv, files::minutes_csv(shown.trace, shown.outside_C), "Minutes");
  }
  if (options.json) {
    written &= show(app::to_json(response.value()));
  } else if (options.csv != "-") {
    written &= show(season_text(response.value(), terminal_width()));
  }
  return written ? kAnswered : kNotWritten;
}

}  // namespace

void add_simulate(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("simulate", "Take one bank through one season, minute by minute");
  command->add_option("PLAN", options->request.plan_path, "Plan file (TOML; see docs/formats/plan.md)")
      ->required();
  command
      ->add_option("--bank", options->request.bank,
                   "Battery of the catalogue, with counts if wanted: lfp-12v-100ah:1s2p is two in parallel")
      ->required();
  command->add_option("--start", options->request.start,
                      "Begin the whole journey on this day instead: 2027-05-01, or 2027-05 or 2027 for the "
                      "planned day of another month or year");
  command->add_option("--season", options->request.season,
                      "Number of the draw of weather and use (default 0)");
  command->add_option("--csv", options->csv, "Write the minutes as CSV to a file (- for standard output)");
  command->add_flag("--json", options->json, "Print the summary as JSON");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
