// Capacity, rate and units.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/myths/bench.h"
#include "engine/bank/laboratory.h"
#include "engine/cell/peukert.h"
#include "engine/units/quantity.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Capacity, rate and units";
constexpr double kWarm_C = 25.0;
constexpr double kEmptyLead_V = 10.5;
constexpr double kLongest_s = 60.0 * 3600.0;

Myth label_in_the_law() {
  constexpr cell::RatedCapacity kRating{100.0, 20.0};
  constexpr double kLoad_A = 5.0;
  constexpr double kExponent = 1.25;
  const double hours = cell::peukert_hours(kRating, kExponent, kLoad_A);
  const double naive_h = kRating.capacity_Ah / std::pow(kLoad_A, kExponent);
  Myth m;
  m.number = 1;
  m.id = "label-in-the-rate-law";
  m.family = kFamily;
  m.title = "The label put straight into the rate law";
  m.claim =
      "Peukert's law says hours = ampere-hours / amperes to the power n, so I put in what the label says.";
  m.verdict = MythVerdict::kWrong;
  m.value = hours;
  m.unit = "h";
  m.decimals = 1;
  m.answer = fmt::format(
      "A battery of 100 Ah at the 20 h rate lasts {:.1f} h at 5 A, whatever its exponent is.", hours);
  m.working = {
      "The label holds at one current: 100 Ah in 20 h is 5 A. At that current the answer must be 20 h.",
      fmt::format(
          "Put in as it stands, with n = {:.2f}: 100 / 5^{:.2f} = {:.1f} h. The law in that form wants "
          "the capacity at 1 A, which no label states.",
          kExponent, kExponent, naive_h),
      fmt::format(
          "With the rated time: t = 20 h × (100 Ah / (I × 20 h))^n. At 5 A {:.1f} h, at 10 A {:.1f} h, "
          "at 25 A {:.1f} h.",
          hours, cell::peukert_hours(kRating, kExponent, 10.0),
          cell::peukert_hours(kRating, kExponent, 25.0))};
  m.nearly_true = "With an exponent near 1, as of lithium, both forms give the same within a few per cent.";
  m.sources = {{"peukert1897", "the law; its form with a rated time"}};
  return m;
}

Myth amperes_an_hour() {
  const units::Power fridge = units::watts(60.0);
  const units::Voltage house = units::volts(12.0);
  const double running_A = units::as_amperes(fridge / house);
  constexpr double kLeastDuty = 0.25;
  constexpr double kMostDuty = 0.40;
  constexpr double kDay_h = 24.0;
  Myth m;
  m.number = 2;
  m.id = "amperes-an-hour";
  m.family = kFamily;
  m.title = "Amperes an hour";
  m.claim = "The fridge takes one amp an hour, and this is an 18 amp battery.";
  m.verdict = MythVerdict::kMuddled;
  m.value = running_A;
  m.unit = "A";
  m.decimals = 1;
  m.answer =
      fmt::format("A fridge of 60 W at 12 V draws {:.1f} A while it runs and {:.2f} to {:.1f} A on average.",
                  running_A, kLeastDuty * running_A, kMostDuty * running_A);
  m.working = {
      "An ampere is a rate, like kilometres an hour. An ampere-hour is an amount, like kilometres. There is "
      "nothing that comes in amperes an hour.",
      fmt::format("60 W / 12 V = {:.1f} A while the compressor runs.", running_A),
      fmt::format(
          "It runs a quarter to two fifths of the time: {:.2f} to {:.1f} A on average, {:.0f} to {:.0f} Ah "
          "a day.",
          kLeastDuty * running_A, kMostDuty * running_A, kLeastDuty * running_A * kDay_h,
          kMostDuty * running_A * kDay_h),
      fmt::format("A battery of 18 Ah at the 20 h rate gives {:.1f} A for 20 h, not 18 A.", 18.0 / 20.0)};
  m.nearly_true =
      "Who says it mostly means ampere-hours used in each hour, which is the average in amperes. Ask which.";
  m.sources = {{"", "definition of the units; share of time running: common practice, no source"}};
  return m;
}

/// Energy out of the first half of what a full bank gives at this current [Wh].
double half_of_lead_Wh(const MythBench& bench, double current_A, double& whole_Ah) {
  const auto p = bench.bank({.battery = "flooded-12v-100ah"});
  const auto run =
      bank::discharge_at_current(p, at_rest(1.0, 0.0, kWarm_C), current_A, kEmptyLead_V, kWarm_C, kLongest_s);
  whole_Ah = run.drawn_Ah();
  const auto half = std::find_if(run.points.begin(), run.points.end(), [&](const bank::LabPoint& point) {
    return point.drawn_Ah >= 0.5 * whole_Ah;
  });
  return half == run.points.end() ? 0.0 : half->drawn_Wh;
}

Myth label_is_usable(const MythBench& bench) {
  double slow_Ah = 0.0;
  double middle_Ah = 0.0;
  double fast_Ah = 0.0;
  const double slow_Wh = half_of_lead_Wh(bench, 5.0, slow_Ah);
  const double middle_Wh = half_of_lead_Wh(bench, 10.0, middle_Ah);
  const double fast_Wh = half_of_lead_Wh(bench, 20.0, fast_Ah);
  const double depth = bench.chemistry("lfp").usable_depth;
  constexpr double kLoad_A = 20.0;
  const auto lithium =
      bank::discharge_at_current(bench.bank({.battery = "lfp-12v-100ah"}), at_rest(1.0, -1.0, kWarm_C),
                                 kLoad_A, 0.0, kWarm_C, depth * 100.0 / kLoad_A * 3600.0);
  Myth m;
  m.number = 3;
  m.id = "label-times-volts";
  m.family = kFamily;
  m.title = "Label times volts is what you get";
  m.claim = "100 Ah times 12 V makes 1200 Wh to use.";
  m.verdict = MythVerdict::kWrong;
  m.value = middle_Wh;
  m.unit = "Wh";
  m.decimals = 0;
  m.answer = fmt::format(
      "An open lead-acid battery of 100 Ah gives {:.0f} Wh at 10 A if half is left in it; iron-phosphate of "
      "the "
      "same label gives {:.0f} Wh.",
      middle_Wh, lithium.drawn_Wh());
  m.working = {
      fmt::format(
          "Lead-acid at 5 A, 25 °C, to 10.5 V: {:.0f} Ah in all. Half of it, as practice has it for a "
          "long life: {:.0f} Wh.",
          slow_Ah, slow_Wh),
      fmt::format("At 10 A it gives {:.0f} Ah in all, and half of that is {:.0f} Wh; at 20 A {:.0f} Ah and "
                  "{:.0f} Wh.",
                  middle_Ah, middle_Wh, fast_Ah, fast_Wh),
      fmt::format("Iron-phosphate at 20 A, {:.0f} % of the label: {:.0f} Wh, nearly the same at any rate.",
                  100.0 * depth, lithium.drawn_Wh())};
  m.nearly_true =
      "Drawn once to the very end at the 20 h rate, lead-acid gives nearly the label. It does not do so many "
      "hundred times.";
  m.sources = {{"reservePairs", "the rate effect of the lead-acid record"},
               {"genericBatteries", "12.8 V and capacity of the iron-phosphate record"},
               {"", "half of lead-acid, 80 % of lithium: common practice, no source"}};
  return m;
}

Myth inverter_on_one_battery(const MythBench& bench) {
  constexpr double kOutput_W = 1500.0;
  constexpr double kEfficiency = 0.85;
  constexpr double kStep_s = 5.0;
  const double input_W = kOutput_W / kEfficiency;
  const double current_A = input_W / kEmptyLead_V;
  const auto run =
      bank::discharge_at_power(bench.bank({.battery = "agm-12v-98ah", .step_s = kStep_s}),
                               at_rest(1.0, 0.0, kWarm_C), input_W, kEmptyLead_V, kWarm_C, kLongest_s);
  const double size_Ah = bench.battery("agm-12v-98ah").capacity_Ah;
  const double minutes = run.time_s() / 60.0;
  Myth m;
  m.number = 19;
  m.id = "inverter-rating-is-enough";
  m.family = kFamily;
  m.title = "The inverter's rating is what counts";
  m.claim =
      "The inverter is rated 1500 W, so my 100 Ah lead battery runs 1500 W for the better part of an hour.";
  m.verdict = MythVerdict::kWrong;
  m.value = minutes;
  m.unit = "min";
  m.decimals = 0;
  m.answer = fmt::format("A new glass-mat battery of {:.0f} Ah holds 1500 W for {:.0f} min, warm and full.",
                         size_Ah, minutes);
  m.working = {
      fmt::format(
          "1500 W at an efficiency of 85 % takes {:.0f} W from the battery. At the cut-off, 10.5 V, that is "
          "{:.0f} A, {:.1f} times the capacity per hour.",
          input_W, current_A, current_A / size_Ah),
      fmt::format("Amperes into the label: {:.0f} Ah / {:.0f} A = {:.0f} min.", size_Ah, current_A,
                  size_Ah / current_A * 60.0),
      fmt::format("The rate effect and the falling voltage leave {:.0f} min and {:.0f} Ah, computed at "
                  "constant power "
                  "and 25 °C. An older or colder battery gives less.",
                  minutes, run.drawn_Ah())};
  m.nearly_true =
      "For seconds: a microwave for two minutes now and then is within what the battery can do, if cable and "
      "fuse "
      "are made for the current.";
  m.caution = fmt::format(
      "{:.0f} A in a cable or a fuse that is not made for it heats it until it burns. Size both first, under "
      "the "
      "local code.",
      current_A);
  m.sources = {{"vrlaSheet", "constant-current table behind the glass-mat record"},
               {"", "efficiency of 85 % and cut-off at 10.5 V: common practice, no source"}};
  return m;
}

}  // namespace

void add_rate_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(label_in_the_law());
  list.push_back(amperes_an_hour());
  list.push_back(label_is_usable(bench));
  list.push_back(inverter_on_one_battery(bench));
}

}  // namespace voltwright::app
