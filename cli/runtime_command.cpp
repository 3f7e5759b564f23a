#include <CLI/CLI.hpp>

#include "app/json.h"
#include "app/runtime.h"
#include "cli/battery_options.h"
#include "cli/commands.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/advise/wording.h"

namespace voltwright::cli {

namespace {

using advise::figure;

struct Options {
  app::RuntimeRequest request;
  bool json = false;
};

std::string headline(const app::RuntimeResponse& r) {
  const advise::Run& run = r.answer.run;
  const std::string load =
      r.load.current_A > 0.0 ? figure(r.load.current_A, "A") : figure(r.load.power_W, "W");
  if (run.hours <= 0.0) {
    return load + " on " + r.on_hand.name + ": not at all, " + std::string(advise::text_of(run.ending)) + ".";
  }
  return load + " on " + r.on_hand.name + ": " + hours_text(run.hours) + ", then " +
         std::string(advise::text_of(run.ending)) + ".";
}

std::string text_of(const app::RuntimeResponse& r) {
  const std::size_t width = terminal_width();
  const advise::Run& run = r.answer.run;
  std::string text = wrapped(headline(r), width, "  ") + "\n";
  text += table({{"Figure", Align::kLeft}, {"Value", Align::kRight}, {"", Align::kLeft}},
                {{"Time", figure(run.hours), "h"},
                 {"Energy at the load", figure(run.load_Wh), "Wh"},
                 {"Energy out of the bank", figure(run.bank_Wh), "Wh"},
                 {"Charge out of the bank", figure(run.drawn_Ah), "Ah"},
                 {"Mean current", figure(run.mean_A), "A"},
                 {"Voltage at first", figure(run.start_V), "V"},
                 {"Mean voltage", figure(run.mean_V), "V"},
                 {"Voltage at the end", figure(run.end_V), "V"},
                 {"Charge left", figure(run.end_charge * 100.0), "%"},
                 {"Temperature at the end", figure(run.end_temperature_C), "°C"}});
  text += "\nFrom the sum in the head to the answer\n";
  std::vector<std::vector<std::string>> rows;
  for (const advise::RuntimeStep& step : r.answer.working) {
    rows.push_back({step.name, figure(step.hours), step.why});
  }
  text += table({{"With", Align::kLeft}, {"h", Align::kRight}, {"Why", Align::kLeft}}, rows);
  if (!r.on_hand.assumed.empty()) text += "\nAssumed\n";
  for (const std::string& one : r.on_hand.assumed) text += wrapped("- " + one, width, "  ");
  text += "\nCautions\n";
  for (const std::string& one : r.cautions) text += wrapped("- " + one, width, "  ");
  return text;
}

int run(const Options& options) {
  const auto response = app::runtime(options.request);
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  const std::string text = options.json ? app::to_json(response.value()) : text_of(response.value());
  return show(text) ? kAnswered : kNotWritten;
}

}  // namespace

void add_runtime(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  app::RuntimeRequest& r = options->request;
  CLI::App* command = app.add_subcommand("runtime", "Say how long a steady load runs on a battery, and why");
  command->add_option("LOAD", r.load.load, "Power at the load, \"60 W\", or current at the bank, \"5 A\"")
      ->required();
  add_battery_options(*command, r.battery);
  add_load_options(*command, r.load);
  command->add_option("--depth", r.load.depth,
                      "Share of the capacity to use, \"80 %\", or protection: down to the cut-offs (default: "
                      "what is usual for the chemistry)");
  command->add_option("--charge", r.start_charge, "State of charge at the start (default \"100 %\")");
  command->add_flag("--json", options->json, "Print the answer as JSON");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
