#pragma once
// One cell of a catalogue record, as a laboratory has it on the bench.
#include <cmath>
#include <cstdio>

#include "engine/bank/laboratory.h"
#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {

/// What a record leaves to the specimen.
struct Specimen {
  double capacity_Ah;    // charge from full to empty at a slow rate: what the state of charge counts in
  double mass_kg;        // warms with the record's specific heat
  double heat_loss_W_K;  // to the air around it
};

/// A bank of that one cell. The tables live as long as this.
class RecordCell {
 public:
  RecordCell(const char* record, const Specimen& specimen)
      : kind_(chemistry(record)), tables_(cell::make_tables(kind_)), specimen_(specimen) {
    battery_.cells_in_series = 1;
    battery_.capacity_Ah = specimen.capacity_Ah;
    battery_.mass_kg = {specimen.mass_kg, specimen.mass_kg, specimen.mass_kg};
  }
  RecordCell(const RecordCell&) = delete;
  RecordCell& operator=(const RecordCell&) = delete;

  const cell::Chemistry& kind() const { return kind_; }
  bank::Parameters<double> parameters(double step_s = 1.0) const {
    return bank::assemble(battery_, kind_, tables_, {1, 1, 0.0}, 0.0, specimen_.heat_loss_W_K, step_s);
  }
  /// At rest at a state of charge and the temperature of the air; side -1 after a charge, +1 after a
  /// discharge.
  static bank::State<double> rested(double charge, double temperature_C, double side) {
    bank::State<double> s;
    s.charge = charge;
    s.side = side;
    s.temperature_C = temperature_C;
    return s;
  }

 private:
  const cell::Chemistry& kind_;
  bank::Battery battery_;
  cell::Tables tables_;
  Specimen specimen_;
};

/// Voltage of a run at a state of charge, linear between its steps.
inline double voltage_at_charge(const bank::LabRun& run, const Specimen& specimen, double charge) {
  return run.voltage_at((1.0 - charge) * specimen.capacity_Ah);
}

/// One line of the table of residuals that each case prints.
inline void print_residual(const char* what, double at, double published, double computed, const char* unit) {
  std::printf("  %-28s %8.3f  published %9.4f  computed %9.4f  residual %+8.4f %s\n", what, at, published,
              computed, computed - published, unit);
}

}  // namespace voltwright::published
