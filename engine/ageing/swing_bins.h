#pragma once
// Swings gathered into bins, so that a year of them takes bounded room.
#include <cstdint>
#include <map>
#include <vector>

#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

/// Bins of depth (0.5 %), mean charge (5 %), temperature (4 K) and charge rate (0.1 per hour, all above 2 in
/// one), and by which rates are known. A bin comes back as one swing: its count and its charge moved (count
/// times depth) are exact; mean charge, temperature and rates are means over the charge moved, so that laws
/// linear in them are exact too. A law that goes with depth^p is out by at most |p (p - 1)| / 8 (w / D)^2, w
/// the width of the bin: 0.0009 at a depth of 5 % and 9e-6 at 50 % for p = 1.5.
class SwingBins {
 public:
  void add(const Swing& swing);

  /// One swing for each bin, in a fixed order.
  void append_to(std::vector<Swing>& swings) const;

  std::size_t size() const { return bins_.size(); }

 private:
  struct Sums {
    double count = 0.0;
    double moved = 0.0;  // count times depth; the next four are multiplied by it
    double mean_soc = 0.0, temperature = 0.0, charge = 0.0, discharge = 0.0;
  };
  std::map<std::uint32_t, Sums> bins_;
};

}  // namespace voltwright::ageing
