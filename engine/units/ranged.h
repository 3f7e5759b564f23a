#pragma once

namespace voltwright::units {

/// Published or assumed spread of a figure; min <= typical <= max.
struct Ranged {
  double min = 0.0;
  double typical = 0.0;
  double max = 0.0;
};

}  // namespace voltwright::units
