#include "app/compose.h"

#include <algorithm>

#include "engine/advise/wording.h"
#include "engine/units/parse.h"
#include "files/catalogue.h"
#include "files/composed_record.h"
#include "files/suggest.h"

namespace voltwright::app {

namespace {

constexpr double kMillimetresPerMetre = 1e3;

/// Reads one "value unit" text into `target` by `convert`; an empty text leaves it.
template <class Quantity, class Target>
void take(const std::string& text, const char* option, base::Result<Quantity> (*parse)(std::string_view),
          double (*convert)(Quantity), Target& target, base::Problems& problems) {
  if (text.empty()) return;
  const auto quantity = parse(text);
  if (quantity) {
    target = convert(quantity.value());
    return;
  }
  for (base::Problem problem : quantity.problems()) {
    problem.field = option;
    problems.push_back(std::move(problem));
  }
}

double millimetres(units::Length length) { return units::as_metres(length) * kMillimetresPerMetre; }
double kilograms(units::Mass mass) { return units::as_kilograms(mass); }
double amperes(units::Current current) { return units::as_amperes(current); }
double ohms(units::Resistance resistance) { return units::as_ohms(resistance); }

bank::Overheads overheads_of(const ComposeRequest& r, base::Problems& problems) {
  bank::Overheads o;
  if (r.packing == "square") o.packing = bank::Packing::kSquare;
  take(r.gap, "--gap", units::parse_length, millimetres, o.cylinder_gap_mm, problems);
  take(r.clearance, "--clearance", units::parse_length, millimetres, o.clearance_mm, problems);
  take(r.headroom, "--headroom", units::parse_length, millimetres, o.headroom_mm, problems);
  take(r.wall, "--wall", units::parse_length, millimetres, o.wall_mm, problems);
  take(r.case_mass, "--case-mass", units::parse_mass, kilograms, o.case_kg, problems);
  take(r.joint_resistance, "--joint", units::parse_resistance, ohms, o.joint_ohm, problems);
  take(r.busbar_current, "--busbar-current", units::parse_current, amperes, o.busbar_continuous_A, problems);
  take(r.protection_resistance, "--protection-resistance", units::parse_resistance, ohms, o.protection_ohm,
       problems);
  take(r.protection_mass, "--protection-mass", units::parse_mass, kilograms, o.protection_kg, problems);
  take(r.protection_current, "--protection-current", units::parse_current, amperes, o.protection_continuous_A,
       problems);
  take(r.protection_peak, "--protection-peak", units::parse_current, amperes, o.protection_peak_A, problems);
  return o;
}

base::Problem unknown_cell(const std::string& id, const files::Catalogue& catalogue) {
  std::vector<std::string> ids;
  for (const cell::CellFormat& c : catalogue.cells) ids.push_back(c.id);
  const std::string near = files::nearest_word(id, ids);
  base::Problem problem;
  problem.field = "cell";
  problem.what = "This cell is not in the catalogue.";
  problem.given = id;
  problem.remedy = near.empty() ? "See `voltwright catalogue cells`." : "Did you mean \"" + near + "\"?";
  return problem;
}

/// Price by energy, from the finished batteries of the same chemistry, or of all if there is none.
std::string set_price(bank::Battery& battery, double nominal_Wh, const files::Catalogue& catalogue) {
  const auto over = [&](bool same_kind) {
    std::vector<double> typical;
    int year = 0;
    units::Ranged span;
    for (const bank::Battery& b : catalogue.batteries) {
      if (same_kind && b.chemistry != battery.chemistry) continue;
      const double energy_Wh = b.nominal_V * b.capacity_Ah;
      span.min = typical.empty() ? b.price.min / energy_Wh : std::min(span.min, b.price.min / energy_Wh);
      span.max = std::max(span.max, b.price.max / energy_Wh);
      typical.push_back(b.price.typical / energy_Wh);
      year = std::max(year, b.price_year);
    }
    if (!typical.empty()) {
      const auto middle = typical.begin() + static_cast<std::ptrdiff_t>(typical.size() / 2);
      std::nth_element(typical.begin(), middle, typical.end());
      span.typical = *middle;
    }
    battery.price_year = year;
    battery.price = {span.min * nominal_Wh, span.typical * nominal_Wh, span.max * nominal_Wh};
    return typical.size();
  };
  const std::size_t same = over(true);
  if (same == 0) over(false);
  return (same > 0
              ? "Price per energy of the catalogue's " + std::to_string(same) +
                    " finished batteries of this chemistry"
              : std::string("No finished battery of this chemistry is in the catalogue: price per energy "
                            "of all its batteries, least, median and greatest")) +
         ", times the nominal energy. What cells and parts cost goes first.";
}

std::vector<std::string> cautions_of(const bank::Composition& made, const cell::Chemistry& chemistry) {
  return {
      "Up to " + advise::figure(made.short_circuit_A.max, "A") +
          " can flow into a short circuit. Fit a fuse beside the positive pole that can break that current; "
          "electronic protection is not counted on for it.",
      "Cells that are pierced, shorted, overheated or overcharged can burn. Supervise the voltage of every "
      "cell in series and the temperature, join only cells of one kind, age and state of charge, and leave "
      "welding and assembly to someone trained for it.",
      "It must not be charged below " + advise::figure(chemistry.limits.charge_min_C, "°C") + ".",
      "A planning aid. Local codes, the makers' instructions and a licensed person decide."};
}

}  // namespace

base::Result<ComposeResponse> compose(const ComposeRequest& request) {
  auto read = files::read_catalogue();
  if (!read) return read.problems();
  const files::Catalogue& catalogue = read.value();
  base::Problems problems;
  const bank::Overheads overheads = overheads_of(request, problems);
  const cell::CellFormat* format = catalogue.cell(request.cell);
  if (format == nullptr) problems.push_back(unknown_cell(request.cell, catalogue));
  if (format == nullptr || !problems.empty()) return problems;
  ComposeResponse response;
  response.catalogue_mark = catalogue.mark;
  response.cell = *format;
  response.chemistry = *catalogue.chemistry(format->chemistry);
  auto made = bank::compose(*format, response.chemistry, request.in_series, request.in_parallel, overheads);
  if (!made) return made.problems();
  response.made = std::move(made).value();
  response.cautions = cautions_of(response.made, response.chemistry);
  const std::string price_from = set_price(response.made.battery, response.made.nominal_Wh, catalogue);
  if (response.made.house.system.system_V > 0.0) {
    response.record = files::composed_record(response.made, *format, price_from);
  }
  return response;
}

}  // namespace voltwright::app
