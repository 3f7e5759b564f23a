#pragma once
// Words for numbers in sentences: those of the units, and chances and times.
#include <string>

#include "engine/units/figure.h"

namespace voltwright::advise {

using units::figure;
using units::percent;

/// "3 of 100 seasons (1 % to 8.5 %)", "0 of 100 seasons, under 3.7 %", with the 95 % interval.
std::string chance_text(int events, int seasons, double low, double high);

/// "4 h", "50 min", "3 days".
std::string duration_text(double minutes);

}  // namespace voltwright::advise
