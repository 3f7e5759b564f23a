#include <CLI/CLI.hpp>

#include "app/myths_told.h"
#include "cli/commands.h"
#include "cli/table.h"
#include "cli/terminal.h"

namespace voltwright::cli {

namespace {

struct Options {
  app::MythsRequest request;
  bool json = false;
};

constexpr std::size_t kIndent = 4;

/// Number, claim and verdict; below them the answer.
std::string list_text(const app::MythsResponse& response) {
  std::string text;
  std::string family;
  for (const app::Myth& myth : response.myths) {
    if (myth.family != family) text += (family.empty() ? "" : "\n") + myth.family + "\n";
    family = myth.family;
    const std::string number = (myth.number < 10 ? " " : "") + std::to_string(myth.number);
    const std::string indent(kIndent, ' ');
    const std::size_t width = terminal_width() - kIndent;
    text += number + "  " + wrapped(myth.claim + " (" + app::name_of(myth.verdict) + ")", width, indent);
    text += indent + wrapped(myth.answer, width, indent);
  }
  return text + "\nThe working of one: voltwright myths NUMBER.\n";
}

std::string entry_text(const app::Myth& myth) {
  const std::size_t width = terminal_width();
  std::string text = myth.title + "\n\n";
  text += wrapped("It is said: " + myth.claim, width, "  ");
  text += wrapped(std::string("That is ") + app::name_of(myth.verdict) + ": " + myth.answer, width, "  ");
  text += "\nWorking\n";
  for (const std::string& step : myth.working) text += wrapped("- " + step, width, "  ");
  text += "\n" + wrapped("When it is nearly true: " + myth.nearly_true, width, "  ");
  if (!myth.caution.empty()) text += "\n" + wrapped("Caution: " + myth.caution, width, "  ");
  text += "\nSources\n";
  for (const app::MythSource& source : myth.sources) {
    const std::string work = source.key.empty() ? "" : "[" + source.key + "] ";
    text += wrapped("- " + work + source.note, width, "  ");
  }
  return text;
}

int run(const Options& options) {
  const auto told = app::tell_myths(options.request);
  if (!told) {
    show_problems(told.problems(), options.json);
    return kBadInput;
  }
  const app::MythsResponse& response = told.value();
  if (options.json) return show(app::to_json(response)) ? kAnswered : kNotWritten;
  return show(options.request.number ? entry_text(response.myths.front()) : list_text(response))
             ? kAnswered
             : kNotWritten;
}

}  // namespace

void add_myths(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command =
      app.add_subcommand("myths", "Thirty things that are often said, with the number that puts them right");
  command->add_option("NUMBER", options->request.number, "One entry with its working");
  command->add_flag("--json", options->json, "Print the entries as JSON");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
