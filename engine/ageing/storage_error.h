#pragma once
// How far a law misses a storage test.
#include "engine/ageing/law.h"
#include "engine/ageing/measured_storage.h"

namespace voltwright::ageing {

/// Deviations from the tabled check-ups of a storage test, in percentage points of capacity, law - measured.
struct StorageError {
  double bias_points = 0.0;
  double rms_points = 0.0;
  double worst_points = 0.0;  // the largest, with its sign
  int check_ups = 0;
};

/// What the law says of rest at a temperature and state of charge, without a swing.
Aged stored(const Law& law, double temperature_C, double soc, double days);

/// Over the tabled check-ups of the conditions from `coldest_C` to `hottest_C`.
StorageError storage_error(const Law& law, const StorageTable& table, double coldest_C, double hottest_C);

/// Loss by the law over the loss measured, for one condition of the table and one of its days; 0 if the table
/// does not have it.
double over_measured(const Law& law, const StorageTable& table, double temperature_C, double soc,
                     double days);

}  // namespace voltwright::ageing
