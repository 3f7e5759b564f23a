// The photovoltaic battery model of 1993.
#include "engine/cell/copetti.h"
#include "tests/published/cells/quantities.h"

namespace voltwright::published {

namespace {

cell::CopettiString string_of(Inputs& in) { return {in.number("ten_hour_Ah")}; }

cell::CopettiValue discharge(Inputs& in) {
  const auto string = string_of(in);
  const double exponent = in.number_or("exponent", cell::kCopettiDischargeExponent);
  return cell::copetti_discharge_V(string, in.number("charge"), in.number("current_A"),
                                   in.number("temperature_C"), exponent);
}

cell::CopettiValue charge(Inputs& in) {
  const auto string = string_of(in);
  return cell::copetti_charge_V(string, in.number("charge"), in.number("current_A"),
                                in.number("temperature_C"));
}

cell::CopettiValue capacity(Inputs& in) {
  const auto string = string_of(in);
  return cell::copetti_capacity_Ah(string, in.number("current_A"), in.number("temperature_C"));
}

cell::CopettiValue overcharge(Inputs& in) {
  const auto string = string_of(in);
  return cell::copetti_overcharge_V(string, in.number("current_A"), in.number("temperature_C"),
                                    in.number("hours"));
}

using OfCurrent = cell::CopettiValue (*)(const cell::CopettiString&, double, double);

Quantity of_current(OfCurrent function) {
  return [function](Inputs& in) {
    const auto string = string_of(in);
    return function(string, in.number("current_A"), in.number("temperature_C")).value;
  };
}

}  // namespace

Quantities copetti_quantities() {
  return {
      {"copetti_discharge_V", [](Inputs& in) { return discharge(in).value; }},
      {"copetti_discharge_valid", [](Inputs& in) { return yes(discharge(in).valid); }},
      {"copetti_charge_V", [](Inputs& in) { return charge(in).value; }},
      {"copetti_charge_valid", [](Inputs& in) { return yes(charge(in).valid); }},
      {"copetti_gassing_V", of_current(cell::copetti_gassing_V)},
      {"copetti_final_V", of_current(cell::copetti_final_V)},
      {"copetti_overcharge_V", [](Inputs& in) { return overcharge(in).value; }},
      {"copetti_gassing_charge", of_current(cell::copetti_gassing_charge)},
      {"copetti_time_constant_h",
       [](Inputs& in) {
         const auto string = string_of(in);
         return cell::copetti_time_constant_h(string, in.number("current_A")).value;
       }},
      {"copetti_capacity_Ah", [](Inputs& in) { return capacity(in).value; }},
      {"copetti_capacity_valid", [](Inputs& in) { return yes(capacity(in).valid); }},
      {"copetti_charge_efficiency",
       [](Inputs& in) {
         const auto string = string_of(in);
         return cell::copetti_charge_efficiency(string, in.number("charge"), in.number("current_A")).value;
       }},
  };
}

}  // namespace voltwright::published
