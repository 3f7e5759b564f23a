#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {

Catalogue small_catalogue() {
  Catalogue catalogue;
  for (const char* id : {"lfp", "agm", "lithium-sulfur"}) {
    cell::Chemistry chemistry;
    chemistry.id = id;
    chemistry.simulated = chemistry.id != "lithium-sulfur";
    if (!chemistry.simulated) chemistry.not_simulated_because = "No cell of it has published curves.";
    catalogue.chemistries.push_back(chemistry);
  }
  bank::Battery lfp;
  lfp.id = "lfp-12v-100ah";
  lfp.chemistry = "lfp";
  lfp.max_in_series = 4;
  bank::Battery agm;
  agm.id = "agm-12v-98ah";
  agm.chemistry = "agm";
  agm.max_in_series = 4;
  catalogue.batteries = {agm, lfp};
  demand::Appliance fridge;
  fridge.id = "fridge-50l";
  fridge.name = "Compressor fridge 50 L";
  fridge.power_W = {30.0, 40.0, 60.0};
  fridge.pattern = demand::Pattern::kTemperature;
  fridge.heat_leak_W_per_K = 1.1;
  fridge.need = demand::Need::kEssential;
  demand::Appliance pump;
  pump.id = "water-pump";
  pump.name = "Water pump";
  pump.power_W = {40.0, 60.0, 90.0};
  pump.surge_factor = 2.0;
  pump.surge_s = 1.0;
  pump.pattern = demand::Pattern::kEvents;
  pump.events_per_day = 12.0;
  pump.event_min = 1.0;
  demand::Appliance kettle;
  kettle.id = "kettle";
  kettle.name = "Kettle";
  kettle.power_W = {1000.0, 1200.0, 2200.0};
  kettle.feed = demand::Feed::kInverter;
  kettle.pattern = demand::Pattern::kEvents;
  kettle.events_per_day = 2.0;
  kettle.event_min = 4.0;
  catalogue.appliances = {fridge, pump, kettle};
  return catalogue;
}

std::string short_plan() {
  return R"(format = 1

[cables.main]
one_way = "1.5 m"
area = "35 mm2"

[[load]]
name = "Lamp"
power = "5 W"
hours = "4 h/day"

[[leg]]
lat = 59.91
lon = 10.75
zone = "Europe/Oslo"
from = 2026-10-01
to = 2026-10-31
)";
}

std::string full_plan() {
  return R"plan(format = 1
name = "Winter on the coast"
note = """
Two people, four months in the north.
"""
seed = 7
seasons = 200
system_voltage = "12 V"
currency = "EUR"
depth_rule = "practice"
prefer = "cost per year"

[limits]
mass = "95 kg"
volume = "60 L"
price = "3000 EUR"
life = "10 years"
chance_of_shortfall = "5 %"

[bank]
place = "heated box"
cabin_heated_to = "18 degC"
heater_power = "60 W"
heater_below = "5 degC"
box_loss = "0.8 W/K"

[cables.main]
one_way = "1.5 m"
area = "50 mm2"

[cables.inverter]
one_way = "1 m"
area = "1/0 AWG"

[inverter]
rated = "2 kW"
surge = "4 kW"
idle = "18 W"
linear_loss = "3 %"
quadratic_loss = "6 %"
cut_off = "10.5 V"
restart = "12.5 V"
off_when_unused = true

[[load]]
name = "Cabin lights"
power = "0,005 kW"
count = 6
hours = "4 h/day"
from = "18:00"

[[load]]
name = "Router"
power = "8 W"
always = true
need = "comfort"

[[load]]
name = "Water pump"
power = "60 W"
events = "12 /day"
each = "1 min"
window = "07:00-22:00"
surge = "x2"
surge_time = "1 s"

[[load]]
name = "Fridge"
power = "45 W"
cooling = { inside = "4 degC", heat_leak = "1.1 W/K", cop = 1.6 }
when = "always"

[[load]]
name = "Kettle"
power = "1200 W"
feed = "inverter"
need = "comfort"
events = "2 /day"
each = "4 min"

[[load]]
name = "Night heater fan"
power = "22 W"
window = "22:00-06:00"

[[solar]]
name = "Roof"
in_parallel = 2
flat = true
mounting = "ventilated roof"
soiling = "5 %"
other_losses = "5 %"
module = { peak = "175 W", open_circuit = "24.3 V", short_circuit = "9.4 A", at_peak_voltage = "20.1 V", at_peak_current = "8.7 A", power_per_K = "-0.35 %/K", voltage_per_K = "-0.28 %/K" }
controller = { kind = "mppt", efficiency = "96 %", output_limit = "30 A", input_limit = "100 V" }

[engine]
coupling = "dc-dc"
output_limit = "30 A"
efficiency = "88 %"

[mains]
output_limit = "25 A"
efficiency = "90 %"

[[leg]]
place = "Depot"
lat = 59.91
lon = 10.75
elevation = "20 m"
zone = "Europe/Oslo"
from = 2026-10-20
to = 2026-10-31
shore = "22:00-06:00"
occupied = true

[[leg]]
lat = 69.65
lon = 18.96
zone = "Europe/Oslo"
days = 45
drive = "1.5 h/day"
drive_from = "09:00"
weather = "north.epw"

[incumbent]
battery = "agm-12v-98ah"
in_parallel = 2
lost_capacity = "15 %"

[candidates]
chemistries = ["lfp", "agm"]
batteries = "all"
max_parallel = 6

[money]
horizon = "12 years"
discount_rate = { low = "1 %", typical = "3 %", high = "6 %" }
dollar = "0.92 EUR"
electricity = { low = "0.25 EUR/kWh", typical = "0.32 EUR/kWh", high = "0.45 EUR/kWh" }
fuel = "1.80 EUR/L"
distance = "8000 km/year"
upkeep = "10 EUR/year"

[[money.price]]
battery = "lfp-12v-100ah"
price = "289 EUR"

[[money.scrap]]
chemistry = "agm"
per_kg = "0.40 EUR/kg"
)plan";
}

base::Result<ReadPlan> read_small(std::string_view text) {
  static const Catalogue kCatalogue = small_catalogue();
  static const Gazetteer kNoPlaces;
  return read_plan(text, "plan.toml", kCatalogue, kNoPlaces);
}

}  // namespace voltwright::files
