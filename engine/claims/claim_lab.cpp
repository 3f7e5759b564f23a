#include "engine/claims/claim_lab.h"

namespace voltwright::claims {

namespace {

constexpr double kRoom_C = 25.0;
constexpr double kStep_s = 30.0;
constexpr double kSecondsPerHour = 3600.0;
constexpr double kLongest_h = 1000.0;
constexpr double kDensity_kg_per_L =
    1.5;  // between lithium (1.1) and lead-acid (2.4); only for the loss of heat

bank::Parameters<double> parameters_of(const cell::Chemistry& chemistry, const cell::Tables& tables,
                                       int cells, double capacity_Ah, double Wh_per_kg) {
  bank::Battery battery;
  battery.chemistry = chemistry.id;
  battery.nominal_V = chemistry.nominal_V * cells;
  battery.capacity_Ah = capacity_Ah;
  battery.cells_in_series = cells;
  const double mass_kg = battery.nominal_V * capacity_Ah / Wh_per_kg;
  battery.mass_kg = {mass_kg, mass_kg, mass_kg};
  const double volume_L = mass_kg / kDensity_kg_per_L;
  battery.volume_L = {volume_L, volume_L, volume_L};
  return bank::assemble(battery, chemistry, tables, {}, 0.0, bank::free_standing_loss_W_K(volume_L), kStep_s);
}

}  // namespace

ClaimLab::ClaimLab(const cell::Chemistry& chemistry, int cells, double capacity_Ah, double Wh_per_kg)
    : chemistry_(chemistry),
      tables_(cell::make_tables(chemistry_)),
      parameters_(parameters_of(chemistry_, tables_, cells, capacity_Ah, Wh_per_kg)),
      cells_(static_cast<double>(cells)),
      capacity_Ah_(capacity_Ah) {}

bank::LabRun ClaimLab::discharge(double current_A) const {
  bank::State<double> full;
  full.temperature_C = kRoom_C;
  return bank::discharge_at_current(parameters_, full, current_A, chemistry_.limits.min_V * cells_, kRoom_C,
                                    kLongest_h * kSecondsPerHour);
}

double ClaimLab::charge_h(double current_A) const {
  const bank::LabRun emptied = discharge(capacity_Ah_ / chemistry_.rated_hours);
  const bank::LabRun run =
      bank::charge_to(parameters_, emptied.state, current_A, chemistry_.stages.absorption_V * cells_,
                      chemistry_.stages.tail_rate * capacity_Ah_, kRoom_C, kLongest_h * kSecondsPerHour);
  return run.time_s() / kSecondsPerHour;
}

}  // namespace voltwright::claims
