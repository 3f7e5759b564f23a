#pragma once
// The client's plan: everything that is asked, in engine types.
#include <optional>
#include <string>
#include <vector>

#include "engine/bank/location.h"
#include "engine/cost/money.h"
#include "engine/demand/load.h"
#include "engine/journey/leg.h"
#include "engine/sky/clearness.h"
#include "engine/supply/source.h"
#include "engine/units/quantity.h"

namespace voltwright::advise {

/// Two-conductor run: one-way length and conductor area.
struct Cable {
  units::Length one_way;
  units::Area area;
};

struct Limits {
  std::optional<units::Mass> mass;
  std::optional<units::Volume> volume;
  std::optional<units::Money> price;
  std::optional<units::Duration> life;
  units::Fraction chance_of_shortfall = units::fraction(0.05);
};

/// A bank named in the plan: n batteries of one catalogue entry.
struct NamedBank {
  std::string battery;  // catalogue id
  int in_series = 1;
  int in_parallel = 1;
  double age_fraction = 0.0;       // share of capacity already lost
  double weakest_below = 0.0;      // share by which the weakest cell is smaller than the mean
  double ahead = 0.0;              // state of charge of the fullest cell above the mean
  double resistance_factor = 1.0;  // of the cells against new
};

struct CandidateRule {
  std::vector<std::string> chemistries;  // catalogue ids; empty = every simulated one
  std::vector<std::string> batteries;    // catalogue ids; empty = every one of those chemistries
  int max_parallel = 4;
};

/// How deep the loads may draw the bank before they are switched off.
enum class DepthRule {
  kPractice,    // the catalogue's usable depth of the chemistry (lead-acid 50 %, iron-phosphate 80 % ...)
  kProtection,  // down to the battery's own protection
};

enum class Preference { kCostPerYear, kPrice, kMass };

struct Plan {
  std::string name;
  std::string note;
  std::uint64_t seed = 1;
  int seasons = 100;
  sky::DailyModel daily_model = sky::DailyModel::kMatrices;  // of made weather
  sky::DiffuseModel diffuse_model = sky::DiffuseModel::kErbs;
  units::Voltage system_voltage = units::volts(12.0);
  std::string currency = "USD";
  DepthRule depth_rule = DepthRule::kPractice;
  Preference preference = Preference::kCostPerYear;
  Limits limits;
  bank::Surroundings surroundings;
  Cable main_cable;      // bank to bus
  Cable inverter_cable;  // bus to inverter
  std::optional<demand::Inverter> inverter;
  std::vector<demand::Load> loads;
  std::vector<supply::SolarArray> arrays;
  supply::Regulation solar_charging;  // of all solar controllers
  std::optional<supply::EngineCharging> engine;
  std::optional<supply::MainsCharger> mains;
  std::optional<supply::Generator> generator;  // feeds the mains charger
  std::optional<supply::WindCharging> wind;
  std::optional<supply::WaterCharging> water;
  std::vector<journey::Leg> legs;
  std::optional<NamedBank> incumbent;
  CandidateRule candidates;
  std::optional<cost::Money> money;  // none: the assumptions of cost::Money
};

}  // namespace voltwright::advise
