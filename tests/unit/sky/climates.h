#pragma once
// Rounded monthly means of a few places for tests: clearness and temperature as averaged from CLIMAT reports,
// daily range, turbidity and wind rough values for the region (assumption).
#include <array>

#include "engine/sky/weather.h"

namespace voltwright::sky {

inline std::array<double, 12> all_months(double value) {
  std::array<double, 12> months{};
  months.fill(value);
  return months;
}

struct TestPlace {
  const char* name;
  Site site;
  MonthlyClimate climate;
};

inline TestPlace london() {
  return {"London",
          {51.51, -0.13, 20.0},
          {{.36, .37, .42, .46, .44, .44, .45, .45, .45, .40, .37, .36},
           {6, 6, 8, 11, 14, 17, 19, 19, 16, 13, 9, 6},
           {5, 6, 7, 8, 9, 9, 9, 9, 8, 7, 6, 5},
           {3.1, 3.5, 3.7, 3.7, 3.6, 3.5, 3.5, 3.7, 3.4, 3.3, 3.2, 3.0},
           all_months(4.0),
           true,
           ""}};
}

inline TestPlace madrid() {
  return {"Madrid",
          {40.42, -3.70, 667.0},
          {{.49, .51, .53, .55, .57, .61, .66, .65, .60, .55, .51, .49},
           {6, 8, 11, 14, 18, 23, 26, 26, 22, 16, 10, 7},
           {9, 11, 12, 12, 13, 15, 16, 15, 13, 10, 9, 8},
           {2.8, 3.0, 3.4, 3.3, 3.7, 3.8, 3.6, 3.7, 3.3, 3.1, 2.9, 2.8},
           all_months(3.0),
           true,
           ""}};
}

inline TestPlace singapore() {
  return {"Singapore",
          {1.29, 103.85, 15.0},
          {{.49, .56, .52, .50, .49, .49, .49, .51, .48, .47, .44, .43},
           {27, 27, 28, 28, 29, 29, 28, 28, 28, 28, 27, 27},
           all_months(7.0),
           all_months(4.2),
           all_months(2.0),
           true,
           ""}};
}

inline TestPlace cape_town() {
  return {"Cape Town",
          {-33.93, 18.42, 40.0},
          {{.66, .66, .63, .61, .56, .54, .57, .56, .57, .61, .62, .64},
           {22, 22, 20, 18, 16, 13, 13, 13, 15, 17, 19, 21},
           {11, 11, 11, 11, 10, 9, 10, 9, 9, 10, 10, 10},
           all_months(3.2),
           all_months(5.0),
           true,
           ""}};
}

/// Polar night from November to January has no clearness.
inline TestPlace tromso() {
  return {"Tromso",
          {69.65, 18.96, 10.0},
          {{0, .36, .45, .48, .46, .45, .44, .43, .40, .35, 0, 0},
           {-3, -3, -2, 1, 6, 10, 13, 12, 8, 4, 0, -2},
           {5, 5, 6, 6, 6, 6, 6, 6, 5, 5, 5, 5},
           all_months(3.1),
           all_months(3.0),
           true,
           ""}};
}

}  // namespace voltwright::sky
