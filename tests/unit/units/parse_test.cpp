// Source of the factors: the International System brochure (prefixes, hour, litre), the agreement of 1959
// (inch, foot, pound), ASTM B258 (wire gauge). Tolerance: relative 1e-12 unless a row says otherwise.
#include "engine/units/parse.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "engine/units/clock_text.h"
#include "engine/units/number.h"

namespace voltwright::units {
namespace {

template <class Q>
struct Good {
  const char* text;
  double coherent;
};

template <class Q>
void expect_values(base::Result<Q> (*parse)(std::string_view), const std::vector<Good<Q>>& rows) {
  for (const Good<Q>& row : rows) {
    const base::Result<Q> result = parse(row.text);
    ASSERT_TRUE(result.ok()) << row.text << ": " << base::to_text(result.problems().front());
    EXPECT_NEAR(result.value().in_coherent_unit(), row.coherent, std::abs(row.coherent) * 1e-12) << row.text;
  }
}

template <class Q>
std::string complaint(base::Result<Q> (*parse)(std::string_view), std::string_view text) {
  const base::Result<Q> result = parse(text);
  return result.ok() ? "read" : base::to_text(result.problems().front());
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

TEST(ParseUnits, ReadsEveryDimension) {
  expect_values<Power>(parse_power, {{"45 W", 45.0}, {"0,045 kW", 45.0}, {"45W", 45.0}, {"250 mW", 0.25}});
  expect_values<Energy>(parse_energy, {{"1 Wh", 3600.0}, {"1.2 kWh", 4.32e6}, {"2 MJ", 2e6}});
  expect_values<Charge>(parse_charge, {{"100 Ah", 360000.0}, {"2500 mAh", 9000.0}});
  expect_values<Voltage>(parse_voltage, {{"12.8 V", 12.8}, {"50 mV", 0.05}});
  expect_values<Current>(parse_current, {{"30 A", 30.0}, {"500 mA", 0.5}});
  expect_values<Resistance>(parse_resistance, {{"15 mohm", 0.015}, {"2 ohm", 2.0}, {"15 m\xCE\xA9", 0.015}});
  expect_values<Duration>(parse_duration, {{"90 s", 90.0},
                                           {"3 min", 180.0},
                                           {"6 h", 21600.0},
                                           {"2 days", 172800.0},
                                           {"1 week", 604800.0},
                                           {"12 months", 31557600.0},
                                           {"1 year", 31557600.0}});
  expect_values<Length>(
      parse_length, {{"4.2 m", 4.2}, {"150 cm", 1.5}, {"8 mm", 0.008}, {"1 ft", 0.3048}, {"2 in", 0.0508}});
  expect_values<Area>(parse_area, {{"35 mm2", 35e-6}, {"2,5 mm\xC2\xB2", 2.5e-6}});
  expect_values<Volume>(parse_volume, {{"60 L", 0.06}, {"0.06 m3", 0.06}});
  expect_values<Mass>(parse_mass, {{"95 kg", 95.0}, {"500 g", 0.5}, {"100 lb", 45.359237}});
  expect_values<TemperatureDifference>(parse_temperature_difference, {{"30 K", 30.0}});
  expect_values<HeatConductance>(parse_heat_conductance, {{"0.8 W/K", 0.8},
                                                          {"1,1 W/\xC2\xB0"
                                                           "C",
                                                           1.1}});
  expect_values<Fraction>(parse_fraction, {{"15 %", 0.15}, {"0.15", 0.15}, {"5%", 0.05}});
}

TEST(ParseUnits, ReadsTemperaturePoints) {
  EXPECT_DOUBLE_EQ(parse_temperature("18 degC").value().as_celsius(), 18.0);
  EXPECT_DOUBLE_EQ(parse_temperature("\xE2\x88\x92"
                                     "5 \xC2\xB0"
                                     "C")
                       .value()
                       .as_celsius(),
                   -5.0);
  EXPECT_NEAR(parse_temperature("212 degF").value().as_celsius(), 100.0, 1e-9);
  EXPECT_NEAR(parse_temperature("-40 \xC2\xB0"
                                "F")
                  .value()
                  .as_celsius(),
              -40.0, 1e-9);
}

TEST(ParseUnits, ReadsWireGaugeAsArea) {
  // ASTM B258 table: 10 AWG 5.261 mm2, 1/0 53.49, 4/0 107.2; the table is rounded to four digits.
  const std::vector<std::pair<const char*, double>> rows = {
      {"10 AWG", 5.261}, {"AWG 10", 5.261}, {"1/0 AWG", 53.49}, {"4/0 AWG", 107.2}, {"24 awg", 0.2047}};
  for (const auto& [text, area_mm2] : rows) {
    const base::Result<Area> area = parse_area(text);
    ASSERT_TRUE(area.ok()) << text;
    EXPECT_NEAR(as_square_millimetres(area.value()), area_mm2, area_mm2 * 5e-4) << text;
  }
  EXPECT_TRUE(holds(complaint(parse_area, "5/0 AWG"), "4/0 AWG to 40 AWG"));
  EXPECT_TRUE(holds(complaint(parse_area, "41 AWG"), "4/0 AWG to 40 AWG"));
  EXPECT_TRUE(holds(complaint(parse_area, "-1 AWG"), "4/0 AWG to 40 AWG"));
}

TEST(ParseUnits, ReadsSpacesAndGroups) {
  EXPECT_DOUBLE_EQ(as_watts(parse_power("3\xE2\x80\xAF"
                                        "000\xC2\xA0W")
                                .value()),
                   3000.0);
  EXPECT_DOUBLE_EQ(as_watts(parse_power("1 234 567 W").value()), 1234567.0);
  EXPECT_DOUBLE_EQ(as_watts(parse_power("  1.5e3   W ").value()), 1500.0);
  EXPECT_FALSE(parse_power("3 00 W").ok());
  EXPECT_FALSE(parse_power("3 000 0 W").ok());
}

TEST(ParseUnits, RefusesAmbiguousMarks) {
  const std::string text = complaint(parse_power, "1,000 W");
  EXPECT_TRUE(holds(text, "thousands or decimals")) << text;
  EXPECT_TRUE(holds(text, "Write 1000 or 1.000")) << text;
  EXPECT_TRUE(holds(complaint(parse_power, "1.000,5 W"), "more than one decimal mark"));
  EXPECT_TRUE(holds(complaint(parse_power, "1,000.5 W"), "thousands"));
  EXPECT_DOUBLE_EQ(as_watts(parse_power("0,125 kW").value()), 125.0);
}

TEST(ParseUnits, TellsWrongDimension) {
  const std::string text = complaint(parse_power, "5 Ah");
  EXPECT_TRUE(holds(text, "A power is wanted, such as 45 W; Ah is a charge.")) << text;
  EXPECT_TRUE(holds(complaint(parse_energy, "5 Ah"), "Ah is a charge"));
  EXPECT_TRUE(holds(complaint(parse_area, "6 mm"), "mm is a length"));
  EXPECT_TRUE(holds(complaint(parse_temperature_difference, "5 degC"), "degC is a temperature"));
  EXPECT_FALSE(parse_temperature("5 K").ok());
}

TEST(ParseUnits, TellsMissingAndMisspeltUnit) {
  EXPECT_TRUE(holds(complaint(parse_power, "45"), "Allowed: mW, W or kW"));
  EXPECT_TRUE(holds(complaint(parse_length, "4.2"), "a length is wanted, such as 4.2 m"));
  EXPECT_TRUE(holds(complaint(parse_energy, "3 kwh"), "Did you mean kWh?"));
  EXPECT_TRUE(holds(complaint(parse_power, "3 KW"), "Did you mean kW?"));
  EXPECT_TRUE(holds(complaint(parse_duration, "3 yeers"), "Did you mean years?"));
}

TEST(ParseUnits, NeverReadsWhatIsNotFinite) {
  for (const char* text :
       {"nan W", "inf W", "-inf W", "1e400 W", "NaN", "", " ", "W", "-", "+ W", ".", ",5.", "1e W", "--5 W",
        "0x10 W", "1e308 kW", "\xFF\xFE W", "1e-400 W", "99999999999999999999e999 W"}) {
    EXPECT_FALSE(parse_power(text).ok()) << text;
    EXPECT_FALSE(parse_fraction(text).ok() && !std::isfinite(as_fraction(parse_fraction(text).value())))
        << text;
  }
  EXPECT_FALSE(parse_energy("1e308 MWh").ok());
}

TEST(ParseUnits, ReadsMoneyInThePlansCurrency) {
  EXPECT_DOUBLE_EQ(as_money(parse_money("3000 EUR", "EUR").value()), 3000.0);
  EXPECT_DOUBLE_EQ(as_money(parse_money("EUR 3 000,50", "EUR").value()), 3000.5);
  EXPECT_DOUBLE_EQ(as_money(parse_money("\xE2\x82\xAC"
                                        "3000",
                                        "EUR")
                                .value()),
                   3000.0);
  EXPECT_DOUBLE_EQ(as_money(parse_money("$20", "AUD").value()), 20.0);
  EXPECT_FALSE(parse_money("$20", "EUR").ok());
  EXPECT_TRUE(
      holds(base::to_text(parse_money("3000 USD", "EUR").problems().front()), "counts in EUR, not in USD"));
  EXPECT_TRUE(holds(base::to_text(parse_money("3000", "EUR").problems().front()), "currency is missing"));
}

TEST(ParseUnits, ReadsRatesAnglesAndSlopes) {
  EXPECT_DOUBLE_EQ(as_hours(parse_duration_per_day("6 h/day").value()), 6.0);
  EXPECT_DOUBLE_EQ(as_hours(parse_duration_per_day("90 min per day").value()), 1.5);
  EXPECT_DOUBLE_EQ(parse_count_per_day("3 /day").value(), 3.0);
  EXPECT_DOUBLE_EQ(parse_count_per_day("14 times a week").value(), 2.0);
  EXPECT_TRUE(holds(complaint(parse_duration_per_day, "6 h"), "Did you mean 6 h/day?"));
  EXPECT_TRUE(holds(complaint(parse_count_per_day, "6"), "Did you mean 6 /day?"));
  EXPECT_DOUBLE_EQ(parse_angle_deg("30\xC2\xB0").value(), 30.0);
  EXPECT_DOUBLE_EQ(parse_direction_deg("south").value(), 180.0);
  EXPECT_DOUBLE_EQ(parse_direction_deg("WSW").value(), 247.5);
  EXPECT_NEAR(parse_per_kelvin("-0.35 %/K").value(), -0.0035, 1e-15);
  EXPECT_FALSE(parse_per_kelvin("-0.35 %").ok());
}

TEST(ParseClock, ReadsTimesAndWindows) {
  EXPECT_EQ(parse_clock("18:00").value(), 64800);
  EXPECT_EQ(parse_clock("24:00").value(), 86400);
  for (const char* text : {"24:01", "18", "18:60", "18:0", "a:b", "", "-1:00", "18:00 pm"}) {
    EXPECT_FALSE(parse_clock(text).ok()) << text;
  }
  const DayWindow night = parse_day_window("22:00-06:00").value();
  EXPECT_TRUE(night.contains(0));
  EXPECT_FALSE(night.contains(12 * 3600));
  EXPECT_TRUE(parse_day_window("18:00 \xE2\x80\x93 24:00").value().contains(86399));
  EXPECT_FALSE(parse_day_window("18:00-24:00").value().contains(0));
  EXPECT_TRUE(parse_day_window("all day").value().contains(43200));
  EXPECT_FALSE(parse_day_window("18:00-18:00").ok());
  EXPECT_FALSE(parse_day_window("18:00").ok());
}

}  // namespace
}  // namespace voltwright::units
