#include "tests/unit/files/plan_charging_fixture.h"

#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

/// The small catalogue with charge stages: 3.55 V a cell without float, and 2.42 V with 2.25 V of float.
Catalogue charging_catalogue() {
  Catalogue catalogue = small_catalogue();
  for (cell::Chemistry& chemistry : catalogue.chemistries) {
    const bool lead = chemistry.id == "agm";
    chemistry.stages.absorption_V = lead ? 2.42 : 3.55;
    chemistry.stages.float_V = lead ? 2.25 : 0.0;
    chemistry.stages.compensation_V_per_K = lead ? -0.0037 : 0.0;
    chemistry.stages.absorption_max_h = lead ? 4.0 : 0.5;
  }
  for (bank::Battery& battery : catalogue.batteries) {
    battery.cells_in_series = battery.chemistry == "agm" ? 6 : 4;
  }
  return catalogue;
}

}  // namespace

base::Result<ReadPlan> read_with_stages(std::string_view text) {
  static const Catalogue kCatalogue = charging_catalogue();
  static const Gazetteer kNoPlaces;
  return read_plan(text, "plan.toml", kCatalogue, kNoPlaces);
}

std::string charging_plan() {
  return short_plan() + R"(
[bank]
place = "heated box"
heater_power = "40 W"
heater_from = "surplus"
engine_bay_warms = "15 min"
engine_bay_cools = "2 h"

[[load]]
name = "Heater"
power = "90 W"
hours = "1 h/day"
cut_off = "10.5 V"
restart = "12.6 V"
cable = { one_way = "5 m", area = "2.5 mm2", contacts = "20 mohm" }

[[solar]]
flat = true
module = { peak = "175 W", open_circuit = "24.3 V", short_circuit = "9.4 A", at_peak_voltage = "20.1 V", at_peak_current = "8.7 A" }
controller = { kind = "mppt", output_limit = "30 A", input_limit = "100 V" }

[engine]
output_limit = "25 A"
loop_resistance = "40 mohm"
alternator_voltage = "14.4 V"
alternator_low_voltage = "12.6 V"
low_share = "60 %"
input_lock_out = "11.5 V"

[mains]
output_limit = "20 A"

[chargers.solar]
absorption = "14.3 V"
float = "13.6 V"
compensation = "-24 mV/K"
absorption_at_most = "90 min"
lead = "3 mohm"

[chargers.engine]
profile = "agm"
wakes = true
equalise_every = "30 days"

[chargers.mains]
profile = "lfp"
wakes = false

[incumbent]
battery = "lfp-12v-100ah"
weakest_cell = "4 %"
fullest_cell = "1.5 %"
resistance = 2.5
)";
}

}  // namespace voltwright::files
