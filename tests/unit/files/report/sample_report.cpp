#include "tests/unit/files/report/sample_report.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/unit/season/sample_system.h"

namespace voltwright::files {

namespace {

constexpr std::int64_t kStart_utc_s = 1756684800;  // 1 September 2025
constexpr std::int64_t kDay_s = 86400;

/// A made-up course of state of charge, powers and temperatures with one dip in midwinter.
ReportSeason season_of(std::string label, std::uint64_t number, int days, double dip) {
  ReportSeason s;
  s.label = std::move(label);
  s.season = number;
  s.trace.start_utc_s = kStart_utc_s;
  const int dip_day = days / 3;
  float least = 2.0F;
  for (int day = 0; day < days; ++day) {
    const double near = std::exp(-0.1 * (day - dip_day) * (day - dip_day));
    float low = 2.0F, high = 0.0F;
    for (int minute = 0; minute < 1440; ++minute) {
      const double t = minute / 1440.0;
      const double wave = std::sin(2.0 * std::numbers::pi * t);
      const double charge = std::clamp(0.86 - dip * near + 0.12 * wave, 0.2, 1.0);
      const bool driving = minute > 540 && minute < 660;
      s.trace.charge.push_back(static_cast<float>(charge));
      s.trace.bus_V.push_back(13.2F);
      s.trace.bank_A.push_back(driving ? -38.0F : static_cast<float>(4.0 + 3.0 * wave));
      const double year = 4.0 - 14.0 * near;
      s.trace.bank_C.push_back(static_cast<float>(year + 8.0 + 1.5 * wave));
      s.outside_C.push_back(static_cast<float>(year - 5.0 * wave));
      low = std::min(low, s.trace.charge.back());
      high = std::max(high, s.trace.charge.back());
      if (s.trace.charge.back() < least) {
        least = s.trace.charge.back();
        s.fared.lowest_charge_utc_s = kStart_utc_s + day * kDay_s + minute * 60;
      }
    }
    s.fared.daily_low.push_back(low);
    s.fared.daily_high.push_back(high);
  }
  s.fared.lowest_charge = static_cast<double>(least);
  if (dip > 0.5) {
    const std::int64_t at = kStart_utc_s + dip_day * kDay_s + 58200;
    s.fared.events.push_back({season::EventKind::kShort, at, 50.0, 131.0});
    s.fared.events.push_back({season::EventKind::kShort, at + kDay_s - 7200, 25.0, 40.0});
    s.fared.ledger.unmet_essential_Wh = 171.0;
    s.fared.ledger.short_h = 1.25;
    s.fared.longest_short_min = 50.0;
  }
  return s;
}

advise::Trial trial_of(const SampleReport& sample, std::size_t kind, int parallel, int seasons, int shorts) {
  advise::Trial t;
  t.candidate.battery = &sample.batteries[kind];
  t.candidate.chemistry = &sample.chemistries[kind];
  t.candidate.layout = {1, parallel, 0.0};
  t.candidate.figures = bank::bank_figures(sample.batteries[kind], t.candidate.layout);
  for (int i = 0; i < seasons; ++i) {
    advise::SeasonNote note;
    note.season = static_cast<std::uint64_t>(i);
    note.ran_short = i < shorts;
    note.lowest_charge = note.ran_short ? 0.2 : 0.5;
    note.longest_short_min = note.ran_short ? 50.0 : 0.0;
    note.discharged_Wh = 256000.0;
    t.seasons.push_back(note);
  }
  const double n = seasons;
  season::Ledger<double>& l = t.ledger;
  l.engine_Wh = 235412.0 * n;
  l.solar_Wh = 169133.0 * n;
  l.mains_Wh = 84716.0 * n;
  l.direct_Wh = 310250.0 * n;
  l.inverter_Wh = 140117.0 * n;
  l.heater_Wh = 12021.0 * n;
  l.main_cable_Wh = 2411.0 * n;
  l.inverter_cable_Wh = 1203.0 * n;
  l.resistance_Wh = 14113.0 * n;
  l.relaxing_Wh = 7312.0 * n;
  l.side_Wh = 817.0 * n;
  l.self_discharge_Wh = 1300.0 * n;
  l.drawn_from_store_Wh = l.out_Wh() - l.engine_Wh - l.solar_Wh - l.mains_Wh;
  l.charged_Wh = 280000.0 * n;
  l.discharged_Wh = 256000.0 * n;
  l.solar_left_Wh = 100900.0 * n;
  t.minutes = 525600.0;
  t.lowest_V = 11.6;
  t.highest_V = 14.4;
  t.coldest_C = -4.0;
  t.hottest_C = 31.0;
  t.highest_discharge_A = 62.0;
  t.wear_shortest = {0.05 * n, 0.04 * n};
  t.wear_typical = {0.03 * n, 0.035 * n};
  t.wear_longest = {0.02 * n, 0.03 * n};
  return t;
}

}  // namespace

std::unique_ptr<SampleReport> sample_report(int days, bool nothing_holds) {
  auto s = std::make_unique<SampleReport>();
  s->chemistries = {season::flat_chemistry(), season::two_tank_chemistry()};
  s->chemistries[0].plain_name = "iron-phosphate";
  s->chemistries[1].plain_name = "lead-acid AGM";
  s->batteries = {season::battery_of(s->chemistries[0], 100.0), season::battery_of(s->chemistries[1], 100.0)};
  s->batteries[0].name = "LFP 12.8 V 100 Ah";
  s->batteries[0].price_is_assumption = true;
  s->batteries[1].name = "AGM 12 V 100 Ah";
  advise::Plan& plan = s->plan;
  plan.name = "Night ferry <Åse> & \"sons\"";
  plan.note = "Down to -26 degC; it's parked outside at weekends.";
  plan.seed = 20251;
  plan.seasons = 1000;
  plan.currency = "EUR";
  plan.money = cost::Money{};
  plan.money->per_dollar = 0.9;
  plan.limits.chance_of_shortfall = units::fraction(0.02);
  plan.limits.mass = units::kilograms(95.0);
  plan.limits.price = units::money(nothing_holds ? 300.0 : 3000.0);
  plan.mains = supply::MainsCharger{};
  journey::Leg leg;
  leg.place.name = "Quay 7";
  leg.start_utc_s = kStart_utc_s;
  leg.end_utc_s = kStart_utc_s + days * kDay_s;
  plan.legs = {leg};
  std::vector<advise::Trial> trials;
  for (int parallel = 1; parallel <= 8; ++parallel) {
    const int shorts[] = {1000, 260, 24, 1, 0, 0, 0, 0};
    trials.push_back(
        trial_of(*s, 0, parallel, parallel < 2 ? 20 : 1000, parallel < 2 ? 20 : shorts[parallel - 1]));
    trials.push_back(trial_of(*s, 1, parallel, parallel < 4 ? 20 : 1000, parallel < 4 ? 20 : 22));
  }
  trials[1].candidate.fitted_now = true;
  trials[1].candidate.layout.lost_capacity = 0.15;
  s->answer = advise::recommend(plan, std::move(trials));
  s->costs = advise::life_cost(plan, {}, s->answer);
  ReportInput& in = s->input;
  in.plan = &s->plan;
  in.answer = &s->answer;
  in.costs = &s->costs;
  in.worst = season_of("The worst season", 942, days, 0.66);
  in.median = season_of("The median season", 17, days, 0.3);
  in.assumptions = {"Each season starts with a full bank.", "Loads < 1 W are left out & not counted."};
  in.climate_origins = {"Quay 7: three stations within 60 km."};
  in.sources = {"Wilson, E. B.: Probable inference. J. Am. Stat. Assoc. 22, 1927."};
  in.plan_mark = "7c1e40d9";
  in.catalogue_mark = "9b52aa01";
  in.engine_version = "0.1.0";
  return s;
}

}  // namespace voltwright::files
