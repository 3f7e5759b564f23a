// Sun position against published positions.
#include "engine/sky/sun.h"

#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <cmath>
#include <initializer_list>

#include "engine/sky/angle.h"
#include "engine/sky/atmosphere.h"
#include "engine/sky/extraterrestrial.h"
#include "engine/sky/sun_day.h"
#include "engine/sky/transposition.h"

namespace voltwright::sky {
namespace {

double utc(int year, unsigned month, unsigned day, int hour, int minute, int second = 0) {
  using namespace std::chrono;
  const sys_days date{std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day}};
  return static_cast<double>(date.time_since_epoch().count()) * 86400.0 + hour * 3600.0 + minute * 60.0 +
         second;
}

double turn_difference(double a_deg, double b_deg) { return std::remainder(a_deg - b_deg, 360.0); }

struct Row {
  double latitude, longitude, utc_s;
  double reference_zenith, reference_azimuth;  // Reda and Andreas algorithm
  double zenith, azimuth;                      // PSA 2020
};

// Rows of the test tables of the MIT-licensed SolarPosition.jl, made there with the NREL algorithm (Reda and
// Andreas 2004) and with PSA 2020 (Blanco et al. 2020).
const std::initializer_list<Row> kRows{
    {45, 10, utc(2020, 10, 17, 12, 30), 57.782913, 204.918816, 57.78404054, 204.9167547},
    {45, 10, utc(2020, 10, 17, 12, 30, 10), 57.795380, 204.965102, 57.79650618, 204.96304003},
    {45, 10, utc(2020, 10, 17, 10, 30), 55.077501, 169.376721, 55.07928094, 169.37535422},
    {45, 10, utc(2020, 10, 17, 14, 30), 71.365070, 234.190500, 71.36560725, 234.1884117},
    {45, 10, utc(2020, 2, 29, 12, 30), 54.243379, 197.670100, 54.2464284, 197.67796274},
    {90, 10, utc(2020, 10, 17, 12, 30), 99.530514, 201.188706, 99.5321134, 201.18736969},
    {0, 10, utc(2020, 10, 17, 12, 30), 23.143171, 245.090653, 23.14258336, 245.08558596},
    {-90, 10, utc(2020, 10, 17, 12, 30), 80.474305, 338.811294, 80.47269943, 338.81263031},
    {-45, 10, utc(2020, 10, 17, 12, 30), 39.893464, 326.234467, 39.89146926, 326.23536385},
    {45, -15, utc(2020, 10, 17, 12, 30), 54.638527, 175.389314, 54.64020128, 175.38781378},
    {45, 180, utc(2020, 10, 17, 12, 30), 143.241135, 18.648171, 143.24299848, 18.64664538},
    {45, -180, utc(2020, 10, 17, 12, 30), 143.241135, 18.648171, 143.24299848, 18.64664538},
    {45, 10, utc(2020, 10, 17, 3, 30), 113.408090, 79.548681, 113.41028925, 79.54884709},
    {45, 10, utc(2020, 10, 17, 5, 50), 88.892268, 104.539898, 88.89443213, 104.54003062},
};

TEST(SunPosition, RepeatsThePublishedRowsOfItsAlgorithm) {
  for (const Row& row : kRows) {
    const SunPosition sun = sun_position(row.utc_s, {row.latitude, row.longitude, 0.0});
    EXPECT_NEAR(sun.zenith_deg, row.zenith, 1e-6) << row.latitude << ' ' << row.longitude << ' ' << row.utc_s;
    EXPECT_NEAR(turn_difference(sun.azimuth_deg, row.azimuth), 0.0, 1e-6) << row.latitude << ' ' << row.utc_s;
  }
}

TEST(SunPosition, StaysWithin0p01DegOfTheReferenceAlgorithm) {
  for (const Row& row : kRows) {
    const SunPosition sun = sun_position(row.utc_s, {row.latitude, row.longitude, 0.0});
    EXPECT_NEAR(sun.zenith_deg, row.reference_zenith, 0.01);
    EXPECT_NEAR(turn_difference(sun.azimuth_deg, row.reference_azimuth) * std::sin(radians(row.zenith)), 0.0,
                0.01);
  }
}

struct Place {
  const char* name;
  double latitude, longitude, utc_s, zenith, azimuth;
};

// Computed with the BSD-licensed pvlib-python implementation of Reda and Andreas 2004; printed to 4 digits.
const std::initializer_list<Place> kPlaces{
    {"Golden", 39.742476, -105.1786, utc(2026, 1, 15, 18, 0), 62.9372, 161.5752},
    {"Madrid", 40.4168, -3.7038, utc(2026, 6, 21, 12, 14), 16.9887, 177.9313},
    {"Tromso in summer", 69.6492, 18.9553, utc(2026, 6, 21, 22, 30), 86.8713, 356.3040},
    {"Tromso in winter", 69.6492, 18.9553, utc(2026, 12, 21, 11, 0), 93.1435, 184.0832},
    {"Nairobi", -1.2921, 36.8219, utc(2026, 3, 20, 9, 30), 2.8158, 64.6713},
    {"Sydney", -33.8688, 151.2093, utc(2026, 12, 21, 23, 0), 39.1506, 86.2333},
    {"Singapore", 1.3521, 103.8198, utc(2026, 9, 1, 5, 0), 7.0237, 9.8022},
    {"Ushuaia", -54.8019, -68.3030, utc(2026, 6, 21, 15, 30), 79.4780, 15.1516},
    {"London", 51.5074, -0.1278, utc(2026, 9, 23, 17, 30), 86.6792, 265.3570},
    {"Quito", -0.1807, -78.4678, utc(2026, 5, 5, 17, 0), 16.7799, 8.7771},
    {"mid-Atlantic", 28.0, -40.0, utc(2030, 11, 3, 14, 0), 43.5612, 171.7399},
};

TEST(SunPosition, StaysWithin0p01DegOfTheReferenceAroundTheWorld) {
  for (const Place& place : kPlaces) {
    const SunPosition sun = sun_position(place.utc_s, {place.latitude, place.longitude, 0.0});
    EXPECT_NEAR(sun.zenith_deg, place.zenith, 0.01) << place.name;
    EXPECT_NEAR(turn_difference(sun.azimuth_deg, place.azimuth) * std::sin(radians(place.zenith)), 0.0, 0.01)
        << place.name;
  }
}

TEST(SunPosition, FollowsTheWorkedExampleOfRedaAndAndreas) {
  // Reda and Andreas 2004, table A5.1: 2003-10-17 12:30:30 at UTC-7. 2003 lies before the years of PSA 2020,
  // so the almanac's series answers, within 0.02 deg.
  const SunPosition sun = sun_position(utc(2003, 10, 17, 19, 30, 30), {39.742476, -105.1786, 1830.14});
  const double apparent = sun.zenith_deg - refraction_deg(90.0 - sun.zenith_deg, 820.0, 11.0);
  EXPECT_NEAR(apparent, 50.11162, 0.02);
  EXPECT_NEAR(sun.azimuth_deg, 194.340241, 0.02);
  EXPECT_NEAR(degrees(std::acos(cos_incidence(50.11162, 194.340241, 30.0, 170.0))), 25.18700, 1e-4);
  EXPECT_NEAR(refraction_deg(39.872046, 820.0, 11.0), 0.016332, 1e-6);
}

TEST(SunPosition, RisesAndSetsOnTime) {
  // Times of the pvlib-python tests (NREL algorithm), Golden. They are those of the UTC days 2015-01-02 and
  // 2015-08-02; the August sunset of 02:13:58 UTC is therefore that of 1 August by local time. Years before
  // 2020 by the almanac's series.
  const Site golden{39.742476, -105.1786, 1830.0};
  const double rise_in_winter = utc(2015, 1, 2, 14, 21, 55);
  const double set_in_winter = utc(2015, 1, 2, 23, 47, 43);
  const double rise_in_summer = utc(2015, 8, 2, 12, 0, 27);
  const double set_in_summer = utc(2015, 8, 2, 2, 13, 58);
  const SunDay winter = sun_day(utc(2015, 1, 2, 19, 0), golden);
  EXPECT_NEAR(winter.rise_utc_s, rise_in_winter, 30.0);
  EXPECT_NEAR(winter.set_utc_s, set_in_winter, 30.0);
  EXPECT_NEAR(winter.noon_utc_s, utc(2015, 1, 2, 19, 4, 45), 30.0);
  EXPECT_NEAR(sun_day(utc(2015, 8, 2, 19, 0), golden).rise_utc_s, rise_in_summer, 30.0);
  EXPECT_NEAR(sun_day(utc(2015, 8, 1, 19, 0), golden).set_utc_s, set_in_summer, 30.0);
}

TEST(SunDay, KnowsPolarDayAndNight) {
  // Tromso has no sunrise on 21 December and no sunset on 21 June (any almanac); at the poles and on the
  // equator nothing breaks.
  const Site tromso{69.6492, 18.9553, 10.0};
  const SunDay night = sun_day(utc(2026, 12, 21, 11, 0), tromso);
  EXPECT_EQ(night.kind, DayKind::kPolarNight);
  EXPECT_EQ(night.day_length_h, 0.0);
  const SunDay day = sun_day(utc(2026, 6, 21, 11, 0), tromso);
  EXPECT_EQ(day.kind, DayKind::kPolarDay);
  EXPECT_EQ(day.day_length_h, 24.0);
  EXPECT_EQ(sun_day(utc(2026, 6, 21, 12, 0), {90.0, 0.0, 0.0}).kind, DayKind::kPolarDay);
  EXPECT_EQ(sun_day(utc(2026, 6, 21, 12, 0), {-90.0, 0.0, 0.0}).kind, DayKind::kPolarNight);
  EXPECT_EQ(sun_day(utc(2026, 3, 20, 12, 0), {0.0, 0.0, 0.0}).kind, DayKind::kOrdinary);
  // On the equator at the equinox the geometric day of 12 h is longer by twice 0.8333 deg of turning, 6.67
  // min.
  EXPECT_NEAR(sun_day(utc(2026, 3, 20, 12, 0), {0.0, 0.0, 0.0}).day_length_h, 12.0 + 2.0 * 0.8333 / 15.0,
              0.01);
}

TEST(SunPosition, KnowsPolarDayAndNight) {
  const Site tromso{69.6492, 18.9553, 10.0};
  for (int minute = 0; minute < 1440; minute += 5) {
    EXPECT_GT(sun_position(utc(2026, 12, 21, 0, minute), tromso).zenith_deg, 90.8333);
    EXPECT_LT(sun_position(utc(2026, 6, 21, 0, minute), tromso).zenith_deg, 90.0);
  }
}

TEST(Refraction, MatchesTheAlgorithmOfRedaAndAndreas) {
  // 1013.25 hPa, 12 degC; rows of the pvlib-python tests.
  struct Lift {
    double elevation, refraction;
  };
  for (const Lift& row : {Lift{0, 0.481186}, {1, 0.361013}, {4, 0.188614}, {6, 0.139391}, {10, 0.0897835}}) {
    EXPECT_NEAR(refraction_deg(row.elevation, 1013.25, 12.0), row.refraction, 1e-6) << row.elevation;
  }
}

TEST(Extraterrestrial, MatchesSpencer) {
  // Spencer 1971, recomputed independently.
  struct Day {
    int n;
    double factor;
  };
  for (const Day& day : {Day{1, 1.03505}, {80, 1.00790}, {172, 0.96744}, {266, 0.99305}, {355, 1.03412}}) {
    EXPECT_NEAR(distance_factor(day.n), day.factor, 1e-5) << day.n;
  }
  EXPECT_NEAR(extraterrestrial_W_m2(1), 1408.8, 0.05);
  EXPECT_NEAR(equation_of_time_min(1), -2.920, 1e-3);
  EXPECT_NEAR(equation_of_time_min(266), 7.624, 1e-3);
  EXPECT_NEAR(daily_declination_deg(1), -23.059, 1e-3);
  EXPECT_NEAR(daily_declination_deg(172), 23.452, 1e-3);
  EXPECT_NEAR(daily_declination_deg(355), -23.420, 1e-3);
}

TEST(Extraterrestrial, SumsOverMonthsOfTheYear) {
  // Monthly means in kWh/m2 and day by Spencer 1971 with 1361.1 W/m2, recomputed independently.
  struct Sums {
    double latitude;
    std::array<double, 5> kWh;  // January, March, June, September, December
  };
  struct Month {
    int first, last;
  };
  constexpr std::array<Month, 5> kMonths{{{1, 31}, {60, 90}, {152, 181}, {244, 273}, {335, 365}}};
  for (const Sums& row :
       {Sums{0, {10.043, 10.483, 9.267, 10.252, 9.888}}, Sums{20, {7.476, 9.652, 10.932, 9.935, 7.151}},
        Sums{40, {4.235, 7.666, 11.539, 8.431, 3.828}}, Sums{52, {2.209, 6.016, 11.457, 7.031, 1.821}},
        Sums{60, {0.971, 4.771, 11.327, 5.929, 0.650}}, Sums{-35, {11.964, 8.936, 4.378, 7.911, 12.235}}}) {
    for (std::size_t m = 0; m < kMonths.size(); ++m) {
      double sum = 0.0;
      for (int n = kMonths[m].first; n <= kMonths[m].last; ++n)
        sum += daily_extraterrestrial_Wh_m2(n, row.latitude);
      EXPECT_NEAR(sum / (kMonths[m].last - kMonths[m].first + 1) / 1000.0, row.kWh[m], 0.005)
          << row.latitude << ' ' << m;
    }
  }
}

TEST(AirMass, MatchesKastenAndYoung) {
  // Kasten and Young 1989, recomputed independently; pressure of the standard atmosphere.
  struct Mass {
    double zenith, mass;
  };
  for (const Mass& row : {Mass{20, 1.0637}, {45, 1.4126}, {60, 1.9943}, {75, 3.8129}, {85, 10.3058}}) {
    EXPECT_NEAR(air_mass(row.zenith), row.mass, 1e-4) << row.zenith;
  }
  EXPECT_NEAR(pressure_Pa(1500.0), 84556.0, 1.0);
}

}  // namespace
}  // namespace voltwright::sky
