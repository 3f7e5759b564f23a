#include <CLI/CLI.hpp>
#include <cstdio>

#include "app/chart.h"
#include "app/json.h"
#include "cli/chart_text.h"
#include "cli/commands.h"
#include "cli/terminal.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::ChartRequest request;
  bool json = false;
  bool tree = false;
  std::string csv;
  std::string svg;
  std::string png;
};

bool deliver_png(const Options& options, const app::ChartResponse& response) {
  const auto png = app::chart_png(response);
  if (!png) {
    show_problems(png.problems(), false);
    return false;
  }
  return deliver(options.png, png.value(), "Picture");
}

/// How many outputs want standard output.
int on_stdout(const Options& o) {
  return static_cast<int>(o.json) + static_cast<int>(o.csv == "-") + static_cast<int>(o.svg == "-") +
         static_cast<int>(o.png == "-") + static_cast<int>(o.tree);
}

int run(const Options& options) {
  if (on_stdout(options) > 1) {
    (void)std::fputs("voltwright: only one of these can go to standard output; give the others a file.\n",
                     stderr);
    return kBadInput;
  }
  const auto made = app::chart_chemistries(options.request);
  if (!made) {
    show_problems(made.problems(), options.json);
    return kBadInput;
  }
  const app::ChartResponse& response = made.value();
  bool written = true;
  if (!options.csv.empty()) written &= deliver(options.csv, app::chart_csv(response), "Figures");
  if (!options.svg.empty()) written &= deliver(options.svg, app::chart_svg(response), "Picture");
  if (!options.png.empty()) written &= deliver_png(options, response);
  if (options.json) {
    written &= show(app::to_json(response));
  } else if (options.tree) {
    written &= show(tree_text(response));
  } else if (on_stdout(options) == 0) {
    written &= show(chart_text(response, terminal_width()));
  }
  return written ? kAnswered : kNotWritten;
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
  command->add_flag("--json", options->json, "Print figures, sources, places and the family tree as JSON");
  command->add_flag("--tree", options->tree, "Print the family tree of batteries instead");
  command->add_option("--csv", options->csv,
                      "Write every figure with its source to a file (- for standard output)");
  command->add_option("--svg", options->svg, "Write a picture for a slide, 16 to 9");
  command->add_option("--png", options->png, "Write the same picture as PNG, 1920 by 1080 (needs librsvg)");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
