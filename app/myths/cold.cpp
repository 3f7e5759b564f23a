// Frost.
#include <fmt/format.h>

#include <numbers>

#include "app/myths/bench.h"
#include "engine/bank/laboratory.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Cold";
constexpr double kWarm_C = 25.0;
constexpr double kFrost_C = -20.0;
constexpr double kLongest_s = 40.0 * 3600.0;

double delivered_Ah(const MythBench& bench, std::string_view battery, double current_A,
                    double temperature_C) {
  const auto& record = bench.battery(battery);
  return bank::discharge_at_current(bench.bank({.battery = battery, .step_s = 10.0}),
                                    at_rest(1.0, -1.0, temperature_C), current_A, record.under_voltage_V,
                                    temperature_C, kLongest_s)
      .drawn_Ah();
}

/// Charge out of one bare 18650 with nickel at 1C in still air of this temperature, warming itself [Ah].
double bare_cell_Ah(const MythBench& bench, double air_C) {
  const cell::CellFormat& format = bench.cell("nmc-18650");
  constexpr double kAir_W_m2K = 12.0;
  const double radius_m = 0.5e-3 * format.size.diameter_mm;
  const double surface_m2 = 2.0 * std::numbers::pi * radius_m * (radius_m + 1e-3 * format.size.height_mm);
  bank::Battery one;
  one.chemistry = format.chemistry;
  one.nominal_V = bench.chemistry(format.chemistry).nominal_V;
  one.capacity_Ah = format.capacity_Ah;
  one.cells_in_series = 1;
  one.mass_kg = format.mass_kg;
  one.has_protection = false;
  const auto p = bench.assembled(one, {.step_s = 5.0}, kAir_W_m2K * surface_m2);
  const double lowest_V = bench.chemistry(format.chemistry).limits.min_V;
  return bank::discharge_at_current(p, at_rest(1.0, -1.0, air_C), format.capacity_Ah, lowest_V, air_C,
                                    kLongest_s)
      .drawn_Ah();
}

Myth useless_below_freezing(const MythBench& bench) {
  const cell::Chemistry& iron = bench.chemistry("lfp");
  const auto share = [&](std::string_view battery, double current_A, double temperature_C) {
    return 100.0 * delivered_Ah(bench, battery, current_A, temperature_C) /
           delivered_Ah(bench, battery, current_A, kWarm_C);
  };
  const double nickel_free = 100.0 * bare_cell_Ah(bench, kFrost_C) / bare_cell_Ah(bench, kWarm_C);
  const double nickel_held = share("nmc-12v-100ah", 100.0, kFrost_C);
  const double iron_slow = share("lfp-12v-100ah", 20.0, kFrost_C);
  const double permitted = base::curve_at(iron.limits.charge_rate_by_C, 0.0, 0.0);
  Myth m;
  m.number = 20;
  m.id = "lithium-useless-below-freezing";
  m.family = kFamily;
  m.title = "Below freezing lithium is no use";
  m.claim = "Below 0 °C lithium can neither be charged nor used.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = nickel_held;
  m.unit = "% of the warm capacity";
  m.decimals = 0;
  m.answer = fmt::format(
      "Held at -20 °C, cells with nickel give {:.0f} % of their warm capacity at 1C and iron-phosphate "
      "{:.0f} % at 0.2C; "
      "charging is what is barred.",
      nickel_held, iron_slow);
  m.working = {
      fmt::format("Discharge is allowed down to {:.0f} °C by the iron-phosphate record, with less capacity "
                  "and more sag: "
                  "at -10 °C {:.0f} %, at -20 °C {:.0f} % of 25 °C, at 0.2C with the cells held at "
                  "that temperature.",
                  iron.limits.discharge_min_C, share("lfp-12v-100ah", 20.0, -10.0), iron_slow),
      fmt::format("Nickel-manganese-cobalt at 1C: {:.0f} % held at -20 °C; a bare 18650 in still air warms "
                  "itself and gives "
                  "{:.0f} %. Three makes of high-voltage cells gave 76, 69 and 69 % in a test chamber, "
                  "between the two.",
                  nickel_held, nickel_free),
      fmt::format(
          "Charging at or below {:.0f} °C: {:.1f}C. Metallic lithium plates on the graphite, for good.",
          iron.limits.charge_min_C, permitted)};
  m.nearly_true =
      "For a bank that is left alone in the cold: loads empty it, the sun may not fill it, and it goes dark.";
  m.caution =
      "Charging a frozen lithium battery damages it at once and can make it dangerous later. Let its "
      "protection bar it, "
      "and warm it first.";
  m.sources = {{"chargingTemperature", "no charge at or below freezing"},
               {"genericBatteries", "capacity of iron-phosphate against temperature"},
               {"", "three cells at 1C: a public data set of discharges from 25 to -30 °C, integrated"},
               {"",
                "nickel-manganese-cobalt below 5 °C: an assumption of the record; still air 12 W/m²K "
                "(published, 9.5 to 12)"}};
  return m;
}

Myth lead_does_not_freeze(const MythBench& bench) {
  const cell::Curve& freezing_C = bench.chemistry("flooded").freezing_C;
  const auto at = [&](double charge) { return base::curve_at(freezing_C, charge, 0.0); };
  Myth m;
  m.number = 22;
  m.id = "lead-does-not-freeze";
  m.family = kFamily;
  m.title = "Lead-acid cannot freeze";
  m.claim = "Battery acid does not freeze in our winters.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = at(0.0);
  m.unit = "°C";
  m.decimals = 0;
  m.answer = fmt::format("Empty, the acid freezes at {:.0f} °C; full, at {:.0f} °C.", at(0.0), at(1.0));
  m.working = {
      "Discharge takes the sulphuric acid out of the water: density 1.265 full, 1.190 at half, 1.120 empty.",
      fmt::format("The acid freezes at {:.0f} °C full, {:.0f} °C at three quarters, {:.0f} °C at half, "
                  "{:.0f} °C at a "
                  "quarter and {:.0f} °C empty.",
                  at(1.0), at(0.75), at(0.5), at(0.25), at(0.0)),
      "Ice breaks the plates and the case. So charge it before the winter and again before it is half "
      "empty."};
  m.nearly_true = "For a battery that is kept full it is true almost everywhere on earth.";
  m.caution = "Never charge or start from a frozen battery: it can burst. A cracked case leaks acid.";
  m.sources = {{"acidFreezing", "freezing point against density"},
               {"acidFreezingManual", "the same, second table"},
               {"leadOcvTable", "density against charge"}};
  return m;
}

}  // namespace

void add_cold_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(useless_below_freezing(bench));
  list.push_back(lead_does_not_freeze(bench));
}

}  // namespace voltwright::app
