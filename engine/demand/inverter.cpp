#include "engine/demand/inverter.h"

namespace voltwright::demand {

double inverter_input_W(const Inverter& inverter, double output_W) {
  if (output_W <= 0.0) return inverter.off_when_unused ? 0.0 : units::as_watts(inverter.idle);
  const double rated_W = units::as_watts(inverter.rated);
  const double u = output_W / rated_W;
  return output_W + units::as_watts(inverter.idle) +
         rated_W * (inverter.linear_loss * u + inverter.quadratic_loss * u * u);
}

}  // namespace voltwright::demand
