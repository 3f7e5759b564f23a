#include <CLI/CLI.hpp>

#include "app/chart.h"
#include "app/json.h"
#include "cli/chart_text.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/terminal.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::ChartRequest request;
  Outputs outputs;
  bool tree = false;
};

int run(const Options& options) {
  const Outputs& outputs = options.outputs;
  const int wanting = on_stdout(outputs) + static_cast<int>(options.tree);
  if (too_many_on_stdout(wanting)) return kBadInput;
  const auto made = app::chart_chemistries(options.request);
  if (!made) {
    show_problems(made.problems(), outputs.json);
    return kBadInput;
  }
  const app::ChartResponse& response = made.value();
  const int written = write_outputs(
      outputs, {[&] { return app::chart_csv(response); }, [&] { return app::chart_html(response); },
                [&] { return base::Result<std::string>(app::chart_svg(response)); }});
  if (written == kBadInput) return written;
  bool shown = true;
  if (outputs.json) {
    shown = show(app::to_json(response));
  } else if (options.tree) {
    shown = show(tree_text(response));
  } else if (wanting == 0) {
    shown = show(chart_text(response, terminal_width()));
  }
  return shown ? written : kNotWritten;
}

}  // namespace

void add_chart(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command =
      app.add_subcommand("chart", "Compare battery chemistries by sourced figures, as of any year");
  command->add_option("--year", options->request.year, "Figures known in this year (default: the latest)");
  command->add_option("--since", options->request.since,
                      "List what is another figure than in this earlier year");
  command->add_option("--for", options->request.use,
                      "Rank for a use: house-bank, vehicle, stationary, pocket, cold or high-power");
  command->add_option(
      "--weigh", options->request.weigh,
      "Rank by your own weights, such as energy=3,price=1: energy, volume, power, charge, life, "
      "safety, cold, price, efficiency, standing");
  command->add_flag("--json", options->outputs.json,
                    "Print figures, sources, places and the family tree as JSON");
  command->add_flag("--tree", options->tree, "Print the family tree of batteries instead");
  command->add_option("--csv", options->outputs.csv,
                      "Write every figure with its source to a file (- for standard output)");
  add_page_and_slide(*command, options->outputs);
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
