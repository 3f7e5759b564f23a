#include <CLI/CLI.hpp>

#include "app/vet.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/units/figure.h"

namespace voltwright::cli {

namespace {

using claims::Finding;
using claims::Severity;
using units::figure;

struct Options {
  app::VetRequest request;
  Outputs outputs;
  bool sources = false;
};

/// A C-rate is written 0.5C, everything else with a space before its unit.
std::string spaced(const std::string& unit) { return unit.empty() || unit == "C" ? unit : " " + unit; }

/// "95 to 130 Wh/kg", "at most 48 kg"; empty without a range.
std::string range_text(const Finding& f) {
  const std::string unit = spaced(f.unit);
  if (f.least && f.most) return figure(*f.least) + " to " + figure(*f.most) + unit;
  if (f.least) return "at least " + figure(*f.least) + unit;
  if (f.most) return "at most " + figure(*f.most) + unit;
  return "";
}

std::string number_text(const Finding& f) {
  if (!f.number) return "";
  return figure(*f.number) + spaced(f.unit);
}

void add_words(const Finding& f, bool sources, std::size_t width, std::string& text) {
  const bool speaks = f.severity != Severity::kHolds;
  if (!speaks && !sources) return;
  text += "\n" + f.id + " (" + std::string(claims::name_of(f.severity)) + ")\n";
  text += wrapped("  " + f.say, width, "  ");
  text += wrapped("  Working: " + f.working, width, "    ");
  if (sources) text += wrapped("  Source: " + f.source, width, "    ");
}

std::string sheet_text(const app::VettedSheet& vetted, bool sources) {
  std::vector<std::vector<std::string>> rows;
  for (const Finding& f : vetted.findings) {
    rows.push_back({std::string(claims::name_of(f.severity)), f.claim, number_text(f), range_text(f), f.id});
  }
  std::string text = vetted.sheet.name + "\n" + vetted.summary + "\n\n";
  text += table({{"Outcome", Align::kLeft},
                 {"Claim", Align::kLeft},
                 {"Worked out", Align::kRight},
                 {"Held against", Align::kLeft},
                 {"Rule", Align::kLeft}},
                rows);
  for (const Finding& f : vetted.findings) add_words(f, sources, terminal_width(), text);
  return text + "\n";
}

std::string text_of(const app::VetResponse& response, bool sources) {
  std::string text;
  for (const app::VettedSheet& vetted : response.sheets) text += sheet_text(vetted, sources);
  text += "Cautions\n";
  for (const std::string& caution : response.cautions)
    text += wrapped("- " + caution, terminal_width(), "  ");
  return text;
}

int run(const Options& options) {
  const Outputs& outputs = options.outputs;
  if (too_many_on_stdout(on_stdout(outputs))) return kBadInput;
  const auto response = app::vet(options.request);
  if (!response) {
    show_problems(response.problems(), outputs.json);
    return kBadInput;
  }
  const app::VetResponse& answer = response.value();
  if (!outputs.json) show_problems(answer.warnings, false);
  const int written =
      write_outputs(outputs, {[&] { return app::findings_csv(answer); },
                              [&] { return app::vet_html(answer); }, [&] { return app::vet_svg(answer); }});
  if (written == kBadInput) return written;
  if (outputs.json) return show(app::to_json(answer)) ? written : kNotWritten;
  return on_stdout(outputs) > 0 || show(text_of(answer, options.sources)) ? written : kNotWritten;
}

}  // namespace

void add_vet(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "vet", "Hold the claims of a battery's data sheet against physics and what others state");
  command->add_option("SHEET", options->request.path,
                      "Sheet of claims (TOML), or a table of several (CSV); format: docs/formats/sheet.md");
  command
      ->add_option("--claim", options->request.claims,
                   "One claim in place of a sheet, with a key of a sheet, such as \"capacity=100 Ah\"; as "
                   "often as there are claims")
      ->type_name("KEY=VALUE")
      ->allow_extra_args(false);
  command->add_flag("--sources", options->sources,
                    "Print working and source of every finding, also of what holds");
  command->add_flag("--json", options->outputs.json, "Print the findings as JSON");
  command->add_option("--csv", options->outputs.csv,
                      "Write the findings as CSV to this file, or - for standard output");
  command->add_option("--only", options->request.only,
                      "Of a table of several sheets only the one of this name");
  add_page_and_slide(*command, options->outputs);
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
