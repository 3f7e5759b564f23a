#pragma once
// What the entries compute with: records of the catalogue and banks made of them.
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/myths/myth.h"
#include "engine/bank/assembly.h"
#include "engine/bank/electrochemistry.h"
#include "engine/cell/tables.h"

namespace voltwright::app {

/// What the list needs; looked for before anything is computed.
struct NeededRecords {
  std::vector<std::string_view> chemistries, cells, batteries, appliances;
};
const NeededRecords& needed_records();

/// A bank on the bench.
struct BenchBank {
  std::string_view battery{};
  int in_parallel = 1;
  double lost_capacity = 0.0;  // share of the rating
  double cable_ohm = 0.0;      // loop
  double step_s = 60.0;
};

/// Records by id, which must be among the needed ones.
class MythBench {
 public:
  /// @param catalogue  must outlive the bench and hold every needed record
  explicit MythBench(const files::Catalogue& catalogue);

  const cell::Chemistry& chemistry(std::string_view id) const { return *catalogue_->chemistry(id); }
  const cell::CellFormat& cell(std::string_view id) const { return *catalogue_->cell(id); }
  const bank::Battery& battery(std::string_view id) const { return *catalogue_->battery(id); }
  const demand::Appliance& appliance(std::string_view id) const { return *catalogue_->appliance(id); }

  /// Held at the temperature around it.
  bank::Parameters<double> bank(const BenchBank& setup) const;
  /// Of a battery that is in no record, with its heat loss [W/K]; `setup.battery` is not looked at.
  bank::Parameters<double> assembled(const bank::Battery& battery, const BenchBank& setup,
                                     double heat_loss_W_K) const;

 private:
  const files::Catalogue* catalogue_;
  std::map<std::string, std::unique_ptr<cell::Tables>, std::less<>> tables_;
};

/// A bank at rest. `side` +1 as a discharge leaves it, -1 as a charge does, 0 between.
bank::State<double> at_rest(double charge, double side, double temperature_C);

/// The families, each adds its entries.
void add_rate_myths(const MythBench& bench, std::vector<Myth>& list);
void add_load_myths(const MythBench& bench, std::vector<Myth>& list);
void add_wiring_myths(const MythBench& bench, std::vector<Myth>& list);
void add_fuse_myths(const MythBench& bench, std::vector<Myth>& list);
void add_gauge_myths(const MythBench& bench, std::vector<Myth>& list);
void add_charging_myths(const MythBench& bench, std::vector<Myth>& list);
void add_sun_myths(const MythBench& bench, std::vector<Myth>& list);
void add_cold_myths(const MythBench& bench, std::vector<Myth>& list);
void add_parallel_myths(const MythBench& bench, std::vector<Myth>& list);
void add_purchase_myths(const MythBench& bench, std::vector<Myth>& list);

}  // namespace voltwright::app
