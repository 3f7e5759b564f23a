#include "engine/advise/trial.h"

#include <algorithm>
#include <map>

#include "engine/season/setup.h"

namespace voltwright::advise {

namespace {

constexpr std::size_t kPiece = 1440;

season::Circumstances circumstances_of(const Plan& plan, std::span<const season::LegSky> skies,
                                       const sky::ClearnessMatrices& matrices) {
  season::Circumstances c;
  c.legs = plan.legs;
  c.skies = skies;
  c.matrices = &matrices;
  c.loads = plan.loads;
  c.inverter = plan.inverter ? &*plan.inverter : nullptr;
  c.arrays = plan.arrays;
  c.has_engine = plan.engine.has_value();
  c.engine_low_share = plan.engine ? plan.engine->low_share : 0.0;
  c.engine = plan.engine ? &*plan.engine : nullptr;
  c.generator = plan.generator && plan.mains ? &*plan.generator : nullptr;
  c.wind = plan.wind ? &*plan.wind : nullptr;
  c.water = plan.water ? &*plan.water : nullptr;
  c.has_mains = plan.mains.has_value();
  c.surroundings = plan.surroundings;
  c.system_V = units::as_volts(plan.system_voltage);
  c.seed = plan.seed;
  c.daily_model = plan.daily_model;
  c.diffuse_model = plan.diffuse_model;
  return c;
}

double cable_ohm(const Cable& cable) {
  return season::loop_resistance_ohm(units::as_metres(cable.one_way),
                                     units::as_square_millimetres(cable.area));
}

void add_ledger(season::Ledger<double>& sum, const season::Ledger<double>& one) {
  using L = season::Ledger<double>;
  static constexpr double L::*kMembers[] = {
      &L::solar_Wh,          &L::engine_Wh,          &L::mains_Wh,
      &L::wind_Wh,           &L::water_Wh,           &L::generator_Wh,
      &L::generator_h,       &L::direct_Wh,          &L::inverter_Wh,
      &L::heater_Wh,         &L::inverter_cable_Wh,  &L::far_cable_Wh,
      &L::main_cable_Wh,     &L::resistance_Wh,      &L::relaxing_Wh,
      &L::side_Wh,           &L::self_discharge_Wh,  &L::drawn_from_store_Wh,
      &L::charged_Ah,        &L::discharged_Ah,      &L::side_Ah,
      &L::self_discharge_Ah, &L::charged_Wh,         &L::discharged_Wh,
      &L::solar_left_Wh,     &L::solar_clipped_Wh,   &L::solar_untracked_Wh,
      &L::unmet_Wh,          &L::unmet_essential_Wh, &L::short_h,
      &L::charge_blocked_h,  &L::loads_off_h,        &L::inverter_off_h,
      &L::drawn_blocked_Wh,  &L::far_off_h,          &L::over_current_h,
      &L::frozen_h,          &L::unwoken_h,          &L::load_dumps,
      &L::failed_starts,     &L::collapses,          &L::residual_Wh};
  for (const auto member : kMembers) sum.*member += one.*member;
}

void add_wear(ageing::Wear& sum, const ageing::Wear& one) {
  sum.by_cycles += one.by_cycles;
  sum.by_calendar += one.by_calendar;
}

bool worse(const SeasonNote& a, const SeasonNote& b) {
  if (a.unmet_essential_Wh != b.unmet_essential_Wh) return a.unmet_essential_Wh > b.unmet_essential_Wh;
  if (a.lowest_charge != b.lowest_charge) return a.lowest_charge < b.lowest_charge;
  return a.season < b.season;
}

}  // namespace

Chance Trial::chance() const {
  const auto short_count =
      std::count_if(seasons.begin(), seasons.end(), [](const SeasonNote& s) { return s.ran_short; });
  return chance_of(static_cast<int>(short_count), count());
}

Chance Trial::start_chance() const {
  const auto failed =
      std::count_if(seasons.begin(), seasons.end(), [](const SeasonNote& s) { return s.failed_start; });
  return chance_of(static_cast<int>(failed), count());
}

units::Ranged Trial::life_years() const {
  const double years = minutes * count() / (60.0 * 8766.0);
  return {ageing::years_of_life(wear_shortest, years), ageing::years_of_life(wear_typical, years),
          ageing::years_of_life(wear_longest, years)};
}

double Trial::mean_lowest_charge() const {
  double sum = 0.0;
  for (const SeasonNote& s : seasons) sum += s.lowest_charge;
  return seasons.empty() ? 1.0 : sum / static_cast<double>(seasons.size());
}

std::uint64_t Trial::worst_season() const {
  return seasons.empty() ? 0 : std::min_element(seasons.begin(), seasons.end(), worse)->season;
}

std::uint64_t Trial::median_season() const {
  if (seasons.empty()) return 0;
  std::vector<SeasonNote> order = seasons;
  std::sort(order.begin(), order.end(), worse);
  return order[order.size() / 2].season;
}

void Trial::add(std::uint64_t season_number, const season::Fared& fared) {
  SeasonNote note;
  note.season = season_number;
  note.unmet_essential_Wh = fared.ledger.unmet_essential_Wh;
  note.unmet_Wh = fared.ledger.unmet_Wh;
  note.short_h = fared.ledger.short_h;
  note.longest_short_min = fared.longest_short_min;
  note.lowest_charge = fared.lowest_charge;
  note.charge_blocked_h = fared.ledger.charge_blocked_h;
  note.discharged_Wh = fared.ledger.discharged_Wh;
  note.ran_short = fared.ran_short();
  note.failed_start = fared.ledger.failed_starts > 0.0;
  seasons.push_back(note);
  add_ledger(ledger, fared.ledger);
  minutes = fared.minutes;
  lowest_V = std::min(lowest_V, fared.lowest_V);
  highest_V = std::max(highest_V, fared.highest_V);
  coldest_C = std::min(coldest_C, fared.coldest_C);
  hottest_C = std::max(hottest_C, fared.hottest_C);
  mean_C += (fared.mean_C - mean_C) / count();
  highest_discharge_A = std::max(highest_discharge_A, fared.highest_discharge_A);
  highest_charge_A = std::max(highest_charge_A, fared.highest_charge_A);
  highest_surge_A = std::max(highest_surge_A, fared.highest_surge_A);
  lowest_surge_V = std::min(lowest_surge_V, fared.lowest_surge_V);
  highest_load_dump_A = std::max(highest_load_dump_A, fared.highest_load_dump_A);
  failed_starts += fared.ledger.failed_starts;
  locked_out_h += fared.locked_out_h;
  deepest_charge = std::min(deepest_charge, fared.lowest_charge);
  const cell::LifeFigures& life = candidate.chemistry->life;
  add_wear(wear_shortest, ageing::wear_of(life, fared.exposure, ageing::Spread::kShortest));
  add_wear(wear_typical, ageing::wear_of(life, fared.exposure, ageing::Spread::kTypical));
  add_wear(wear_longest, ageing::wear_of(life, fared.exposure, ageing::Spread::kLongest));
}

Proving::Proving(const Plan& plan, std::span<const season::LegSky> skies,
                 const sky::ClearnessMatrices& matrices)
    : plan_(&plan), maker_(circumstances_of(plan, skies, matrices)) {}

season::System<double> Proving::system_of(const Candidate& candidate, const cell::Tables& tables) const {
  season::Installation installation;
  installation.inverter = plan_->inverter ? &*plan_->inverter : nullptr;
  installation.engine = plan_->engine ? &*plan_->engine : nullptr;
  installation.mains = plan_->mains ? &*plan_->mains : nullptr;
  installation.wind = plan_->wind ? &*plan_->wind : nullptr;
  installation.water = plan_->water ? &*plan_->water : nullptr;
  installation.generator = plan_->generator ? &*plan_->generator : nullptr;
  installation.solar = plan_->solar_charging;
  installation.loads = plan_->loads;
  installation.surroundings = plan_->surroundings;
  installation.main_cable_ohm = cable_ohm(plan_->main_cable);
  installation.inverter_cable_ohm = cable_ohm(plan_->inverter_cable);
  installation.system_V = units::as_volts(plan_->system_voltage);
  installation.usable_depth =
      plan_->depth_rule == DepthRule::kPractice ? candidate.chemistry->usable_depth : 1.0;
  return season::make_system(*candidate.battery, *candidate.chemistry, tables, candidate.layout,
                             installation);
}

std::vector<season::Fared> Proving::run_season(std::span<const Candidate* const> candidates,
                                               std::uint64_t season_number) const {
  const season::Series series = maker_.draw(season_number);
  std::map<const cell::Chemistry*, cell::Tables> tables;
  for (const Candidate* c : candidates) {
    if (!tables.contains(c->chemistry)) tables.emplace(c->chemistry, cell::make_tables(*c->chemistry));
  }
  std::vector<season::System<double>> systems;
  systems.reserve(candidates.size());
  for (const Candidate* c : candidates) systems.push_back(system_of(*c, tables.at(c->chemistry)));
  const double start_C = series.minutes.empty() ? 20.0 : series.minutes.front().surroundings_C;
  std::vector<season::Passage> passages;
  passages.reserve(candidates.size());
  for (std::size_t i = 0; i < candidates.size(); ++i) {
    passages.emplace_back(systems[i], *candidates[i]->chemistry, series.start_utc_s, start_C);
  }
  // Day by day for all banks, so that the shared minutes stay in the processor's cache.
  for (std::size_t from = 0; from < series.minutes.size(); from += kPiece) {
    const std::size_t count = std::min(kPiece, series.minutes.size() - from);
    for (season::Passage& passage : passages) passage.run({series.minutes.data() + from, count});
  }
  std::vector<season::Fared> fared;
  fared.reserve(passages.size());
  for (season::Passage& passage : passages) fared.push_back(passage.finish());
  return fared;
}

season::Fared Proving::trace(const Candidate& candidate, std::uint64_t season_number, season::Trace& trace,
                             season::Series* series_out) const {
  season::Series series = maker_.draw(season_number);
  const cell::Tables tables = cell::make_tables(*candidate.chemistry);
  const season::System<double> system = system_of(candidate, tables);
  const double start_C = series.minutes.empty() ? 20.0 : series.minutes.front().surroundings_C;
  season::Passage passage(system, *candidate.chemistry, series.start_utc_s, start_C, &trace);
  passage.run(series.minutes);
  season::Fared fared = passage.finish();
  if (series_out != nullptr) *series_out = std::move(series);
  return fared;
}

}  // namespace voltwright::advise
