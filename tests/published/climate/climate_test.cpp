// Annual sums of the climate table against values published or computed independently.
#include "files/climate.h"

#include <gtest/gtest.h>

#include "files/daylight.h"
#include "files/gazetteer.h"
#include "files/great_circle.h"

namespace voltwright::files {
namespace {

const ClimateTable& table() {
  static const ClimateTable climate = std::move(ClimateTable::built_in()).value();
  return climate;
}

const Gazetteer& places() {
  static const Gazetteer gazetteer = std::move(Gazetteer::built_in()).value();
  return gazetteer;
}

/// kWh/m2 a year on the horizontal: clearness times the irradiation above the air.
double annual_kWh_m2(const sky::Site& site) {
  const auto climate = table().at(site);
  EXPECT_TRUE(climate.ok());
  if (!climate.ok()) return 0.0;
  const MonthlyDaylight daylight = monthly_daylight(site.latitude_deg);
  double sum = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    sum += climate.value().clearness[m] * daylight.horizontal_kWh_m2_day[m] * kDaysInMonth[m];
  }
  return sum;
}

struct City {
  const char* name;
  double kWh_m2;
  double tolerance;  // share
};

class AnnualSum : public testing::TestWithParam<City> {};

TEST_P(AnnualSum, OfACity) {
  const City& city = GetParam();
  const auto place = places().find(city.name);
  ASSERT_TRUE(place);
  const double sum = annual_kWh_m2(place->site);
  EXPECT_NEAR(sum, city.kWh_m2, city.tolerance * city.kWh_m2)
      << city.name << ": " << table().at(place->site).value().origin;
}

// Sums of the nearest CLIMAT station alone (DWD data, Angstrom-Prescott 0.25, 0.50), worked out separately
// from this program. The table averages up to four stations, so 10 % is allowed, the error of the method.
INSTANTIATE_TEST_SUITE_P(StationSunshine, AnnualSum,
                         testing::Values(City{"London", 1050, 0.10}, City{"De Bilt", 1111, 0.10},
                                         City{"Berlin", 1104, 0.10}, City{"Athens", 1724, 0.10},
                                         City{"Madrid", 1658, 0.10},
                                         City{"Las Palmas de Gran Canaria", 1823, 0.10},
                                         City{"Oslo", 962, 0.10}, City{"Cairo", 2075, 0.10},
                                         City{"Tokyo", 1412, 0.10}, City{"Sydney", 1693, 0.10},
                                         City{"Cape Town", 1899, 0.10}, City{"Bridgetown", 2088, 0.10},
                                         City{"Singapore", 1793, 0.10}, City{"Plymouth, GB", 1073, 0.10},
                                         City{"Brest, FR", 1183, 0.10}));

// Typical meteorological years of the US national laboratory (public domain), monthly means added up:
// Phoenix, Denver-Buckley, Greensboro TMY3; Chicago O'Hare, Miami TMY2. No sunshine is reported there, so the
// sums come from the daily range (Hargreaves), whose error is 10 to 15 %.
INSTANTIATE_TEST_SUITE_P(DailyRange, AnnualSum,
                         testing::Values(City{"Phoenix, US", 2094, 0.10}, City{"Denver, US", 1660, 0.15},
                                         City{"Greensboro, US", 1566, 0.10}, City{"Chicago, US", 1432, 0.10},
                                         City{"Miami, US", 1793, 0.10}));

TEST(SeaCell, GivesTheAtlasBack) {
  // Esbensen and Kushnir 1981: yearly mean net solar 181 W/m2 at 34 S 155 E and 207 W/m2 at 14 N 60 W, read
  // from the atlas; divided by 0.94 for the reflected part. 2 % for the neighbour cells and whole watts.
  EXPECT_NEAR(annual_kWh_m2({-34.0, 155.0, 0.0}), 181 * 8.76 / 0.94, 0.02 * 1690);
  EXPECT_NEAR(annual_kWh_m2({14.0, -60.0, 0.0}), 207 * 8.76 / 0.94, 0.02 * 1930);
}

TEST(Daylight, AgreesWithMonthlyMeans) {
  // Duffie and Beckman's equation with the series of Spencer 1971 and 1361.1 W/m2, means over the days of the
  // month, worked out separately; printed to three decimals.
  const auto at40 = monthly_daylight(40.0);
  EXPECT_NEAR(at40.horizontal_kWh_m2_day[5], 11.539, 0.0006);
  EXPECT_NEAR(at40.horizontal_kWh_m2_day[11], 3.828, 0.0006);
  EXPECT_NEAR(monthly_daylight(60.0).horizontal_kWh_m2_day[11], 0.650, 0.0006);
  EXPECT_NEAR(monthly_daylight(-35.0).horizontal_kWh_m2_day[0], 11.964, 0.0006);
  EXPECT_EQ(monthly_daylight(75.0).day_length_h[11], 0.0);
  EXPECT_DOUBLE_EQ(monthly_daylight(75.0).day_length_h[5], 24.0);
}

TEST(GreatCircle, LondonToParis) {
  // Haversine with 6371.0088 km, worked out separately: 343.77 km.
  EXPECT_NEAR(great_circle_km({51.5085, -0.1257, 0.0}, {48.8534, 2.3488, 0.0}), 343.77, 0.005);
  EXPECT_EQ(great_circle_km({10.0, 20.0, 0.0}, {10.0, 20.0, 0.0}), 0.0);
}

}  // namespace
}  // namespace voltwright::files
