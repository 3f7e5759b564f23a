#pragma once
// A measured table of storage losses: what was measured, the law drawn through it, and how far laws miss it.
#include <vector>

#include "engine/ageing/part.h"
#include "engine/base/curve.h"

namespace voltwright::ageing {

/// One condition of a storage test. Losses and growths in per cent of new, against days.
struct StorageCondition {
  double temperature_C = 25.0;
  double soc = 0.5;
  double loss_percent_per_root_day = 0.0;  // least-squares root of time through all check-ups
  base::Curve loss_percent_by_day;
  base::Curve growth_percent_by_day;
};

using StorageTable = std::vector<StorageCondition>;

/// What is wrong with a table as a source of StorageRates; empty if nothing: conditions at three temperatures
/// or more with half charge among them; empty, half and full charge at the same temperatures; a sweep of five
/// charges or more, from 0 to 1, at one temperature; every rate above 0.
const char* fault_of(const StorageTable& table);

/// Storage rates between the measured conditions: ln k linear in 1/T along empty, half and full, and between
/// these after the sweep of charges, on straight lines between its points. Colder than the coldest condition
/// that has empty and full, their ratio to half charge there is kept; colder than the coldest of all, its
/// rate (losses do not stop in the cold); hotter than the hottest, the last slope goes on.
class StorageRates {
 public:
  /// Precondition: fault_of(table) is empty.
  explicit StorageRates(const StorageTable& table);
  /// Loss per root hour, share.
  double per_root_h(double temperature_C, double soc) const;

 private:
  base::Curve empty_;  // ln k against -1/T [1/K]
  base::Curve half_;
  base::Curve full_;
  base::Curve below_;  // way from empty (0) to half (1) against the state of charge
  base::Curve above_;  // way from half (0) to full (1)
};

class MeasuredStorage final : public Part {
 public:
  MeasuredStorage(const StorageTable& table, const Validity& validity) : Part(validity), rates_(table) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

 private:
  StorageRates rates_;
};

}  // namespace voltwright::ageing
