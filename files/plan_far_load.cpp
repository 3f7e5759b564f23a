// A load at the end of a cable of its own, with the voltage at which it gives up.
#include <fmt/core.h>

#include "engine/season/setup.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

void read_far_feed(Section& section, Voltage system, demand::Load& load) {
  section.know({"restart"});
  if (!section.has("cable") && !section.has("cut_off")) return;
  const double system_V = as_volts(system);
  demand::FarFeed far;
  if (auto cable = section.section("cable")) {
    advise::Cable run;
    cable->set_wanted<Length>("one_way", parse_length,
                              {metres(0.01), metres(100), "1 cm to 100 m", "\"5 m\""}, run.one_way);
    cable->set_wanted<Area>(
        "area", parse_area,
        {square_millimetres(0.2), square_millimetres(1000), "0.2 to 1000 mm2", "\"2.5 mm2\""}, run.area);
    Resistance contacts;
    cable->set<Resistance>("contacts", parse_resistance, {ohms(0), ohms(1), "0 to 1 ohm", "\"20 mohm\""},
                           contacts);
    cable->finish();
    far.loop = ohms(season::loop_resistance_ohm(as_metres(run.one_way), as_square_millimetres(run.area)) +
                    as_ohms(contacts));
  }
  const Span<Voltage> around = {volts(0.6 * system_V), volts(1.4 * system_V),
                                "0.6 to 1.4 times the system voltage", "\"10.5 V\""};
  section.set<Voltage>("cut_off", parse_voltage, around, far.cut_off);
  // A volt for each 12 V above the cut-off, so that the recovering bank does not start it again at once
  // (assumption).
  far.restart = far.cut_off + volts(system_V / 12.0);
  section.set<Voltage>("restart", parse_voltage, around, far.restart);
  if (far.restart <= far.cut_off && as_volts(far.cut_off) > 0.0) {
    section.note("restart", "The load would restart below its cut-off.").remedy =
        "Give a restart above the cut-off.";
  }
  if (load.feed == demand::Feed::kInverter) {
    section
        .note(section.has("cable") ? "cable" : "cut_off",
              "A load on the inverter has no cable of its own to the bank.")
        .remedy = "Leave it out; [cables.inverter] and the inverter's cut_off stand for all of its loads.";
    return;
  }
  load.far = far;
}

}  // namespace voltwright::files
