#include "app/myths/bench.h"

#include <algorithm>

namespace voltwright::app {

namespace {

/// So large a loss holds a bank at the temperature of its surroundings.
constexpr double kHeld_W_K = 1e6;

void look_for(const void* record, const char* kind, std::string_view id, base::Problems& problems) {
  if (record != nullptr) return;
  base::Problem problem;
  problem.what = "The handbook's list of misconceptions is computed with this record, which is not there.";
  problem.field = kind;
  problem.given = std::string(id);
  problem.remedy = "Keep the record, or choose another one in app/myths.";
  problems.push_back(std::move(problem));
}

}  // namespace

const NeededRecords& needed_records() {
  static const NeededRecords kNeeded{{"agm", "flooded", "lfp", "nmc"},
                                     {"nca-21700", "nmc-18650"},
                                     {"agm-12v-98ah", "flooded-12v-100ah", "lfp-12v-100ah", "lfp-12v-200ah",
                                      "lfp-12v-300ah", "nmc-12v-100ah"},
                                     {"fridge-50l"}};
  return kNeeded;
}

const char* name_of(MythVerdict verdict) {
  switch (verdict) {
    case MythVerdict::kWrong:
      return "wrong";
    case MythVerdict::kHalfTrue:
      return "half true";
    default:
      return "muddled";
  }
}

MythBench::MythBench(const files::Catalogue& catalogue) : catalogue_(&catalogue) {
  for (const std::string_view id : needed_records().chemistries) {
    tables_.emplace(id, std::make_unique<cell::Tables>(cell::make_tables(chemistry(id))));
  }
}

bank::Parameters<double> MythBench::bank(const BenchBank& setup) const {
  return assembled(battery(setup.battery), setup, kHeld_W_K);
}

bank::Parameters<double> MythBench::assembled(const bank::Battery& battery, const BenchBank& setup,
                                              double heat_loss_W_K) const {
  bank::Layout layout;
  layout.in_parallel = setup.in_parallel;
  layout.lost_capacity = setup.lost_capacity;
  return bank::assemble(battery, chemistry(battery.chemistry), *tables_.find(battery.chemistry)->second,
                        layout, setup.cable_ohm, heat_loss_W_K, setup.step_s);
}

bank::State<double> at_rest(double charge, double side, double temperature_C) {
  bank::State<double> state;
  state.charge = charge;
  state.side = side;
  state.temperature_C = temperature_C;
  state.enclosure_C = temperature_C;
  return state;
}

base::Result<std::vector<Myth>> myths(const files::Catalogue& catalogue) {
  const NeededRecords& needed = needed_records();
  base::Problems problems;
  for (const auto id : needed.chemistries) look_for(catalogue.chemistry(id), "chemistry", id, problems);
  for (const auto id : needed.cells) look_for(catalogue.cell(id), "cell", id, problems);
  for (const auto id : needed.batteries) look_for(catalogue.battery(id), "battery", id, problems);
  for (const auto id : needed.appliances) look_for(catalogue.appliance(id), "appliance", id, problems);
  if (!problems.empty()) return problems;
  const MythBench bench(catalogue);
  std::vector<Myth> list;
  add_rate_myths(bench, list);
  add_load_myths(bench, list);
  add_wiring_myths(bench, list);
  add_fuse_myths(bench, list);
  add_gauge_myths(bench, list);
  add_charging_myths(bench, list);
  add_sun_myths(bench, list);
  add_cold_myths(bench, list);
  add_parallel_myths(bench, list);
  add_purchase_myths(bench, list);
  std::sort(list.begin(), list.end(), [](const Myth& a, const Myth& b) { return a.number < b.number; });
  return list;
}

}  // namespace voltwright::app
