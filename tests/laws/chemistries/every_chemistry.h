#pragma once
// Every simulated chemistry of the catalogue with one of its batteries, and random states and currents for
// them.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "engine/bank/electrochemistry.h"
#include "engine/base/random.h"
#include "files/catalogue.h"

namespace voltwright::laws {

/// The catalogue packed into the program; read once.
inline const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

inline std::vector<std::string> simulated() {
  std::vector<std::string> ids;
  for (const cell::Chemistry& c : catalogue().chemistries) {
    if (c.simulated) ids.push_back(c.id);
  }
  return ids;
}

inline const bank::Battery& battery_of(const std::string& chemistry) {
  for (const bank::Battery& b : catalogue().batteries) {
    if (b.chemistry == chemistry) return b;
  }
  return catalogue().batteries.front();
}

class EveryChemistry : public ::testing::TestWithParam<std::string> {
 protected:
  EveryChemistry()
      : chemistry_(*catalogue().chemistry(GetParam())),
        battery_(battery_of(GetParam())),
        tables_(cell::make_tables(chemistry_)) {}

  bank::Parameters<double> parameters(double step_s) const {
    return bank::assemble(battery_, chemistry_, tables_, {1, 2, 0.05}, 0.0007, 2.0, step_s);
  }
  /// Currents up to the rated capacity per hour in both directions.
  double random_current_A(base::RandomStream& random) const {
    return (2.0 * random.uniform() - 1.0) * 2.0 * battery_.capacity_Ah;
  }
  bank::State<double> random_state(base::RandomStream& random) const {
    bank::State<double> s;
    s.charge = 0.02 + 0.97 * random.uniform();
    s.imbalance = chemistry_.availability.fraction < 1.0 ? 0.4 * random.uniform() - 0.1 : 0.0;
    s.fast_V = 0.2 * random.uniform() - 0.1;
    s.slow_V = 0.2 * random.uniform() - 0.1;
    s.side = 2.0 * random.uniform() - 1.0;
    s.temperature_C = -20.0 + 70.0 * random.uniform();
    return s;
  }

  cell::Chemistry chemistry_;
  bank::Battery battery_;
  cell::Tables tables_;
};

/// Test names may hold letters and digits alone.
inline std::string name_of(const ::testing::TestParamInfo<std::string>& info) {
  std::string name;
  for (const char c : info.param) {
    if (c != '-') name += c;
  }
  return name;
}

}  // namespace voltwright::laws
