// Alternators and chargers.
#include <fmt/format.h>

#include <algorithm>

#include "app/myths/bench.h"
#include "engine/bank/laboratory.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Charging";
constexpr double kWarm_C = 25.0;
constexpr double kHour_s = 3600.0;
constexpr double kLongest_s = 48.0 * kHour_s;

Myth one_c_from_alternator(const MythBench& bench) {
  constexpr double kAlternator_V = 14.2;
  constexpr double kBank_Ah = 200.0;
  constexpr double kLong_ohm = 0.010;
  constexpr double kShort_ohm = 0.002;
  const auto current_A = [&](double cable_ohm) {
    const auto p = bench.bank({.battery = "lfp-12v-200ah", .cable_ohm = cable_ohm});
    const auto t = bank::terminal<double>(p, at_rest(0.5, 0.0, kWarm_C));
    return std::pair{(kAlternator_V - t.source_V) / t.charge_ohm, t.charge_ohm};
  };
  const auto [usual_A, usual_ohm] = current_A(kLong_ohm);
  const auto [short_A, short_ohm] = current_A(kShort_ohm);
  Myth m;
  m.number = 11;
  m.id = "lithium-takes-all-it-can";
  m.family = kFamily;
  m.title = "Lithium draws its full hour rate from any alternator";
  m.claim =
      "Lithium pulls 1C from whatever it gets. Or: lithium needs no limit, it only takes what it needs.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = usual_A / kBank_Ah;
  m.unit = "C";
  m.decimals = 2;
  m.answer = fmt::format(
      "200 Ah behind 10 mΩ of cable takes {:.0f} A, {:.2f}C: the loop decides, not the chemistry.", usual_A,
      usual_A / kBank_Ah);
  m.working = {fmt::format("14.2 V at the alternator, a battery at half charge, cable loop of 10 mΩ, the "
                           "bank itself {:.1f} mΩ "
                           "over a minute: {:.0f} A.",
                           1e3 * (usual_ohm - kLong_ohm), usual_A),
               fmt::format("With 2 mΩ of short, thick cable it would be {:.0f} A, {:.2f}C: then the "
                           "alternator is the limit, and "
                           "it overheats.",
                           short_A, short_A / kBank_Ah),
               "So work out the loop, and limit the current wherever the loop does not: a DC-DC charger or a "
               "controlled "
               "alternator."};
  m.nearly_true =
      "For a large bank on short, thick cable, where the current is only limited by the alternator.";
  m.caution =
      "An alternator at full current and low speed can overheat and burn; protection that opens while it "
      "charges leaves a voltage spike.";
  m.sources = {{"lfpCircuit", "resistance of the iron-phosphate record"},
               {"", "0.2 to 0.67C measured in installations: a practitioner's report, restated"}};
  return m;
}

Myth alternator_label(const MythBench& bench) {
  constexpr double kLabel_A = 100.0;
  constexpr double kHot = 0.6;
  constexpr double kWarm = 0.8;
  const auto hours = [&](double current_A) {
    const auto p = bench.bank({.battery = "lfp-12v-200ah", .cable_ohm = 0.002});
    const auto run =
        bank::charge_to(p, at_rest(0.2, 1.0, kWarm_C), current_A, 14.4, 0.0, kWarm_C, kLongest_s);
    const auto reached = std::find_if(run.points.begin(), run.points.end(),
                                      [](const bank::LabPoint& point) { return point.charge >= 0.8; });
    return reached == run.points.end() ? 0.0 : reached->time_s / kHour_s;
  };
  const double label_h = hours(kLabel_A);
  const double hot_h = hours(kHot * kLabel_A);
  Myth m;
  m.number = 12;
  m.id = "alternator-label";
  m.family = kFamily;
  m.title = "The alternator's label is its charging current";
  m.claim = "A 100 A alternator charges with 100 A.";
  m.verdict = MythVerdict::kWrong;
  m.value = hot_h;
  m.unit = "h at the hot current";
  m.decimals = 1;
  m.answer = fmt::format(
      "Hot, a 100 A alternator gives 60 to 80 A for good: at 60 A, 200 Ah from 20 to 80 % take {:.1f} h "
      "instead of {:.1f} h.",
      hot_h, label_h);
  m.working = {fmt::format("The label is for a cold machine at high speed. Hot and for hours: 60 to 80 % of "
                           "it, {:.0f} to {:.0f} A.",
                           kHot * kLabel_A, kWarm * kLabel_A),
               fmt::format("60 % of 200 Ah at 100 A: {:.1f} h. At 60 A: {:.1f} h. What the vehicle itself "
                           "uses goes off as well.",
                           label_h, hot_h),
               "Cooling is worst at fast idle: much current, little air."};
  m.nearly_true = "For the first minutes of a cold start, at cruising speed.";
  m.caution =
      "Size for the hot, continuous figure. An alternator that is kept at its limit can fail or burn.";
  m.sources = {
      {"", "60 to 80 % hot and continuous: practitioners' reports, restated; common practice, no source"},
      {"lfpCircuit", "the battery that is charged"}};
  return m;
}

Myth bigger_charger(const MythBench& bench) {
  constexpr double kHold_V = 14.4;
  struct Times {
    double to_80_h = 0.0, to_95_h = 0.0, to_99_h = 0.0;
  };
  const auto times = [&](double current_A) {
    const auto run = bank::charge_to(bench.bank({.battery = "agm-12v-98ah"}), at_rest(0.5, 0.0, kWarm_C),
                                     current_A, kHold_V, 0.0, kWarm_C, kLongest_s);
    const auto reach_h = [&](double charge) {
      const auto at = std::find_if(run.points.begin(), run.points.end(),
                                   [charge](const bank::LabPoint& point) { return point.charge >= charge; });
      return at == run.points.end() ? kLongest_s / kHour_s : at->time_s / kHour_s;
    };
    return Times{reach_h(0.80), reach_h(0.95), reach_h(0.99)};
  };
  const Times small = times(15.0);
  const Times large = times(60.0);
  Myth m;
  m.number = 25;
  m.id = "bigger-charger-fills-lead-fast";
  m.family = kFamily;
  m.title = "A bigger charger fills lead-acid fast";
  m.claim = "With four times the charger, the lead battery is full in a quarter of the time.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = large.to_99_h - large.to_95_h;
  m.unit = "h";
  m.decimals = 1;
  m.answer = fmt::format("From 95 to 99 % it takes {:.1f} h with 60 A, and {:.1f} h with 15 A.",
                         large.to_99_h - large.to_95_h, small.to_99_h - small.to_95_h);
  m.working = {
      fmt::format("Glass mat of 98 Ah from half, 14.4 V at most, 25 °C. 15 A: 80 % after {:.1f} h, 95 % "
                  "after {:.1f} h, "
                  "99 % after {:.1f} h.",
                  small.to_80_h, small.to_95_h, small.to_99_h),
      fmt::format("60 A, twice what the battery may take for good: 80 % after {:.1f} h, 95 % after {:.1f} h, "
                  "99 % after "
                  "{:.1f} h.",
                  large.to_80_h, large.to_95_h, large.to_99_h),
      "Once the voltage is held, the battery decides how much it takes, and it takes less and less."};
  m.nearly_true = "From deep down to about 80 %, within the charge current that its sheet allows.";
  m.caution =
      "More than the sheet allows gasses and heats the battery. Hydrogen explodes from 4 % in air: "
      "ventilate.";
  m.sources = {{"schiffer2007", "charge resistance of lead-acid"},
               {"leadCharging", "voltage held"},
               {"", "hydrogen from 4 % of the air (from memory)"}};
  return m;
}

}  // namespace

void add_charging_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(one_c_from_alternator(bench));
  list.push_back(alternator_label(bench));
  list.push_back(bigger_charger(bench));
}

}  // namespace voltwright::app
