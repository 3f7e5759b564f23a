// voltwright: the terminal face. It reads arguments, calls one use case and prints; it computes nothing.
#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>

#include "app/version.h"
#include "cli/commands.h"

namespace {

int run(int argc, char** argv) {
  using namespace voltwright;
  CLI::App app("Sizes, proves and explains the battery bank of a vehicle, boat or cabin.");
  app.set_version_flag("--version", std::string("voltwright ") + app::kVersion);
  app.require_subcommand(1);
  app.footer(
      "Exit codes: 0 answered, 1 an output could not be written, 2 the input has problems.\n"
      "A planning aid: local codes, the makers' instructions and a licensed person decide.");
  int exit_code = cli::kAnswered;
  cli::add_advise(app, exit_code);
  cli::add_simulate(app, exit_code);
  cli::add_legs(app, exit_code);
  cli::add_life(app, exit_code);
  cli::add_vet(app, exit_code);
  cli::add_runtime(app, exit_code);
  cli::add_swap(app, exit_code);
  cli::add_sky(app, exit_code);
  cli::add_catalogue(app, exit_code);
  cli::add_chart(app, exit_code);
  cli::add_myths(app, exit_code);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? cli::kAnswered : cli::kBadInput;
  }
  return exit_code;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    (void)std::fprintf(stderr, "voltwright: %s\n", error.what());
  } catch (...) {
    (void)std::fputs("voltwright: stopped by something unknown\n", stderr);
  }
  return voltwright::cli::kNotWritten;
}
