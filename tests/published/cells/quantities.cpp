#include "tests/published/cells/quantities.h"

namespace voltwright::published {

const Quantities& quantities() {
  static const Quantities kAll = [] {
    Quantities all;
    for (Quantities part : {record_quantities(), cell_quantities(), lead_acid_quantities(),
                            copetti_quantities(), step_quantities(), bus_quantities(), driven_quantities()}) {
      all.merge(part);
    }
    return all;
  }();
  return kAll;
}

}  // namespace voltwright::published
