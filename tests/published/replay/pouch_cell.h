#pragma once
// The manganese-rich pouch cell of the public data set GitHub batterysim/equiv-circ-model (MIT licence).
#include "tests/published/replay/record_cell.h"

namespace voltwright::published {

/// 30.6 Ah and 0.799 kg as the data set states; one face 0.0676 m2, both lose heat at 12 W/m2K, the upper end
/// of the 9.5 to 12 that its authors tried for a bare cell in still air.
inline constexpr Specimen kPouchCell{30.6, 0.799, 12.0 * 2.0 * 0.067569};

}  // namespace voltwright::published
