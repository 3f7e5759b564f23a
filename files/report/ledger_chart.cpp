#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "files/report/axis.h"
#include "files/report/charts.h"
#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

struct Entry {
  std::string name;
  double Wh = 0.0;
  double shown = 0.0;  // in the unit shown, rounded so that the column adds up
};

struct Sheet {
  std::vector<Entry> in, out;
  std::string unit;
  int decimals = 0;
  double total = 0.0;  // in the unit shown
  double charged = 0.0, discharged = 0.0;
};

/// Rounds each entry so that the rounded entries add up to `total`: the largest remainders go up.
void round_to_total(std::vector<Entry>& entries, double total, double scale, double quantum) {
  std::vector<double> remainder(entries.size());
  double units_left = std::round(total / quantum);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const double exact = entries[i].Wh * scale / quantum;
    const double whole = std::floor(exact);
    remainder[i] = exact - whole;
    entries[i].shown = whole * quantum;
    units_left -= whole;
  }
  std::vector<std::size_t> order(entries.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return remainder[a] > remainder[b]; });
  for (const std::size_t i : order) {
    if (units_left < 0.5) break;
    entries[i].shown += quantum;
    units_left -= 1.0;
  }
}

void add(std::vector<Entry>& entries, const char* name, double Wh) {
  if (Wh > 0.0) entries.push_back({name, Wh, 0.0});
}

Sheet sheet_of(const advise::Trial& trial) {
  const season::Ledger<double>& sum = trial.ledger;
  const double n = std::max(1, trial.count());
  Sheet sheet;
  add(sheet.in, "Engine", sum.engine_Wh / n);
  add(sheet.in, "Solar", sum.solar_Wh / n);
  add(sheet.in, "Mains", sum.mains_Wh / n);
  add(sheet.in, "Wind", sum.wind_Wh / n);
  add(sheet.in, "Water", sum.water_Wh / n);
  add(sheet.in, "Generator set", sum.generator_Wh / n);
  add(sheet.in, "From store", sum.drawn_from_store_Wh / n);
  add(sheet.out, "Direct-current loads", sum.direct_Wh / n);
  add(sheet.out, "Inverter and its loads", sum.inverter_Wh / n);
  add(sheet.out, "Box heater", sum.heater_Wh / n);
  add(sheet.out, "Cables", (sum.inverter_cable_Wh + sum.main_cable_Wh) / n);
  add(sheet.out, "Resistance of the bank", (sum.resistance_Wh + sum.relaxing_Wh) / n);
  add(sheet.out, "Side reactions", sum.side_Wh / n);
  add(sheet.out, "Self-discharge", sum.self_discharge_Wh / n);
  add(sheet.out, "Left in store", -sum.drawn_from_store_Wh / n);
  double in = 0.0;
  for (const Entry& e : sheet.in) in += e.Wh;
  const bool kilo = in >= 10000.0;
  const double scale = kilo ? 1e-3 : 1.0;
  sheet.unit = kilo ? "kWh" : "Wh";
  sheet.decimals = kilo && in < 1e6 ? 1 : 0;
  const double quantum = sheet.decimals == 1 ? 0.1 : 1.0;
  sheet.total = std::round(in * scale / quantum) * quantum;
  round_to_total(sheet.in, sheet.total, scale, quantum);
  round_to_total(sheet.out, sheet.total, scale, quantum);
  sheet.charged = sum.charged_Wh / n * scale;
  sheet.discharged = sum.discharged_Wh / n * scale;
  return sheet;
}

/// Heights of the labels beside a column: as near to their blocks as a least pitch allows.
std::vector<double> label_places(const std::vector<double>& wanted, double top, double bottom, double pitch) {
  std::vector<double> at = wanted;
  for (std::size_t i = 0; i < at.size(); ++i) at[i] = std::max(at[i], i == 0 ? top : at[i - 1] + pitch);
  double limit = bottom;
  for (std::size_t i = at.size(); i-- > 0;) {
    at[i] = std::min(at[i], limit);
    limit = at[i] - pitch;
  }
  return at;
}

void column(Drawing& d, const std::vector<Entry>& entries, double x, const Scale& y, bool left,
            double label_x, const Sheet& sheet, const std::string& prefix, bool narrow) {
  constexpr double kThick = 22.0;
  static const char* const kFillings[] = {"solid", "hatched", "dotted", "plain"};
  std::vector<double> middles;
  double sum = 0.0;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const double top = y(sum), bottom = y(sum + entries[i].shown);
    const std::size_t filling = i % 4;
    d.box(x, top, kThick, bottom - top, "block");
    if (filling == 0) d.box(x, top, kThick, bottom - top, "block solid");
    if (filling == 1 || filling == 2) {
      d.raw(fmt::format(
          R"svg(<rect class="block" x="{}" y="{}" width="{}" height="{}" style="fill:url(#{}-{})"/>)svg",
          px(x), px(top), px(kThick), px(bottom - top), prefix, kFillings[filling]));
    }
    middles.push_back(0.5 * (top + bottom));
    sum += entries[i].shown;
  }
  const double pitch = narrow ? 30.0 : (left ? 32.0 : 19.0);
  const auto places = label_places(middles, y(0.0) + 6.0, std::max(y(sheet.total), y(0.0) + 6.0), pitch);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const double edge = left ? x : x + kThick;
    const double near = left ? label_x + 4.0 : label_x - 4.0;
    d.line(edge, middles[i], near, places[i], "lead");
    const std::string figure = fixed(entries[i].shown, sheet.decimals);
    if (left || narrow) {
      d.text(label_x, places[i] - 1.0, entries[i].name, left ? "end" : "start");
      d.text(label_x, places[i] + 12.0, figure, left ? "end" : "start", "second");
    } else {
      d.text(label_x, places[i] + 4.0, entries[i].name);
      d.text(label_x + 240.0, places[i] + 4.0, figure, "end", "second");
    }
  }
}

std::string drawn(const Sheet& sheet, bool narrow) {
  const double width = narrow ? 358.0 : 720.0;
  const double pitch = narrow ? 30.0 : 19.0;
  const double tall = std::max(narrow ? 260.0 : 250.0, pitch * static_cast<double>(sheet.out.size() + 1));
  const std::string prefix = narrow ? "ledger-narrow" : "ledger-wide";
  const std::string total = fixed(sheet.total, sheet.decimals) + "\u202F" + sheet.unit;
  Drawing d(width, tall + 48.0, narrow ? "narrow" : "wide",
            "Ledger of the mean season: in " + total + ", out " + total);
  d.raw(fmt::format(
      R"svg(<defs><pattern id="{0}-hatched" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="hatch" width="2" height="6"/></pattern><pattern id="{0}-dotted" width="6" height="6" patternUnits="userSpaceOnUse"><circle class="hatch" cx="3" cy="3" r="1.2"/></pattern></defs>)svg",
      prefix));
  const Scale y{0.0, std::max(sheet.total, 1e-9), 30.0, 30.0 + tall};
  const double in_x = narrow ? 82.0 : 150.0;
  const double out_x = narrow ? 178.0 : 410.0;
  d.text(narrow ? 0.0 : in_x + 22.0, 14, "In, " + total, narrow ? "start" : "end", "strong");
  d.text(narrow ? width : out_x, 14, "Out, " + total, narrow ? "end" : "start", "strong");
  d.line(in_x + 22.0, y(0.0), out_x, y(0.0), "lead");
  d.line(in_x + 22.0, y(sheet.total), out_x, y(sheet.total), "lead");
  const double through = std::min(sheet.charged, sheet.total);
  const double middle = 0.5 * (in_x + 22.0 + out_x);
  const double half = narrow ? 30.0 : 76.0;
  const double tall_bank = y(through) - y(0.0);
  const double bank_top = y(sheet.total) - tall_bank;
  if (through > 0.0) d.box(middle - half, bank_top, 2.0 * half, tall_bank, "outline");
  // The words stand inside their areas where these are high enough, else above the bank's box.
  const bool inside = tall_bank > 48.0;
  const double text_y = inside ? bank_top + 0.5 * tall_bank - 8.0 : bank_top - 36.0;
  const char* into = narrow ? " in" : " into the bank";
  const char* again = narrow ? " out" : " out again";
  d.text(middle, text_y, fixed(sheet.charged, sheet.decimals) + into, "middle", "strong");
  d.text(middle, text_y + 16.0, fixed(sheet.discharged, sheet.decimals) + again, "middle", "second");
  if (narrow && inside) d.text(middle, text_y + 32.0, "the bank", "middle", "second");
  column(d, sheet.in, in_x, y, true, in_x - 12.0, sheet, prefix, narrow);
  column(d, sheet.out, out_x, y, false, out_x + (narrow ? 32.0 : 36.0), sheet, prefix, narrow);
  return d.finish();
}

std::string table(const Sheet& sheet) {
  std::string out = fmt::format(
      R"(<table class="ledger"><thead><tr><th>In</th><th class="r">{0}</th><th>Out</th><th class="r">{0}</th></tr></thead><tbody>)",
      sheet.unit);
  const auto cell = [&](const std::vector<Entry>& entries, std::size_t i) {
    if (i >= entries.size()) return std::string("<td></td><td class=\"r\"></td>");
    return "<td>" + escaped(entries[i].name) + "</td><td class=\"r\">" +
           fixed(entries[i].shown, sheet.decimals) + "</td>";
  };
  for (std::size_t i = 0; i < std::max(sheet.in.size(), sheet.out.size()); ++i) {
    out += "<tr>" + cell(sheet.in, i) + cell(sheet.out, i) + "</tr>";
  }
  const std::string total = fixed(sheet.total, sheet.decimals);
  return out +
         fmt::format(
             R"(<tr class="sum"><td>Sum</td><td class="r">{0}</td><td>Sum</td><td class="r">{0}</td></tr></tbody></table>)",
             total);
}

}  // namespace

std::string ledger_chart(const advise::Trial& trial) {
  const Sheet sheet = sheet_of(trial);
  return "<figure>" + drawn(sheet, false) + drawn(sheet, true) + "</figure>" + table(sheet);
}

}  // namespace voltwright::files::report
