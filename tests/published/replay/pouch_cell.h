#pragma once
// The manganese-rich pouch cell of the public data set GitHub batterysim/equiv-circ-model (MIT licence).
#include "tests/published/replay/record_cell.h"

namespace voltwright::published {

/// 30.6 Ah and 0.799 kg as the data set states; one face 0.0676 m2, both lose heat at 13 W/m2K: assumption.
/// Its authors tried 9.5 to 12 for a bare cell in still air, which counts no edges and tabs; with those the
/// 3C run ends 2 K warmer than the thermocouples, although the record's specific heat is at its upper end.
inline constexpr Specimen kPouchCell{30.6, 0.799, 13.0 * 2.0 * 0.067569};

}  // namespace voltwright::published
