#include <CLI/CLI.hpp>

#include "app/legs.h"
#include "cli/commands.h"
#include "cli/terminal.h"

namespace voltwright::cli {

namespace {

struct Options {
  std::string path;
  bool json = false;
};

int run(const Options& options) {
  const auto journey = app::legs_of_track(options.path);
  if (!journey) {
    show_problems(journey.problems(), options.json);
    return kBadInput;
  }
  if (!options.json) show_problems(journey.value().warnings, false);
  return show(options.json ? app::to_json(journey.value()) : files::legs_toml(journey.value())) ? kAnswered
                                                                                                : kNotWritten;
}

}  // namespace

void add_legs(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command =
      app.add_subcommand("legs", "Print the legs found in a recorded track, ready to go into a plan");
  command->add_option("TRACK", options->path, "GPX file (see docs/formats/gpx.md)")->required();
  command->add_flag("--json", options->json, "Print the legs as JSON");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
