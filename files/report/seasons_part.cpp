#include <fmt/format.h>

#include <algorithm>

#include "engine/advise/fuel.h"
#include "engine/advise/wording.h"
#include "files/report/charts.h"
#include "files/report/local_day.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

constexpr std::size_t kDay_min = 1440;
constexpr std::size_t kWholeInMinutes = 21 * kDay_min;
constexpr std::size_t kFortnight = 14 * kDay_min;

/// Minute of the largest shortfall, else of the lowest state of charge.
std::size_t worst_minute(const ReportSeason& season) {
  std::int64_t at = season.fared.lowest_charge_utc_s;
  double most = 0.0;
  for (const season::Event& e : season.fared.events) {
    if (e.kind == season::EventKind::kShort && e.energy_Wh > most) most = e.energy_Wh, at = e.start_utc_s;
  }
  return static_cast<std::size_t>(std::max<std::int64_t>(0, at - season.trace.start_utc_s)) / 60;
}

Stretch fortnight(const ReportInput& input, const ReportSeason& season) {
  const std::size_t total = season.trace.charge.size();
  Stretch s{&season, input.plan, usable_depth(input), 0, total};
  if (total <= kWholeInMinutes) return s;
  const std::size_t day = worst_minute(season) / kDay_min;
  s.from = std::min(day > 10 ? (day - 10) * kDay_min : 0, total - kFortnight);
  s.to = s.from + kFortnight;
  return s;
}

std::string season_sentence(const ReportInput& input, const ReportSeason& season) {
  const season::Fared& f = season.fared;
  std::string out = fmt::format("Season {}. ", season.season);
  if (!f.ran_short()) {
    return out + "Essential loads were carried throughout; the bank was emptiest on " +
           moment_text(input.plan->legs, f.lowest_charge_utc_s) + ", at " +
           advise::percent(std::max(0.0, f.lowest_charge)) + ".";
  }
  return out + "Essential loads went without for " + advise::duration_text(f.ledger.short_h * 60.0) +
         " in all, " + advise::duration_text(f.longest_short_min) + " at the longest; " +
         advise::figure(f.ledger.unmet_essential_Wh, "Wh") + " were not delivered.";
}

constexpr const char* kHowToReadMinutes =
    "Above, the state of charge; the line marks where loads are switched off. Middle, power into the bank "
    "upwards and out of it downwards. Below, the temperature of the bank and of the air outside.";

}  // namespace

std::string ledger_part(const ReportInput& input) {
  const advise::Ranked* shown = shown_bank(input);
  if (shown == nullptr || shown->trial.count() == 0) return {};
  const season::Ledger<double>& sum = shown->trial.ledger;
  const double n = shown->trial.count();
  std::string after = "<p class=\"sub\">";
  after +=
      "Sun that could have been had and found no taker: " + value_text(sum.solar_left_Wh / n, "Wh") +
      ". Held back by the output limits of solar controllers: " + value_text(sum.solar_clipped_Wh / n, "Wh") +
      ". Asked for and not delivered: " + value_text(sum.unmet_Wh / n, "Wh") + ", of it essential " +
      value_text(sum.unmet_essential_Wh / n, "Wh") + ".</p>";
  const std::string fuel = advise::fuel_sentences(*input.plan, sum, n);
  if (!fuel.empty()) after += "<p class=\"sub\">" + escaped(fuel) + "</p>";
  return section(
      "Where the energy came from and went, mean season",
      "Heights are energy; both columns are equally high. The box in the middle is what went through "
      "the bank; the rest was used as it came.",
      ledger_chart(shown->trial) + after);
}

std::string worst_part(const ReportInput& input) {
  const ReportSeason& season = input.worst;
  if (season.trace.charge.empty()) return {};
  const std::string heading = season.label.empty() ? "The worst season" : season.label;
  std::string out = "<p class=\"sub strong\">" + escaped(season_sentence(input, season)) + "</p>";
  const Stretch s = fortnight(input, season);
  if (season.trace.charge.size() <= kWholeInMinutes) {
    return section(heading, kHowToReadMinutes, out + stretch_chart(s));
  }
  return section(
             heading,
             "The band runs from each day's lowest to its highest state of charge; the strong edge is the "
             "lowest. Strokes on the base line are shortfalls.",
             out + band_chart(season, *input.plan, usable_depth(input))) +
         section("Its worst fortnight", kHowToReadMinutes, stretch_chart(s));
}

std::string median_part(const ReportInput& input) {
  const ReportSeason& season = input.median;
  if (season.trace.charge.empty()) return {};
  const std::string heading = season.label.empty() ? "The median season" : season.label;
  const std::string sentence = "<p class=\"sub strong\">" + escaped(season_sentence(input, season)) + "</p>";
  if (season.trace.charge.size() <= kWholeInMinutes) {
    const Stretch s{&season, input.plan, usable_depth(input), 0, season.trace.charge.size()};
    return section(heading, kHowToReadMinutes, sentence + stretch_chart(s));
  }
  return section(
      heading,
      "Each stroke hangs from full and runs from the day's highest to its lowest state of charge; the "
      "cell is 100 to 0\u202F%.",
      sentence + day_book(season, *input.plan));
}

}  // namespace voltwright::files::report
