#include <fmt/format.h>

#include "engine/advise/wording.h"
#include "files/report/markup.h"
#include "files/report/page.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

namespace {

const std::vector<std::string>& method() {
  static const std::vector<std::string> kMethod = {
      std::string("Each season draws its weather, its use and its events anew from the seed; every bank "
                  "meets the same draws. Time runs in minutes."),
      std::string("Sun: daily clearness by Markov matrices, split into hours and minutes, turned onto each "
                  "plane and through a module model; or a typical year from a file, replayed."),
      std::string("Bank: an equivalent circuit of resistance and two relaxing pairs over a voltage curve, "
                  "lead-acid with a two-tank availability; capacity and resistance follow temperature, and "
                  "temperature follows its place."),
      std::string("Bus: at every minute the currents of sources, loads, inverter and bank balance at one "
                  "voltage, with the drop of the cables. Energy in and out is kept in a ledger."),
      std::string("A season ran short if any essential minute was not served. The interval on the share of "
                  "such seasons is the Wilson score at 95\u202F%. Holds means the whole interval lies within "
                  "what is accepted."),
      std::string("Life: cycles counted by rainflow against the cycle table, plus calendar wear by "
                  "temperature, to 80\u202F% of capacity.")};
  return kMethod;
}

}  // namespace

std::string notes(const ReportInput& input) {
  std::string out;
  if (!input.assumptions.empty()) {
    out += section("Assumptions", "Taken as stated; not measured and not asked.",
                   list_of(input.assumptions, "pencil"));
  }
  out += section("Method in brief", "", list_of(method(), "plain"));
  std::vector<std::string> origins = input.climate_origins;
  origins.emplace_back("Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt.");
  origins.emplace_back("Places: GeoNames, CC BY 4.0.");
  out += section("Climate and places", "", list_of(origins, "plain"));
  if (!input.sources.empty()) out += section("Sources", "", list_of(input.sources, "plain"));
  return out;
}

std::string title_block(const ReportInput& input) {
  return block_of({{"Plan", input.plan->name},
                   {"Sheet", "Recommendation"},
                   {"Plan mark", input.plan_mark},
                   {"Catalogue", input.catalogue_mark},
                   {"Engine, seed", fmt::format("{} · {}", input.engine_version, input.plan->seed)},
                   {"Issue", input.issue}});
}

}  // namespace voltwright::files::report
