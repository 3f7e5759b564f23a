#include "engine/claims/density.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;

constexpr double kRounding = 1.02;       // of the highest figure that others state
constexpr double kAssumedSpread = 1.25;  // an assumed highest figure cannot carry a doubt by itself
constexpr double kCellSpread = 1.1;      // cells above the best dated figure may exist
constexpr double kLeadAcidMost = 1.4;    // times the best lead-acid battery seen: none of any build
constexpr double kWellAbove = 1.1;       // a figure of the cells against the sheet's own
constexpr double kBest18650_Ah = 3.6;    // 3.5 Ah are sold, 3.6 as rounded up (common practice, no source)

/// The last year whose facts count for a sheet of `year`: the first dated one at or after it.
int last_year(const std::vector<DatedDensity>& facts, Level level, const std::optional<int>& year) {
  int last = std::numeric_limits<int>::max();
  if (!year) return last;
  for (const DatedDensity& fact : facts) {
    if (fact.level == level && fact.year >= *year) last = std::min(last, fact.year);
  }
  return last;
}

/// The highest figure so far, with who says so.
struct Most {
  std::optional<double>& value;
  std::string& source;
  bool& assumed;
};

void take_more(const Most& most, double value, const std::string& said, bool assumed) {
  if (most.value && *most.value >= value) return;
  most.value = value;
  most.source = said;
  most.assumed = assumed;
}

Most cells_of(Reached& r) { return {r.most_cell, r.cell_source, r.cell_assumed}; }
Most finished_of(Reached& r) { return {r.most_finished, r.finished_source, r.finished_assumed}; }

std::string dated(const DatedDensity& fact) { return fact.source + " (" + std::to_string(fact.year) + ")"; }

void add_facts(const std::vector<DatedDensity>& facts, const std::optional<int>& year, Reached& r) {
  const int last_cell = last_year(facts, Level::kCell, year);
  const int last_finished = last_year(facts, Level::kBattery, year);
  for (const DatedDensity& fact : facts) {
    if (fact.level == Level::kCell) {
      r.least_cell = std::min(r.least_cell.value_or(fact.density.min), fact.density.min);
      if (fact.year <= last_cell) take_more(cells_of(r), fact.density.max, dated(fact), fact.assumed);
    } else if (fact.year <= last_finished) {
      take_more(finished_of(r), fact.density.max, dated(fact), fact.assumed);
    }
  }
}

struct Unit {
  const char* unit;
  const char* words;
  const char* id;
};

Unit unit_of(bool per_mass) {
  return per_mass ? Unit{"Wh/kg", "Energy per mass", "possible.energy_per_mass"}
                  : Unit{"Wh/L", "Energy per volume", "possible.energy_per_volume"};
}

std::string working(const Subject& s, bool per_mass, double density) {
  const Unit unit = unit_of(per_mass);
  if (per_mass && s.energy_Wh && s.sheet.mass_kg) {
    return s.energy_words + " / " + figure(*s.sheet.mass_kg, "kg") + " = " + figure(density, unit.unit);
  }
  if (!per_mass && s.energy_Wh && s.volume_L) {
    return s.energy_words + " / " + figure(*s.volume_L, "L") + " = " + figure(density, unit.unit);
  }
  return figure(density, unit.unit) + " as stated";
}

void judge_cell(const Subject& s, const Reached& r, double density, Finding& f) {
  const double best = r.most_cell.value_or(0.0);
  f.most = best;
  f.source = r.cell_source;
  if (density <= best) {
    f.severity = Severity::kHolds;
    f.say = "Cells of this kind have reached that.";
  } else if (density <= r.cell_limit()) {
    f.severity = Severity::kNote;
    f.say = "It is a little above the best dated figure of such cells. Ask for the maker's test report.";
  } else {
    f.severity = Severity::kContradiction;
    f.say = "No " + kind_words(s) + " cell of its time is known to reach " + figure(density, f.unit) +
            "; the best is " + figure(best, f.unit) +
            ". Capacity, mass or size of the sheet cannot be right.";
  }
}

void judge_battery(const Subject& s, const Reached& r, double density, Finding& f) {
  const double seen = r.finished_limit();
  const double best = r.most_finished.value_or(0.0);
  const double best_cell = s.lead_acid ? 0.0 : r.most_cell.value_or(0.0);
  const bool by_cells = best_cell > 0.0;
  const double bound = by_cells ? std::max(best_cell, seen) : best * kLeadAcidMost;
  f.most = seen;
  f.source = r.finished_source;
  if (density <= seen) {
    f.severity = Severity::kHolds;
    f.say = "Finished batteries of this kind have reached that.";
  } else if (density <= bound) {
    f.severity = Severity::kDoubt;
    f.say = "It is above every finished " + kind_words(s) + " battery on record, up to " +
            figure(best, f.unit) + ". Ask for a discharge test and weigh or measure one.";
  } else {
    f.severity = Severity::kContradiction;
    f.most = bound;
    if (by_cells) f.source = r.cell_source;
    f.say = by_cells ? "A finished battery cannot hold more than its bare cells: the best " + kind_words(s) +
                           " cells of its time reach " + figure(best_cell, f.unit) + ", this claims " +
                           figure(density, f.unit) + ". Capacity, mass or size cannot be right."
                     : "It is far above every " + kind_words(s) + " battery on record, up to " +
                           figure(best, f.unit) + ". Capacity, mass or size cannot be right.";
  }
}

/// A finished battery of a kind of which no finished one is on record: its cells are all there is.
void judge_by_cells(const Subject& s, const Reached& r, double density, Finding& f) {
  const double best = r.most_cell.value_or(0.0) * (r.cell_assumed ? kAssumedSpread : 1.0);
  f.most = best;
  f.source = r.cell_source;
  const bool meets = density <= best;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "It is less than bare cells of this kind have reached; of finished batteries nothing is on "
                  "record."
                : "A finished battery cannot hold more than its bare cells: the best " + kind_words(s) +
                      " cells of its time reach " + figure(best, f.unit) + ", this claims " +
                      figure(density, f.unit) + ". Capacity, mass or size cannot be right.";
}

void check_one(const Subject& s, const std::optional<double>& density, bool per_mass, Findings& findings) {
  if (!density) return;
  const Reached r = reached(s, per_mass);
  const bool is_cell = s.sheet.level == Level::kCell && !s.lead_acid;
  if (is_cell ? !r.most_cell : !r.most_finished && !r.most_cell) return;
  const Unit unit = unit_of(per_mass);
  // A bare ratio that is a figure of the cells is told as such.
  if (!is_cell && reads_like_cell(s, *density, std::nullopt, per_mass) &&
      (per_mass ? !s.sheet.mass_kg : !s.volume_L)) {
    return;
  }
  Finding f;
  f.id = unit.id;
  f.unit = unit.unit;
  f.claim = std::string(unit.words) + " " + figure(*density, unit.unit);
  f.number = *density;
  f.working = working(s, per_mass, *density);
  if (is_cell) {
    judge_cell(s, r, *density, f);
  } else if (!r.most_finished) {
    judge_by_cells(s, r, *density, f);
  } else {
    judge_battery(s, r, *density, f);
  }
  findings.push_back(std::move(f));
}

void check_18650(const Subject& s, Findings& findings) {
  if (s.sheet.form != "18650" || !s.sheet.capacity_Ah) return;
  Finding f;
  f.id = "possible.cell_capacity";
  f.claim = "An 18650 cell of " + figure(*s.sheet.capacity_Ah, "Ah");
  f.number = *s.sheet.capacity_Ah;
  f.unit = "Ah";
  f.most = kBest18650_Ah;
  f.source = "the best on sale are rated 3.5 Ah (common practice, no source)";
  f.working = figure(*s.sheet.capacity_Ah, "Ah") + " against " + figure(kBest18650_Ah, "Ah");
  const bool meets = *s.sheet.capacity_Ah <= kBest18650_Ah;
  f.severity = meets ? Severity::kHolds : Severity::kContradiction;
  f.say = meets ? "Cells of this size have reached that."
                : "No cell of this size holds that much; about 3.5 Ah is the most. Cells with such labels "
                  "have been measured at 1 Ah and less.";
  findings.push_back(std::move(f));
}

}  // namespace

double Reached::cell_limit() const {
  return most_cell.value_or(0.0) * (cell_assumed ? kAssumedSpread : kCellSpread);
}

double Reached::finished_limit() const {
  return most_finished.value_or(0.0) * (finished_assumed ? kAssumedSpread : kRounding);
}

Reached reached(const Subject& subject, bool per_mass) {
  Reached r;
  const StatedFigure figure_of = per_mass ? stated_Wh_per_kg : stated_Wh_per_L;
  for (const Kind* kind : subject.kinds) {
    add_facts(per_mass ? kind->per_mass : kind->per_volume, subject.sheet.year, r);
    for (const StatedBattery& stated : subject.evidence.stated) {
      const auto density = stated.kind == kind->chemistry.id ? figure_of(stated) : std::nullopt;
      if (density) take_more(finished_of(r), *density, subject.evidence.stated_source, false);
    }
  }
  return r;
}

bool reads_like_cell(const Subject& subject, double claimed, std::optional<double> quotient, bool per_mass) {
  if (subject.sheet.level == Level::kCell || subject.lead_acid) return false;
  const Reached r = reached(subject, per_mass);
  if (!r.least_cell || !r.most_cell || !r.most_finished) return false;
  const double well_above = quotient ? kWellAbove * *quotient : 0.0;
  return claimed > well_above && claimed > r.finished_limit() && claimed >= *r.least_cell &&
         claimed <= r.cell_limit();
}

void check_density(const Subject& subject, Findings& findings) {
  check_one(subject, subject.Wh_per_kg, true, findings);
  check_one(subject, subject.Wh_per_L, false, findings);
  check_18650(subject, findings);
}

}  // namespace voltwright::claims
