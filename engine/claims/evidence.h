#pragma once
// What claims are held against: dated facts of the chemistries and the stated figures of other batteries.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/cell/chemistry.h"
#include "engine/claims/sheet.h"
#include "engine/units/ranged.h"

namespace voltwright::claims {

/// Energy per mass [Wh/kg] or per volume [Wh/L] as published of a year, with who says so.
struct DatedDensity {
  int year = 0;
  Level level = Level::kCell;
  units::Ranged density;
  std::string source;
  bool assumed = false;  // nothing published stands behind it, so it cannot carry a doubt by itself
};

/// A chemistry with the facts that its record carries for charts and claims.
struct Kind {
  cell::Chemistry chemistry;
  std::vector<DatedDensity> per_mass;    // Wh/kg
  std::vector<DatedDensity> per_volume;  // Wh/L
  std::string life_source;
  std::string temperature_source;
  std::string voltage_source;
  std::string self_discharge_source;
  std::string practice_source;  // of the usable depth
};

/// One battery as somebody stated it, without its name. Empty = not stated.
struct StatedBattery {
  std::string kind;  // chemistry id
  double nominal_V = 0.0;
  double capacity_Ah = 0.0;
  std::optional<double> mass_kg;
  std::optional<double> volume_L;
  std::optional<double> continuous_A;
  std::optional<double> peak_A;
  std::optional<double> charge_A;
  std::optional<double> cycles;
  std::optional<double> price_USD;
  int year = 0;

  double energy_Wh() const { return nominal_V * capacity_Ah; }
};

struct Evidence {
  std::vector<Kind> kinds;
  std::vector<StatedBattery> stated;
  std::string stated_source;  // who says what `stated` holds

  const Kind* kind(std::string_view id) const;
};

/// A figure of one stated battery, nothing if it cannot be had from what is stated.
using StatedFigure = std::optional<double> (*)(const StatedBattery&);

std::optional<double> stated_Wh_per_kg(const StatedBattery& battery);
std::optional<double> stated_Wh_per_L(const StatedBattery& battery);
std::optional<double> stated_kg_per_L(const StatedBattery& battery);
std::optional<double> stated_continuous_per_h(const StatedBattery& battery);
std::optional<double> stated_peak_per_h(const StatedBattery& battery);
std::optional<double> stated_charge_per_h(const StatedBattery& battery);
std::optional<double> stated_cycles(const StatedBattery& battery);
std::optional<double> stated_USD_per_kWh(const StatedBattery& battery);

/// Values in rising order.
class Sample {
 public:
  explicit Sample(std::vector<double> values);

  std::size_t size() const { return values_.size(); }
  /// The value below which a share [0, 1] of the sample lies, linear between neighbours. Needs one value.
  double quantile(double share) const;
  /// Share of the sample below a value, equal ones counted half.
  double share_below(double value) const;

 private:
  std::vector<double> values_;
};

}  // namespace voltwright::claims
