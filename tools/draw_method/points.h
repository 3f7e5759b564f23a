#pragma once
// Published points of discharges (catalogue/published_curves/) and what the program computes for each.
#include <span>
#include <string>
#include <vector>

#include "engine/base/curve.h"
#include "engine/base/result.h"
#include "files/embedded.h"
#include "tools/draw_method/runs.h"

namespace voltwright::tools {

/// What a series gives against what: named as in the files.
enum class Measured {
  kChargeVoltageByCharge,  // charge_voltage_V_by_soc, charged at one current
  kVoltageByCharge,        // voltage_V_by_soc, at one current
  kVoltageByTime,          // voltage_V_by_s, at one current
  kChargeByCurrent,        // delivered_Ah_by_A
  kEnergyByCurrent,        // delivered_Wh_by_A
  kHoursByCurrent,         // duration_h_by_A
  kMinutesBySize,          // duration_min_by_Ah, at one current, each point a battery of its own capacity
  kShareByTemperature,     // capacity_share_by_C, at one current, over the capacity at the specimen's
                           // temperature
};

/// Whether a series gives voltages.
bool gives_voltage(Measured measured);

/// Points of one discharge or charge, or of one figure of several, from one source.
struct Series {
  Measured measured = Measured::kVoltageByCharge;
  std::string title;
  double current_A = 0.0;  // 0 where each point has its own
  base::Curve points;
  bool fitted = false;              // the record was made from these points
  double tolerance_V = 0.0;         // for voltages
  double relative_tolerance = 0.0;  // for all else
  std::vector<std::string> keys;    // of the bibliography
};

/// One specimen and its series. Voltages are per cell.
struct PublishedSet {
  std::string title;
  double capacity_Ah = 0.0;
  double temperature_C = 25.0;
  double end_V = 0.0;
  std::vector<Series> series;
};

struct PublishedCurves {
  std::string chemistry;  // catalogue id
  std::vector<PublishedSet> sets;
};

/// One point held against the program.
struct Residual {
  std::string condition;  // "C/2, 1 A, at 80 % charge"
  const char* unit = "V";
  double published = 0.0;
  double computed = 0.0;
  double tolerance = 0.0;  // absolute, in the unit
  bool fitted = false;
  std::vector<std::string> keys;

  bool within() const;
};

/// Reads published_curves/*.json of `files`, in their order; all problems at once.
base::Result<std::vector<PublishedCurves>> read_published(std::span<const files::EmbeddedFile> files);

/// Recomputes every point of a set.
std::vector<Residual> residuals(const Kind& kind, const PublishedSet& set);

}  // namespace voltwright::tools
