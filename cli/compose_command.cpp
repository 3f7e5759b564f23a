#include <CLI/CLI.hpp>
#include <cmath>

#include "app/compose.h"
#include "app/json.h"
#include "cli/commands.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/advise/wording.h"

namespace voltwright::cli {

namespace {

using advise::figure;
using Rows = std::vector<std::vector<std::string>>;

struct Options {
  app::ComposeRequest request;
  bool json = false;
};

constexpr double kMilli = 1e3;

void add_voltages(Rows& rows, const bank::Composition& c) {
  rows.push_back({"Empty", figure(c.empty_V), "V", "lower limit of the cells"});
  rows.push_back({"Nominal", figure(c.nominal_V), "V", ""});
  rows.push_back({"Mean at rest", figure(c.mean_V), "V", "over the whole charge"});
  rows.push_back({"Full, just charged", figure(c.full_V), "V", ""});
  rows.push_back({"Charge", figure(c.charge_V), "V", "absorption"});
  rows.push_back({"Highest", figure(c.highest_V), "V", "upper limit of the cells"});
}

void add_energy_and_mass(Rows& rows, const bank::Composition& c) {
  rows.push_back({"Capacity", figure(c.capacity_Ah), "Ah", ""});
  rows.push_back({"Energy", figure(c.nominal_Wh), "Wh", "nominal; " + figure(c.rest_Wh, "Wh") + " at rest"});
  rows.push_back({"Mass", figure(c.mass_kg.typical), "kg",
                  "cells " + figure(c.cells_kg) + ", busbars " + figure(c.busbars_kg) + ", case " +
                      figure(c.case_kg) + ", protection " + figure(c.protection_kg)});
  rows.push_back(
      {"Outside",
       figure(c.outside.length_mm) + " x " + figure(c.outside.width_mm) + " x " + figure(c.outside.height_mm),
       "mm",
       std::to_string(c.arrangement.rows) + (c.arrangement.rows == 1 ? " row of " : " rows of ") +
           std::to_string(c.arrangement.columns)});
  rows.push_back({"Volume", figure(c.volume_L), "L", advise::percent(c.cells_share) + " of it are cells"});
  rows.push_back({"Energy per mass", figure(c.Wh_per_kg), "Wh/kg", ""});
  rows.push_back({"Energy per volume", figure(c.Wh_per_L), "Wh/L", ""});
}

void add_currents(Rows& rows, const bank::Composition& c) {
  const auto bound = [](const bank::CurrentLimit& limit) {
    return "bound by " + std::string(bank::name_of(limit.binding));
  };
  rows.push_back({"Continuous", figure(c.continuous.current_A), "A", bound(c.continuous)});
  rows.push_back(
      {"Peak", figure(c.peak.current_A), "A", "for " + figure(c.battery.peak_s, "s") + ", " + bound(c.peak)});
  rows.push_back({"Charging", figure(c.charge.current_A), "A", bound(c.charge)});
  rows.push_back({"Resistance", figure(c.resistance_ohm * kMilli), "mohm",
                  "cells " + figure(c.cells_ohm * kMilli) + ", joints " + figure(c.joints_ohm * kMilli) +
                      ", protection " + figure(c.protection_ohm * kMilli)});
  rows.push_back({"Short circuit", figure(c.short_circuit_A.max), "A",
                  "at most; " + figure(c.short_circuit_A.typical, "A") + " typically"});
}

std::string text_of(const app::ComposeResponse& response) {
  const bank::Composition& c = response.made;
  Rows rows;
  add_voltages(rows, c);
  add_energy_and_mass(rows, c);
  add_currents(rows, c);
  std::string text = response.cell.name + ", " + std::to_string(c.in_series) + " in series, " +
                     std::to_string(c.in_parallel) + " in parallel\n\n";
  text += table({{"Figure", Align::kLeft}, {"Value", Align::kRight}, {"", Align::kLeft}, {"", Align::kLeft}},
                rows);
  const std::size_t width = terminal_width();
  if (!c.findings.empty()) text += "\nFound\n";
  for (const base::Problem& finding : c.findings) {
    base::Problem plain = finding;
    plain.field.clear();
    plain.severity = base::Severity::kError;  // no "warning:" before it: it stands under its own heading
    text += wrapped("- " + base::to_text(plain), width, "  ");
  }
  text += "\nCautions\n";
  for (const std::string& caution : response.cautions) text += wrapped("- " + caution, width, "  ");
  return text;
}

int run(const Options& options) {
  const auto response = app::compose(options.request);
  if (!response) {
    show_problems(response.problems(), options.json);
    return kBadInput;
  }
  const std::string text = options.json ? app::to_json(response.value()) : text_of(response.value());
  return show(text) ? kAnswered : kNotWritten;
}

}  // namespace

CLI::App* add_compose(CLI::App& catalogue, int& exit_code) {
  auto options = std::make_shared<Options>();
  app::ComposeRequest& r = options->request;
  CLI::App* command = catalogue.add_subcommand("compose", "Compose a battery of cells and give its figures");
  command->add_option("CELL", r.cell, "Cell of the catalogue (voltwright catalogue cells)")->required();
  command->add_option("--series", r.in_series, "Cells in series, 1 to 32")->required();
  command->add_option("--parallel", r.in_parallel, "Cells side by side, 1 to 500 (default 1)");
  command->add_option("--packing", r.packing, "Of cylinders: hexagonal (default) or square")
      ->check(CLI::IsMember({"hexagonal", "square"}));
  command->add_option("--gap", r.gap, "Between cylinders (default \"1 mm\")");
  command->add_option("--clearance", r.clearance, "Beside the cells on every side (default \"15 mm\")");
  command->add_option("--headroom", r.headroom, "Above the cells (default \"50 mm\")");
  command->add_option("--wall", r.wall, "Of the case (default \"4 mm\" of plastic)");
  command->add_option("--case-mass", r.case_mass, "Instead of the wall's: \"1.5 kg\"");
  command->add_option(
      "--joint", r.joint_resistance,
      "Connection at each pole of a cell (default \"0.5 mohm\" welded, \"0.02 mohm\" bolted)");
  command->add_option("--busbar-current", r.busbar_current, "Continuous; twice that for seconds");
  command->add_option("--protection-resistance", r.protection_resistance,
                      "With fuse and terminals (default \"2 mohm\")");
  command->add_option("--protection-mass", r.protection_mass,
                      "With fuse, cables and terminals (default \"0.6 kg\")");
  command->add_option("--protection-current", r.protection_current,
                      "Continuous (default: the capacity in an hour)");
  command->add_option("--protection-peak", r.protection_peak, "For seconds (default: twice the continuous)");
  command->add_flag("--json", options->json, "Print the figures and a record for the catalogue as JSON");
  command->callback([options, &exit_code] { exit_code = run(*options); });
  return command;
}

}  // namespace voltwright::cli
