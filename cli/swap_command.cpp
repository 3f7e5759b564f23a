#include <CLI/CLI.hpp>
#include <map>

#include "app/json.h"
#include "app/swap.h"
#include "cli/battery_options.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/advise/wording.h"

namespace voltwright::cli {

namespace {

using advise::figure;
using advise::Measure;
using Row = std::vector<std::string>;

struct Options {
  app::SwapRequest request;
  Outputs outputs;
};

std::string span_of(const units::Ranged& range, double scale = 1.0) {
  return figure(range.min * scale) + " / " + figure(range.typical * scale) + " / " +
         figure(range.max * scale);
}

Row row_of(const std::string& name, const advise::Compared& c) {
  constexpr double kPerMille = 1e-3;
  return {name,
          advise::percent(c.share),
          figure(c.figures.capacity_Ah),
          figure(c.run.bank_Wh),
          figure(c.run.hours),
          figure(c.figures.mass_kg.typical),
          figure(c.figures.volume_L.typical),
          figure(c.figures.price.typical),
          span_of(c.life_Wh, kPerMille),
          figure(c.figures.continuous_A),
          figure(c.figures.peak_A)};
}

std::string intro(const app::SwapResponse& r) {
  const advise::SwapQuestion& q = r.question;
  const std::string load =
      q.load.current_A > 0.0 ? figure(q.load.current_A, "A") : figure(q.load.power_W, "W");
  return "Equal by " + std::string(advise::name_of(q.measure)) + ", " +
         (advise::must_reach(q.measure) ? "at least " : "at most ") +
         figure(r.target, std::string(advise::unit_of(q.measure))) + "; a steady load of " + load + " at " +
         figure(q.temperature_C, "°C") + ". The incumbent is used to " + advise::percent(r.incumbent.depth) +
         ".";
}

/// What else must change with each equivalent; what was said of an earlier one is not said again.
std::string changes_text(const app::SwapResponse& r, std::size_t width) {
  std::string text;
  std::map<std::string, std::string> said;  // text of a change, and of which bank first
  for (const app::SwapRow& row : r.rows) {
    text += "\n" + row.name + " in its place\n";
    for (const advise::Change& change : row.changes) {
      const auto [known, is_new] = said.try_emplace(change.text, row.name);
      text += wrapped("- " + std::string(advise::name_of(change.urgency)) + ", " +
                          std::string(advise::name_of(change.topic)) + ": " +
                          (is_new ? change.text : "as for " + known->second + "."),
                      width, "  ");
    }
  }
  return text;
}

std::string text_of(const app::SwapResponse& r) {
  const std::size_t width = terminal_width();
  std::vector<Row> rows = {row_of(r.on_hand.name + " (now)", r.incumbent)};
  for (const app::SwapRow& row : r.rows) rows.push_back(row_of(row.name, row.compared));
  std::string text = wrapped(intro(r), width, "  ") + "\n";
  text += table({{"Bank", Align::kLeft},
                 {"share", Align::kRight},
                 {"Ah", Align::kRight},
                 {"usable Wh", Align::kRight},
                 {"h", Align::kRight},
                 {"kg", Align::kRight},
                 {"L", Align::kRight},
                 {"USD", Align::kRight},
                 {"life kWh", Align::kRight},
                 {"A", Align::kRight},
                 {"peak A", Align::kRight}},
                rows);
  text += wrapped("Usable Wh and h: at this load and temperature. Life: least / typical / most. A: for long.",
                  width, "  ");
  if (r.rows.empty()) text += "\nNo battery of the catalogue equals it so.\n";
  text += changes_text(r, width);
  if (!r.left_out.empty()) text += "\nLeft out\n";
  for (const advise::LeftOut& one : r.left_out)
    text += wrapped("- " + one.battery + ": " + one.why, width, "  ");
  if (!r.on_hand.assumed.empty()) text += "\nAssumed\n";
  for (const std::string& one : r.on_hand.assumed) text += wrapped("- " + one, width, "  ");
  text += "\nCautions\n";
  for (const std::string& one : r.cautions) text += wrapped("- " + one, width, "  ");
  return text;
}

int run(const Options& options) {
  const Outputs& outputs = options.outputs;
  if (too_many_on_stdout(on_stdout(outputs))) return kBadInput;
  const auto response = app::swap_battery(options.request);
  if (!response) {
    show_problems(response.problems(), outputs.json);
    return kBadInput;
  }
  const app::SwapResponse& answer = *response.value();
  const int written =
      write_outputs(outputs, {[&] { return app::to_csv(answer); }, [&] { return app::swap_html(answer); },
                              [&] { return base::Result<std::string>(app::swap_svg(answer)); }});
  if (written == kBadInput) return written;
  if (outputs.json) return show(app::to_json(answer)) ? written : kNotWritten;
  return on_stdout(outputs) > 0 || show(text_of(answer)) ? written : kNotWritten;
}

}  // namespace

void add_swap(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  app::SwapRequest& r = options->request;
  CLI::App* command =
      app.add_subcommand("swap", "Find what equals a battery, and what else must change with it");
  add_battery_options(*command, r.battery);
  command->add_option("--mass", r.battery.mass, "Of one battery, if known: \"28 kg\"");
  command->add_option("--volume", r.battery.volume, "Of one battery, if known: \"13 L\"");
  command->add_option("--price", r.battery.price, "Of one battery, if known: \"200 USD\"");
  command->add_option("--by", r.by, "energy (default), mass, room, price, life or current");
  command->add_option("--load", r.load.load,
                      "\"60 W\" or \"5 A\" at which energy counts (default: the capacity in 20 h)");
  add_load_options(*command, r.load);
  command->add_option("--depth", r.load.depth,
                      "Share of the incumbent's capacity in use, or protection (default: usual practice)");
  command->add_option("--new-depth", r.new_depth, "The same for the equivalents");
  command->add_option("--tray", r.tray, "Room there is, with --by room: \"330 x 175 x 220 mm\" or \"13 L\"");
  command->add_option("--at-most", r.most_in_parallel, "Side by side (default 4)");
  command->add_flag("--all", r.all, "Every equivalent, not only the first of each chemistry");
  command->add_flag("--json", options->outputs.json, "Print the answer as JSON");
  command->add_option("--csv", options->outputs.csv,
                      "Write the table as CSV to this file, - for standard output");
  add_page_and_slide(*command, options->outputs);
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
