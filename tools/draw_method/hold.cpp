// Which kinds are drawn, with what rates.
#include <algorithm>

#include "files/catalogue.h"
#include "tools/draw_method/page.h"

namespace voltwright::tools {

namespace {

/// Where no battery of the kind is in the catalogue.
constexpr double kContinuousIfUnknown_per_h = 1.0;
/// No charger of a house battery is larger than this.
constexpr double kLargestCharger_per_h = 0.5;

Kind make_kind(const cell::Chemistry& record, const files::Catalogue& catalogue) {
  Kind kind{&record, cell::make_tables(record), 0.0, kLargestCharger_per_h};
  for (const bank::Battery& battery : catalogue.batteries) {
    if (battery.chemistry != record.id) continue;
    kind.continuous_per_h = std::max(kind.continuous_per_h, battery.continuous_A / battery.capacity_Ah);
    kind.charger_per_h = std::min(kind.charger_per_h, battery.charge_A / battery.capacity_Ah);
  }
  if (kind.continuous_per_h <= 0.0) kind.continuous_per_h = kContinuousIfUnknown_per_h;
  return kind;
}

/// The rate of a published charge, so that picture and points agree; `otherwise` where there is none.
double published_charger(const std::vector<PublishedSet>& sets, double otherwise) {
  for (const PublishedSet& set : sets) {
    for (const Series& series : set.series) {
      if (series.measured == Measured::kChargeVoltageByCharge) return series.current_A / set.capacity_Ah;
    }
  }
  return otherwise;
}

}  // namespace

base::Result<std::vector<HeldKind>> hold_catalogue() {
  static const auto kCatalogue = files::read_catalogue();  // the kinds point into it
  if (!kCatalogue) return kCatalogue.problems();
  const files::Catalogue& catalogue = kCatalogue.value();
  const auto published = read_published(files::embedded_catalogue());
  if (!published) return published.problems();

  std::vector<HeldKind> kinds;
  for (const cell::Chemistry& record : catalogue.chemistries) {
    const auto& all = published.value();
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const auto& curves) { return curves.chemistry == record.id; });
    if (!record.simulated && found == all.end()) continue;
    HeldKind held{make_kind(record, catalogue), {}, {}};
    if (found != all.end()) held.sets = found->sets;
    held.kind.charger_per_h = published_charger(held.sets, held.kind.charger_per_h);
    for (const PublishedSet& set : held.sets) held.rows.push_back(residuals(held.kind, set));
    kinds.push_back(std::move(held));
  }
  base::Problems problems;
  for (const PublishedCurves& curves : published.value()) {
    if (catalogue.chemistry(curves.chemistry) != nullptr) continue;
    base::Problem problem;
    problem.what = "No chemistry has this id.";
    problem.where.file = "published_curves/" + curves.chemistry + "-curves.json";
    problem.field = "chemistry";
    problem.given = curves.chemistry;
    problem.remedy = "Use the file name of a record in chemistries/.";
    problems.push_back(std::move(problem));
  }
  if (!problems.empty()) return problems;
  return kinds;
}

}  // namespace voltwright::tools
