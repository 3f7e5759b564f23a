#pragma once
// Numbers as text for sentences: enough digits, thousands separated, the unit after a narrow no-break space.
#include <string>

namespace voltwright::advise {

/// "1,485", "52", "4.7", "0.35": three significant digits, whole from 100 on, thousands with commas.
std::string figure(double value);

/// figure(value), narrow no-break space, unit.
std::string figure(double value, const std::string& unit);

/// "3 of 100 seasons (1 % to 8.5 %)", "0 of 100 seasons, under 3.7 %", with the 95 % interval.
std::string chance_text(int events, int seasons, double low, double high);

/// "4 h", "50 min", "3 days".
std::string duration_text(double minutes);

/// A percentage with two significant digits: "0.35 %", "4.2 %", "37 %".
std::string percent(double share);

}  // namespace voltwright::advise
