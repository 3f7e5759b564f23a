#pragma once
// The manganese-rich pouch cell of the public data set GitHub batterysim/equiv-circ-model (MIT licence).
#include "tests/published/replay/record_cell.h"

namespace voltwright::published {

/// 30.6 Ah and 0.799 kg as the data set states; one face 0.0676 m2, both lose heat at 13 W/m2K. Its authors
/// tried 9.5 to 12 for a bare cell in still air; edges and tabs, not counted in the faces, and the record's
/// specific heat of 1100 J/kgK bring the 3C run to 1 K of the thermocouples with 13.
inline constexpr Specimen kPouchCell{30.6, 0.799, 13.0 * 2.0 * 0.067569};

}  // namespace voltwright::published
