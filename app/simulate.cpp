#include "app/simulate.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "files/suggest.h"

namespace voltwright::app {

namespace {

base::Problem wrong_bank(const std::string& text, const std::string& what, const std::string& remedy) {
  base::Problem problem;
  problem.field = "bank";
  problem.what = what;
  problem.given = text;
  problem.remedy = remedy;
  return problem;
}

/// "2s3p" to its two counts.
std::optional<std::pair<int, int>> parse_counts(const std::string& text) {
  int series = 0;
  int parallel = 0;
  const char* const end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, series);
  if (first.ec != std::errc{} || first.ptr == end || *first.ptr != 's') return std::nullopt;
  const auto second = std::from_chars(first.ptr + 1, end, parallel);
  if (second.ec != std::errc{} || second.ptr + 1 != end || *second.ptr != 'p') return std::nullopt;
  if (series < 1 || series > 16 || parallel < 1 || parallel > 64) return std::nullopt;
  return std::pair{series, parallel};
}

}  // namespace

base::Result<advise::NamedBank> parse_bank(const std::string& text, const advise::Plan& plan,
                                           const files::Catalogue& catalogue) {
  const std::size_t colon = text.find(':');
  advise::NamedBank named;
  named.battery = text.substr(0, colon);
  const bank::Battery* battery = catalogue.battery(named.battery);
  if (battery == nullptr) {
    std::vector<std::string> ids;
    for (const bank::Battery& b : catalogue.batteries) ids.push_back(b.id);
    const std::string near = files::nearest_word(named.battery, ids);
    return wrong_bank(
        text, "This battery is not in the catalogue.",
        !near.empty() ? "Did you mean \"" + near + "\"?" : "See `voltwright catalogue batteries`.");
  }
  named.in_series =
      std::max(1, static_cast<int>(std::lround(units::as_volts(plan.system_voltage) / battery->system_V)));
  if (colon != std::string::npos) {
    const auto counts = parse_counts(text.substr(colon + 1));
    if (!counts) {
      return wrong_bank(text, "The counts after the colon are not readable.",
                        "Write for example \"" + named.battery + ":1s2p\" for two in parallel.");
    }
    named.in_series = counts->first;
    named.in_parallel = counts->second;
  }
  const double bank_V = battery->system_V * named.in_series;
  if (std::fabs(bank_V - units::as_volts(plan.system_voltage)) > 1e-9 ||
      named.in_series > battery->max_in_series) {
    return wrong_bank(text, "This bank does not give the plan's system voltage.",
                      "Choose a battery and a series count that give " +
                          std::to_string(static_cast<int>(units::as_volts(plan.system_voltage))) + " V.");
  }
  return named;
}

base::Result<SimulateResponse> simulate(const SimulateRequest& request) {
  auto hand = plan_on_hand(request.plan_path, request.start);
  if (!hand) return hand.problems();
  SimulateResponse response;
  response.hand = std::move(hand).value();
  const files::Catalogue& catalogue = response.hand.catalogue;
  const auto named = parse_bank(request.bank, response.hand.plan, catalogue);
  if (!named) return named.problems();
  response.candidate = advise::named_candidate(named.value(), catalogue.chemistries, catalogue.batteries);
  if (response.candidate.battery == nullptr || !response.candidate.chemistry->simulated) {
    return wrong_bank(
        request.bank, "This chemistry is not simulated yet.",
        response.candidate.chemistry != nullptr ? response.candidate.chemistry->not_simulated_because : "");
  }
  const advise::Proving proving(response.hand.plan, response.hand.skies, response.hand.climates.matrices());
  season::Series series;
  response.shown.season = request.season;
  response.shown.fared = proving.trace(response.candidate, request.season, response.shown.trace, &series);
  response.shown.outside_C = std::move(series.outside_C);
  return response;
}

}  // namespace voltwright::app
