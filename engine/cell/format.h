#pragma once
// The catalogue record of a cell as bought: its form, size, mass and limits. What happens inside it belongs
// to the chemistry it names (engine/cell/chemistry.h).
#include <string>

#include "engine/units/ranged.h"

namespace voltwright::cell {

enum class FormFactor { kCylindrical, kPrismatic, kPouch };

/// Outer size in millimetres. A cylinder has a diameter and a height; the others have a thickness (across the
/// large faces, where they swell), a width and a height. What a form does not have is 0.
struct CellSize {
  double diameter_mm = 0.0;
  double thickness_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
};

struct CellFormat {
  std::string id;         // file name without extension
  std::string name;       // "Iron-phosphate, prismatic, 100 Ah"
  std::string chemistry;  // catalogue id
  FormFactor form = FormFactor::kCylindrical;
  CellSize size;
  double capacity_Ah = 0.0;
  units::Ranged mass_kg;
  /// Full to half charged at 25 degC: least at 1 kHz (it bounds a short circuit), typical in the first second
  /// of direct current, greatest as any sheet of the kind states.
  units::Ranged ohmic_ohm;
  double continuous_A = 0.0;  // discharge
  double peak_A = 0.0;
  double peak_s = 10.0;
  double charge_A = 0.0;
};

}  // namespace voltwright::cell
