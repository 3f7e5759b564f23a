#include "tests/whole/practice_fixture.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/caution.h"
#include "files/climate_override.h"
#include "files/gazetteer.h"
#include "files/plan.h"

namespace voltwright::whole {

namespace {

const files::Gazetteer& gazetteer() {
  static const files::Gazetteer kGazetteer = files::Gazetteer::built_in().value();
  return kGazetteer;
}

const files::ClimateTable& climates() {
  static const files::ClimateTable kClimates = files::ClimateTable::built_in().value();
  return kClimates;
}

}  // namespace

const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

Practice::Practice(const std::string& text) {
  auto read = files::read_plan(text, "practice.toml", catalogue(), gazetteer());
  if (!read) {
    for (const base::Problem& problem : read.problems()) ADD_FAILURE() << base::to_text(problem);
    return;
  }
  plan_ = std::move(read).value().plan;
  for (const journey::Leg& leg : plan_.legs) {
    auto climate = files::climate_of(climates(), leg.place.site, leg.climate);
    EXPECT_TRUE(climate.ok()) << "no climate for " << leg.place.name;
    season::LegSky sky;
    if (climate) sky.climate = std::move(climate).value();
    if (leg.end_place) {
      auto end = climates().at(leg.end_place->site);
      EXPECT_TRUE(end.ok()) << "no climate for " << leg.end_place->name;
      if (end) sky.end_climate = std::move(end).value();
    }
    skies_.push_back(std::move(sky));
  }
}

advise::Candidate Practice::bank(const std::string& battery, int in_parallel) const {
  advise::NamedBank named;
  named.battery = battery;
  named.in_parallel = in_parallel;
  const bank::Battery* entry = catalogue().battery(battery);
  EXPECT_NE(entry, nullptr) << battery;
  if (entry != nullptr) {
    named.in_series = static_cast<int>(std::lround(units::as_volts(plan_.system_voltage) / entry->system_V));
  }
  return advise::named_candidate(named, catalogue().chemistries, catalogue().batteries);
}

Told Practice::tell(const std::string& battery, int in_parallel, std::uint64_t season) const {
  return tell(bank(battery, in_parallel), season);
}

Told Practice::tell(const advise::Candidate& bank, std::uint64_t season) const {
  const advise::Proving proving(plan_, skies_, climates().matrices());
  Told told;
  told.fared = proving.trace(bank, season, told.trace, &told.series);
  expect_closed(told.fared.ledger);
  return told;
}

std::string Practice::caution(const std::string& title, const advise::Candidate& bank,
                              const Told& told) const {
  advise::Trial trial;
  trial.candidate = bank;
  trial.add(0, told.fared);
  for (const advise::Caution& caution : advise::cautions_of(plan_, trial)) {
    if (caution.title == title) return caution.text;
  }
  return {};
}

std::vector<advise::Trial> Practice::race(const std::vector<advise::Candidate>& banks,
                                          const advise::Executor& executor) const {
  const advise::Proving proving(plan_, skies_, climates().matrices());
  return advise::prove(plan_, proving, banks, executor, {});
}

season::Series Practice::draw(std::uint64_t season) const {
  return advise::Proving(plan_, skies_, climates().matrices()).draw(season);
}

void expect_closed(const season::Ledger<double>& ledger) {
  // Whatever the store gave or took counts as having gone through, so that a lone cycle is not a throughput
  // of nothing.
  const double through_Wh = ledger.solar_Wh + ledger.engine_Wh + ledger.mains_Wh +
                            std::abs(ledger.drawn_from_store_Wh) + ledger.charged_Wh + ledger.discharged_Wh;
  ASSERT_GT(through_Wh, 0.0);
  EXPECT_NEAR(ledger.in_Wh(), ledger.out_Wh(), 1e-9 * through_Wh);
  EXPECT_LE(ledger.residual_Wh, 1e-9 * through_Wh);
}

advise::Candidate bank_of(const bank::Battery& battery, const cell::Chemistry& chemistry, int in_series,
                          int in_parallel) {
  advise::Candidate candidate;
  candidate.battery = &battery;
  candidate.chemistry = &chemistry;
  candidate.layout.in_series = in_series;
  candidate.layout.in_parallel = in_parallel;
  candidate.figures = bank::bank_figures(battery, candidate.layout);
  return candidate;
}

int times(const Told& told, season::EventKind kind) {
  const auto& events = told.fared.events;
  return static_cast<int>(
      std::count_if(events.begin(), events.end(), [kind](const auto& e) { return e.kind == kind; }));
}

double drawn_Ah(const season::Trace& trace, std::size_t from, std::size_t to) {
  double sum_Ah = 0.0;
  for (std::size_t i = from; i < to && i < trace.bank_A.size(); ++i) {
    sum_Ah += static_cast<double>(trace.bank_A[i]) / 60.0;
  }
  return sum_Ah;
}

double hours_until_loads_off(const Told& told) {
  for (std::size_t i = 0; i < told.trace.unmet_W.size(); ++i) {
    if (told.trace.unmet_W[i] > 0.0F) return static_cast<double>(i) / 60.0;
  }
  return told.fared.minutes / 60.0;
}

std::string warm_cabin(const std::string& top_keys) {
  return "format = 1\nseasons = 1\n" + top_keys + R"(
[bank]
place = "cabin"
cabin_heated_to = "25 degC"

[cables.main]
one_way = "1 m"
area = "50 mm2"

[cables.inverter]
one_way = "1 m"
area = "50 mm2"
)";
}

std::string winter_stay(int days, const std::string& more_keys) {
  return R"(
[[leg]]
lat = 60
lon = 10
elevation = "200 m"
zone = "Etc/UTC"
from = 2027-01-10
days = )" +
         std::to_string(days) + "\n" + more_keys;
}

double charging_A(const Told& told, std::size_t minute) {
  return -static_cast<double>(told.trace.bank_A.at(minute));
}

Practice half_empty_and_driven(const std::string& engine) {
  return Practice(warm_cabin() + R"(
[[load]]
name = "Night load"
power = "150 W"
window = "00:00-09:00"

[engine]
)" + engine + "\n" +
                  winter_stay(1, "drive = \"2 h/day\"\ndrive_from = \"09:00\"\n"));
}

Practice nightly_on_mains(const std::string& power, int days) {
  return Practice(warm_cabin() + R"(
[mains]
output_limit = "20 A"

[[load]]
name = "Night"
window = "00:00-05:00"
power = ")" + power +
                  "\"\n" + winter_stay(days, "shore = \"05:00-23:59\"\n"));
}

}  // namespace voltwright::whole
