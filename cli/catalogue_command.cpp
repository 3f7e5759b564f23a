#include <CLI/CLI.hpp>

#include "cli/commands.h"
#include "cli/table.h"
#include "cli/terminal.h"
#include "engine/advise/wording.h"
#include "files/catalogue.h"

namespace voltwright::cli {

namespace {

using advise::figure;

std::string span(const units::Ranged& r) { return figure(r.min) + " to " + figure(r.max); }

std::string chemistries(const files::Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const cell::Chemistry& c : catalogue.chemistries) {
    rows.push_back({c.id, c.name, figure(c.nominal_V),
                    figure(c.limits.charge_min_C) + " to " + figure(c.limits.charge_max_C),
                    figure(c.usable_depth * 100.0),
                    figure(c.life.cycles.typical) + " (" + span(c.life.cycles) + ")",
                    c.simulated ? "yes" : "not yet: " + c.not_simulated_because});
  }
  return table({{"Chemistry", Align::kLeft},
                {"Name", Align::kLeft},
                {"V/cell", Align::kRight},
                {"Charge degC", Align::kRight},
                {"Usable %", Align::kRight},
                {"Cycles at that depth", Align::kRight},
                {"Simulated", Align::kLeft}},
               rows);
}

const char* form_of(cell::FormFactor form) {
  switch (form) {
    case cell::FormFactor::kCylindrical:
      return "cylindrical";
    case cell::FormFactor::kPrismatic:
      return "prismatic";
    case cell::FormFactor::kPouch:
      return "pouch";
  }
  return "";
}

std::string cells(const files::Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const cell::CellFormat& c : catalogue.cells) {
    const cell::CellSize& s = c.size;
    const std::string floor = c.form == cell::FormFactor::kCylindrical
                                  ? figure(s.diameter_mm)
                                  : figure(s.thickness_mm) + " x " + figure(s.width_mm);
    rows.push_back({c.id, c.chemistry, form_of(c.form), floor + " x " + figure(s.height_mm),
                    figure(c.capacity_Ah), figure(c.mass_kg.typical), figure(c.ohmic_ohm.typical * 1000.0),
                    figure(c.continuous_A), figure(c.peak_A), figure(c.charge_A)});
  }
  return table({{"Cell", Align::kLeft},
                {"Chemistry", Align::kLeft},
                {"Form", Align::kLeft},
                {"Size mm", Align::kLeft},
                {"Ah", Align::kRight},
                {"kg", Align::kRight},
                {"mohm", Align::kRight},
                {"Discharge A", Align::kRight},
                {"Peak A", Align::kRight},
                {"Charge A", Align::kRight}},
               rows);
}

std::string batteries(const files::Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const bank::Battery& b : catalogue.batteries) {
    rows.push_back({b.id, b.name, figure(b.system_V), figure(b.capacity_Ah), figure(b.mass_kg.typical),
                    figure(b.volume_L.typical), figure(b.price.typical) + " (" + span(b.price) + ")",
                    std::to_string(b.price_year), figure(b.continuous_A), figure(b.charge_A)});
  }
  return table({{"Battery", Align::kLeft},
                {"Name", Align::kLeft},
                {"System V", Align::kRight},
                {"Ah", Align::kRight},
                {"kg", Align::kRight},
                {"L", Align::kRight},
                {"Price USD", Align::kRight},
                {"Year", Align::kRight},
                {"Discharge A", Align::kRight},
                {"Charge A", Align::kRight}},
               rows);
}

std::string appliances(const files::Catalogue& catalogue) {
  std::vector<std::vector<std::string>> rows;
  for (const demand::Appliance& a : catalogue.appliances) {
    rows.push_back({a.id, a.name, figure(a.power_W.typical), span(a.power_W),
                    a.energy_Wh_day.typical > 0.0 ? figure(a.energy_Wh_day.typical) : "-",
                    "x" + figure(a.surge_factor), a.trust});
  }
  return table({{"Appliance", Align::kLeft},
                {"Name", Align::kLeft},
                {"W", Align::kRight},
                {"Range W", Align::kRight},
                {"Wh a day", Align::kRight},
                {"Start", Align::kRight},
                {"Trust", Align::kLeft}},
               rows);
}

int run(const std::string& kind) {
  const auto catalogue = files::read_catalogue();
  if (!catalogue) {
    show_problems(catalogue.problems(), false);
    return kBadInput;
  }
  const files::Catalogue& all = catalogue.value();
  std::string text;
  if (kind == "chemistries" || kind == "all") text += chemistries(all);
  if (kind == "all") text += "\n";
  if (kind == "cells" || kind == "all") text += cells(all);
  if (kind == "all") text += "\n";
  if (kind == "batteries" || kind == "all") text += batteries(all);
  if (kind == "all") text += "\n";
  if (kind == "appliances" || kind == "all") text += appliances(all);
  return show(text) ? kAnswered : kNotWritten;
}

}  // namespace

void add_catalogue(CLI::App& app, int& exit_code) {
  auto kind = std::make_shared<std::string>("all");
  CLI::App* command = app.add_subcommand("catalogue", "List chemistries, cells, batteries and appliances");
  command->add_option("KIND", *kind, "chemistries, cells, batteries, appliances or all (default)")
      ->check(CLI::IsMember({"chemistries", "cells", "batteries", "appliances", "all"}));
  const CLI::App* compose = add_compose(*command, exit_code);
  command->callback([kind, command, compose, &exit_code] {
    if (!command->got_subcommand(compose)) exit_code = run(*kind);
  });
}

}  // namespace voltwright::cli
