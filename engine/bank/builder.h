#pragma once
// A battery composed of cells: n in series, m side by side, with case, busbars and protection around them.
// Equations, sources and valid range: docs/method/bank_from_cells.md.
#include <optional>

#include "engine/bank/battery.h"
#include "engine/bank/house_voltage.h"
#include "engine/bank/packing.h"
#include "engine/base/result.h"
#include "engine/cell/chemistry.h"
#include "engine/cell/format.h"

namespace voltwright::bank {

/// What a battery has beyond its cells. Every default is an assumption with the range it could have; a value
/// of the builder's own part goes first.
struct Overheads {
  Packing packing = Packing::kHexagonal;
  double cylinder_gap_mm = 1.0;       // between cylinders: 0 glued, 2.5 in holders
  double prismatic_gap_share = 0.03;  // of the thickness, for swelling and compression: 0.01 to 0.06
  double pouch_gap_share = 0.06;      // 0.03 to 0.10
  double clearance_mm = 15.0;         // frame, end plates, insulation on every side of the cells: 3 to 30
  double headroom_mm = 50.0;          // above the cells for busbars, protection and terminals: 20 to 80
  double wall_mm = 4.0;               // 2 to 6
  double wall_kg_L = 1.1;             // plastic 1.04 to 1.2; aluminium 2.7, steel 7.9
  std::optional<double> case_kg;      // instead of wall and density
  double busbar_share = 0.04;         // mass of busbars and sense wires over that of the cells: 0.02 to 0.06
  /// One connection at a cell, two a cell: kWelded_ohm for cylinders below kWeldedBelow_Ah, else kBolted_ohm.
  std::optional<double> joint_ohm;
  double protection_ohm = 0.002;  // with fuse and terminals: 0.001 to 0.003 (from memory)
  double protection_kg = 0.6;     // with fuse, main cables and terminals: 0.3 to 1.5
  /// None: 1.0 and 2.0 times the rated capacity per hour, the medians of 39 and 21 published 12 V batteries.
  std::optional<double> protection_continuous_A;
  std::optional<double> protection_peak_A;    // none: twice the continuous current
  std::optional<double> protection_charge_A;  // none: the continuous current
  /// None: made for what the cells give.
  std::optional<double> busbar_continuous_A;
  std::optional<double> busbar_peak_A;  // none: twice the continuous current, for seconds
};

/// A spot-welded nickel strip with its weld; 0.1 to 2 mohm. 20 mm of 0.15 mm x 8 mm nickel are 1.2 mohm.
inline constexpr double kWelded_ohm = 0.5e-3;
/// Half a bolted copper busbar with its contact; 0.005 to 0.1 mohm. 30 mm of 2 mm x 20 mm copper are 0.013
/// mohm.
inline constexpr double kBolted_ohm = 0.02e-3;

inline constexpr double kWeldedBelow_Ah = 20.0;  // larger cylinders have screw terminals

inline constexpr int kMostInSeries = 32;
inline constexpr int kMostInParallel = 500;

/// The part that limits a current.
enum class Binding { kCells, kBusbars, kProtection };

/// "the cells", "the busbars" or "the protection".
const char* name_of(Binding binding);

struct CurrentLimit {
  double current_A = 0.0;
  Binding binding = Binding::kCells;
};

struct Composition {
  /// Ready for bank::assemble like a battery of the catalogue. Its price is 0: cells carry none.
  Battery battery;
  int in_series = 1;
  int in_parallel = 1;
  double empty_V = 0.0;  // lower limit of the cells
  double nominal_V = 0.0;
  double mean_V = 0.0;     // of the open circuit over the whole charge
  double full_V = 0.0;     // open circuit just after charging, at full
  double charge_V = 0.0;   // absorption
  double highest_V = 0.0;  // upper limit of the cells
  double capacity_Ah = 0.0;
  double nominal_Wh = 0.0;
  double rest_Wh = 0.0;  // mean_V times capacity: what an infinitely slow discharge gives
  double cells_kg = 0.0, busbars_kg = 0.0, case_kg = 0.0, protection_kg = 0.0;  // typical
  units::Ranged mass_kg;                                                        // spread of the cells alone
  Arrangement arrangement;
  Room outside;
  double volume_L = 0.0;
  double cells_share = 0.0;  // of the outer volume
  double Wh_per_kg = 0.0;    // nominal energy over typical mass
  double Wh_per_L = 0.0;
  CurrentLimit continuous, peak, charge;
  double cells_ohm = 0.0, joints_ohm = 0.0, protection_ohm = 0.0;  // typical, 25 degC, first second
  double resistance_ohm = 0.0;                                     // their sum
  /// Between the poles, full, at 25 degC: full_V over cells and joints. The greatest bounds what a fuse must
  /// interrupt; electronic protection is not counted on.
  units::Ranged short_circuit_A;
  HouseFit house;
  base::Problems findings;  // warnings: what stands in the way of using it in a 12, 24 or 48 V system
};

/// Composes a battery. Errors: counts outside 1..kMostInSeries and 1..kMostInParallel, a cell whose chemistry
/// is another one, figures of the cell or the overheads that are negative, not finite or contradict each
/// other.
base::Result<Composition> compose(const cell::CellFormat& format, const cell::Chemistry& chemistry,
                                  int in_series, int in_parallel, const Overheads& overheads);

/// Mean open-circuit voltage of one cell over states of charge 0 to 1 [V].
double mean_open_circuit_V(const cell::Chemistry& chemistry);

}  // namespace voltwright::bank
