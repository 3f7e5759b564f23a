#include <CLI/CLI.hpp>
#include <algorithm>

#include "app/json.h"
#include "app/life.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/advise/wording.h"

namespace voltwright::cli {

namespace {

using advise::figure;
using advise::percent;
using Rows = std::vector<std::vector<std::string>>;

struct Options {
  app::LifeRequest request;
  std::string map;  // chemistry; empty = a plan
  Outputs outputs;
};

std::string date_words(const std::optional<double>& years) {
  const double found = years.value_or(ageing::kLongestLookedFor_years);
  return advise::years_words(advise::stated({found, found, found}));
}

std::string laws_text(const app::LifeResponse& r) {
  Rows rows;
  for (std::size_t i = 0; i < r.life.laws.size(); ++i) {
    const advise::LawLife& law = r.life.laws[i];
    rows.push_back({(law.leads ? "* " : (law.counted ? "  " : "- ")) + law.name, date_words(law.ends.at_80),
                    date_words(law.ends.at_70), app::basis_words(law.basis), app::reach_words(law.reach),
                    r.over_measured[i] > 0.0 ? figure(r.over_measured[i]) : ""});
  }
  return table({{"  Law", Align::kLeft},
                {"80 %, years", Align::kRight},
                {"70 %, years", Align::kRight},
                {"basis", Align::kLeft},
                {"reach", Align::kLeft},
                {"x measured", Align::kRight}},
               rows);
}

std::string gains_text(const std::vector<ageing::Gain>& gains) {
  if (gains.empty()) return {};
  Rows rows;
  for (const ageing::Gain& gain : gains) rows.push_back({figure(gain.times), gain.habit, gain.note});
  return "\nWhat makes it last (times the life to 80 %, by the leading law)\n" +
         table({{"times", Align::kRight}, {"habit", Align::kLeft}, {"mind", Align::kLeft}}, rows);
}

std::string list_text(const char* title, const std::vector<std::string>& lines, std::size_t width) {
  if (lines.empty()) return {};
  std::string text = std::string("\n") + title + "\n";
  for (const std::string& line : lines) text += wrapped("- " + line, width, "  ");
  return text;
}

std::string text_of(const app::LifeResponse& r) {
  const std::size_t width = terminal_width();
  std::string text = wrapped(r.sentence, width, "  ");
  if (!r.life.laws.empty()) {
    text += "\n" + laws_text(r);
    text += wrapped(
        "*: leads. -: not counted, as it knows nothing of time at rest or of use. x measured: "
        "loss of a first year at rest, 25 °C and half charge, over the measured one.",
        width, "  ");
  }
  Rows doubts;
  for (const advise::Doubt& doubt : r.life.doubts)
    doubts.push_back({doubt.of, percent(doubt.least), percent(doubt.most)});
  if (!doubts.empty())
    text += "\nDoubt, over the typical life\n" +
            table({{"", Align::kLeft}, {"shortest", Align::kRight}, {"longest", Align::kRight}}, doubts);
  Rows levels;
  for (const advise::Level& level : r.life.levels) {
    const advise::Chance& c = level.chance;
    levels.push_back({percent(level.capacity), figure(level.resistance_factor),
                      advise::chance_text(c.events, c.seasons, c.low, c.high)});
  }
  text += "\nAs it wears\n" + table({{"capacity", Align::kRight},
                                     {"resistance, times", Align::kRight},
                                     {"ran short in", Align::kLeft}},
                                    levels);
  text += gains_text(r.life.gains);
  text += list_text("Assumed", r.assumptions, width);
  return text + list_text("Cautions", r.cautions, width);
}

std::string told(const ageing::Mapped& one) {
  const advise::StatedLife life = advise::stated(one.life.years);
  const char* const mark = one.life.reach == ageing::Reach::kOutside
                               ? " o"
                               : (one.life.reach == ageing::Reach::kExtrapolated ? " x" : "  ");
  return advise::years_words(life) + mark;
}

/// Rows of duties that differ in `key`, columns by temperature.
std::string duties_text(const char* title, const char* key, const std::vector<ageing::Mapped>& duties,
                        double (*of)(const ageing::Duty&)) {
  if (duties.empty()) return {};
  std::vector<double> columns;
  std::vector<double> keys;
  const auto note = [](std::vector<double>& all, double value) {
    if (std::find(all.begin(), all.end(), value) == all.end()) all.push_back(value);
  };
  for (const ageing::Mapped& one : duties) {
    note(columns, one.duty.temperature_C);
    note(keys, of(one.duty));
  }
  std::vector<Column> head = {{key, Align::kRight}};
  for (const double temperature_C : columns) head.push_back({figure(temperature_C, "°C"), Align::kRight});
  Rows rows;
  for (const double value : keys) {
    rows.push_back({percent(value)});
    for (const ageing::Mapped& one : duties) {
      if (of(one.duty) == value) rows.back().push_back(told(one));
    }
  }
  return std::string("\n") + title + "\n" + table(head, rows);
}

std::string text_of(const app::LifeMapResponse& r) {
  const std::size_t width = terminal_width();
  std::string text =
      wrapped(r.name + ": years until a mean cell is down to 80 %, by the leading law", width, "  ");
  text += duties_text("One cycle a day from full", "depth", r.map.by_depth,
                      [](const ageing::Duty& d) { return d.depth; });
  text += duties_text("Half of the capacity a day, charged up to", "charge", r.map.by_ceiling,
                      [](const ageing::Duty& d) { return d.top_soc; });
  text += duties_text("At rest at a charge", "charge", r.map.by_storage,
                      [](const ageing::Duty& d) { return d.top_soc; });
  text += wrapped(
      "x: extrapolated, longer or harder than the tests. o: outside data. A figure is no finer than a "
      "quarter of itself.",
      width, "  ");
  text += gains_text(r.gains);
  return text + list_text("Cautions", r.cautions, width);
}

int run_map(const Options& options) {
  const auto response = app::map_life(options.map);
  if (!response) {
    show_problems(response.problems(), options.outputs.json);
    return kBadInput;
  }
  const Outputs& outputs = options.outputs;
  bool written = true;
  if (!outputs.csv.empty()) written &= deliver(outputs.csv, app::life_csv(response.value()), "Map");
  if (outputs.json) {
    written &= show(app::to_json(response.value()));
  } else if (outputs.csv != "-") {
    written &= show(text_of(response.value()));
  }
  return written ? kAnswered : kNotWritten;
}

int run_plan(const Options& options) {
  const Outputs& outputs = options.outputs;
  const bool progress = progress_wanted();
  const auto response = app::bank_life(options.request, [&](const std::string& text) {
    if (progress) show_progress(text);
  });
  if (progress) show_progress("");
  if (!response) {
    show_problems(response.problems(), outputs.json);
    return kBadInput;
  }
  const app::LifeResponse& answer = *response.value();
  if (!outputs.json) show_problems(answer.hand.warnings, false);
  const int written =
      write_outputs(outputs, {[&] { return app::life_csv(answer); }, [&] { return app::life_html(answer); },
                              [&] { return base::Result<std::string>(app::life_svg(answer)); }});
  if (written == kBadInput) return written;
  if (outputs.json) return show(app::to_json(answer)) ? written : kNotWritten;
  return on_stdout(outputs) > 0 || show(text_of(answer)) ? written : kNotWritten;
}

int run(const Options& options) {
  const Outputs& outputs = options.outputs;
  if (too_many_on_stdout(on_stdout(outputs))) return kBadInput;
  const bool is_map = !options.map.empty();
  const bool draws = !outputs.html.empty() || !outputs.svg.empty() || !outputs.png.empty();
  if (is_map == !options.request.plan_path.empty() || (is_map && draws)) {
    base::Problem problem;
    problem.field = is_map && draws ? "--html, --svg, --png" : "PLAN, --map";
    problem.what = is_map && draws ? "The life map is a table: it has no page and no picture."
                                   : "Either a plan or --map CHEMISTRY is needed, not both.";
    problem.remedy = is_map && draws ? "Use --csv or --json." : "See `voltwright life --help`.";
    show_problems({problem}, outputs.json);
    return kBadInput;
  }
  return is_map ? run_map(options) : run_plan(options);
}

}  // namespace

void add_life(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<Options>();
  app::LifeRequest& r = options->request;
  CLI::App* command =
      app.add_subcommand("life", "How long a bank lasts at a plan's use, and what makes it last");
  command->add_option("PLAN", r.plan_path, "Plan file (TOML; see docs/formats/plan.md)");
  command->add_option(
      "--bank", r.bank,
      "Battery of the catalogue, with counts if wanted: lfp-12v-100ah:1s2p is two in parallel "
      "(default: what is fitted now, else the recommended bank)");
  command->add_option("--parallel", r.in_parallel, "Strings side by side, 1 to 64 (default: as in --bank)")
      ->check(CLI::Range(1, 64));
  command->add_option("--map", options->map,
                      "Instead of a plan: years of a chemistry (catalogue id: lfp, agm ...) against depth, "
                      "temperature, charge ceiling and storage charge");
  command->add_option("--start", r.start,
                      "Begin the whole journey on this day instead: 2027-05-01, or 2027-05 or 2027 for the "
                      "planned day of another month or year");
  command->add_flag("--json", options->outputs.json, "Print the answer as JSON");
  command->add_option("--csv", options->outputs.csv,
                      "Write the curves, or the map, as CSV to this file, - for standard output");
  add_page_and_slide(*command, options->outputs);
  command->add_option("--threads", r.threads, "Processors to use; 0 = all (default)");
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace voltwright::cli
