#include "files/report/sky_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "engine/advise/wording.h"
#include "engine/units/month_names.h"
#include "files/report/axis.h"
#include "files/report/local_day.h"
#include "files/report/markup.h"
#include "files/report/page.h"

namespace voltwright::files::report {

namespace {

using advise::figure;

constexpr double kWide = 720.0;
constexpr double kNarrow = 358.0;
constexpr double kHeight = 200.0;

/// One whisker a month from low to high, a dot at the middle.
struct MonthChart {
  std::string summary;
  std::string unit;
  std::function<MonthSpread(const SkyPageMonth&)> of;
};

std::string drawn(const SkyPageInput& input, const MonthChart& chart, bool narrow) {
  const double width = narrow ? kNarrow : kWide;
  double low = 0.0;
  double high = 1.0;
  for (const SkyPageMonth& month : input.months) {
    const MonthSpread spread = chart.of(month);
    low = std::min(low, spread.low);
    high = std::max(high, spread.high);
  }
  Drawing d(width, kHeight, narrow ? "narrow" : "wide", chart.summary);
  const Scale x{0.0, 12.0, 52.0, width - 4.0};
  const Scale y{low, high, kHeight - 34.0, 20.0};
  for (const double tick : round_ticks(low, high, 5)) {
    d.line(x(0), y(tick), x(12), y(tick), tick == 0.0 ? "axis" : "grid5");
    d.text(46, y(tick) + 4, figure(tick), "end", "second");
  }
  d.text(46, 12, chart.unit, "end", "small second");
  for (std::size_t m = 0; m < input.months.size(); ++m) {
    const MonthSpread spread = chart.of(input.months[m]);
    const double at = x(static_cast<double>(m) + 0.5);
    d.path(fmt::format("M{0} {1}V{2}M{3} {1}H{4}M{3} {2}H{4}", px(at), px(y(spread.low)), px(y(spread.high)),
                       px(at - 5.0), px(at + 5.0)),
           "whisker");
    d.dot(at, y(spread.middle), 3.6, "ink");
    const std::string month = month_text(static_cast<unsigned>(m) + 1);
    d.text(at, kHeight - 14.0, narrow ? month.substr(0, 1) : month, "middle", "second");
  }
  return d.finish();
}

std::string picture(const SkyPageInput& input, const MonthChart& chart) {
  return "<figure>" + drawn(input, chart, false) + drawn(input, chart, true) + "</figure>";
}

std::string td(const std::string& text) { return "<td class=\"r\">" + escaped(text) + "</td>"; }

std::string month_cell(const SkyPageInput& input, std::size_t m) {
  return "<tr><td>" + escaped(month_text(static_cast<unsigned>(m) + 1)) + (input.months[m].own ? " *" : "") +
         "</td>";
}

std::string table_of(std::string_view heads, const std::string& rows) {
  return "<table class=\"ledger\"><thead><tr><th>Month</th>" + std::string(heads) + "</tr></thead><tbody>" +
         rows + "</tbody></table>";
}

std::string light_table(const SkyPageInput& input) {
  std::string rows;
  for (std::size_t m = 0; m < input.months.size(); ++m) {
    const SkyPageMonth& month = input.months[m];
    rows += month_cell(input, m) + td(fixed(month.clearness, 2)) + td(fixed(month.normal_kWh_m2_day, 2)) +
            td(fixed(month.turbidity, 1)) + td(fixed(month.panel_Wh_day.low, 0)) +
            td(fixed(month.panel_Wh_day.middle, 0)) + td(fixed(month.panel_Wh_day.high, 0)) + "</tr>";
  }
  return table_of(
      "<th class=\"r\">Clear</th><th class=\"r\">kWh/m2 a day</th><th class=\"r\">Haze</th><th "
      "class=\"r\">Low Wh</th><th class=\"r\">Middle Wh</th><th class=\"r\">High Wh</th>",
      rows);
}

std::string air_table(const SkyPageInput& input) {
  std::string rows;
  for (std::size_t m = 0; m < input.months.size(); ++m) {
    const SkyPageMonth& month = input.months[m];
    rows += month_cell(input, m) + td(fixed(month.mean_C, 1)) + td(fixed(month.daily_range_K, 1)) +
            td(fixed(month.coldest_C, 0)) + td(fixed(month.warmest_C, 0)) + td(fixed(month.wind_m_s, 1)) +
            "</tr>";
  }
  const bool own = std::any_of(input.months.begin(), input.months.end(), [](const auto& m) { return m.own; });
  return table_of(
             "<th class=\"r\">Mean °C</th><th class=\"r\">Range K</th><th class=\"r\">Coldest °C</th><th "
             "class=\"r\">Warmest °C</th><th class=\"r\">Wind m/s</th>",
             rows) +
         (own ? "<p class=\"sub\">* with figures of your own</p>" : "");
}

std::string sources_table(const SkyPageInput& input) {
  std::string rows;
  for (const SkyPageSource& source : input.sources) {
    rows += "<tr><td>" + escaped(source.use) + "</td><td>" + escaped(source.name) + "</td>" +
            td(figure(source.distance_km, "km")) + td(figure(source.height_m, "m")) +
            td(advise::percent(source.weight)) + "</tr>";
  }
  return "<table class=\"ledger\"><thead><tr><th>For</th><th>From</th><th class=\"r\">How far</th><th "
         "class=\"r\">Higher by</th><th class=\"r\">Counts</th></tr></thead><tbody>" +
         rows + "</tbody></table>";
}

std::string answer(const SkyPageInput& input) {
  const auto darkest =
      std::min_element(input.months.begin(), input.months.end(),
                       [](const auto& a, const auto& b) { return a.panel_Wh_day.low < b.panel_Wh_day.low; });
  const auto month = static_cast<unsigned>(darkest - input.months.begin()) + 1;
  return "<p class=\"say\">" +
         escaped(
             fmt::format("In {} a panel of {} here gives {} a day, less than {} in one year of ten; over the "
                         "year {}.",
                         units::kMonthNames.at(month - 1), figure(input.peak_W, "W"),
                         figure(darkest->panel_Wh_day.middle, "Wh"), figure(darkest->panel_Wh_day.low, "Wh"),
                         figure(input.panel_kWh_year.middle, "kWh"))) +
         "</p>";
}

}  // namespace

std::string sky_page(const SkyPageInput& input) {
  std::string body = page_head(input.place, input.position, "Sky of a place");
  body += answer(input);
  body += section(
      "What the panel gives a day",
      input.panel +
          fmt::format(" Dot: half of {} made years lie below. Whiskers: one in ten lies below the lower "
                      "end, one above the upper. Clear: light on the ground over light above the air; "
                      "kWh/m2: on the level, the long-term mean; haze: Linke turbidity.",
                      input.years),
      picture(input, {"Yield of the panel a day, by month", "Wh",
                      [](const SkyPageMonth& m) { return m.panel_Wh_day; }}) +
          light_table(input));
  const auto air = [](const SkyPageMonth& m) { return MonthSpread{m.coldest_C, m.mean_C, m.warmest_C}; };
  body +=
      section("Air",
              "Dot: mean of the month. Whiskers: coldest and warmest minute of all made years; a true record "
              "may lie further out. Range: from the lowest to the highest of a day.",
              picture(input, {"Air temperature by month", "°C", air}) + air_table(input));
  body += caution_section(
      {"Cold strings. The open-circuit voltage of modules in series rises in the cold: check it against the "
       "controller's limit with the local record, not with the coldest minute above.",
       "Roofs and wiring. Falls and direct current kill. Local codes and a licensed person decide where they "
       "say so."});
  body += section("Where the numbers come from", "",
                  sources_table(input) + "<p class=\"sub\">" + escaped(input.origin) + "</p>");
  body += block_of({{"Place", input.place},
                    {"Light in a year", figure(input.normal_kWh_m2_year, "kWh/m2")},
                    {"Coldest of a year", figure(input.coldest_C.middle, "°C")},
                    {"Warmest of a year", figure(input.warmest_C.middle, "°C")},
                    {"Seed", input.seed},
                    {"Engine", input.engine_version}});
  return page("Sky of " + input.place, body);
}

}  // namespace voltwright::files::report
