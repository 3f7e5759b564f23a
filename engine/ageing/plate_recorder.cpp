#include "engine/ageing/plate_recorder.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/schiffer.h"

namespace voltwright::ageing {

namespace {
/// A little less than ten minutes, so that ten steps of a minute reach it whatever their rounding.
constexpr double kGathered_h = 9.99 / 60.0;
}  // namespace

PlateRecorder::PlateRecorder(const cell::PlateWear& wear, const base::Curve& rest_V, double cell_Ah)
    : wear_(&wear), rest_V_(&rest_V), cell_Ah_(cell_Ah) {}

void PlateRecorder::add(const PlateStep& step) {
  sums_.hours += step.hours;
  sums_.soc += step.soc * step.hours;
  sums_.temperature += step.temperature_C * step.hours;
  sums_.cell_V += step.cell_V * step.hours;
  if (step.discharge_per_h > 0.0) {
    const double drawn = step.discharge_per_h * step.hours;
    sums_.drawn += drawn;
    sums_.drawn_by_rate += drawn * step.discharge_per_h;
    sums_.drawn_by_root += std::sqrt(step.discharge_per_h) * step.hours;
  }
  if (sums_.hours < kGathered_h) return;
  weigh(sums_);
  sums_ = {};
}

void PlateRecorder::follow_charge(double soc, double hours) {
  const cell::PartialCharge& p = wear_->partial;
  if (soc >= p.full_soc) {
    if (!full_) use_.full_charges += 1.0;
    full_ = true;
    since_full_h_ = started_ = started_by_rate_ = bad_charges_ = 0.0;
    lowest_soc_ = peak_ = valley_ = soc;
    return;
  }
  full_ = false;
  since_full_h_ += hours;
  use_.longest_without_full_h = std::max(use_.longest_without_full_h, since_full_h_);
  lowest_soc_ = std::min(lowest_soc_, soc);
  peak_ = std::max(peak_, soc);
  if (peak_ - soc < p.charge_ends_after) {
    valley_ = std::min(valley_, soc);
    return;
  }
  if (peak_ - valley_ >= p.charge_ends_after) {
    const double bad = bad_charge(p, peak_);
    bad_charges_ += bad;
    use_.bad_charges += bad;
  }
  peak_ = valley_ = soc;
}

void PlateRecorder::weigh(const Sums& sums) {
  const cell::PartialCharge& p = wear_->partial;
  const double soc = std::clamp(sums.soc / sums.hours, 0.0, 1.0);
  const double temperature_C = sums.temperature / sums.hours;
  const double cell_V = sums.cell_V / sums.hours;
  use_.hours += sums.hours;
  follow_charge(soc, sums.hours);
  if (sums.drawn > 0.0) {
    if (started_ < p.start_share) {
      started_ += sums.drawn;
      started_by_rate_ += sums.drawn_by_rate;
    }
    layers_ = layered(wear_->acid, layers_, lowest_soc_, sums.drawn, p.reference_per_h);
    const double current = current_factor(p, started_by_rate_ / started_, bad_charges_);
    const double by_layers = layers_ * std::sqrt(p.reference_per_h) * sums.drawn_by_root;
    use_.drawn += sums.drawn;
    use_.weighted += partial_charge_weight(p, lowest_soc_, since_full_h_, current) * (sums.drawn + by_layers);
  }
  layers_ = mixed(wear_->acid, layers_, cell_V, temperature_C, cell_Ah_, sums.hours);
  const cell::GridCorrosion& g = wear_->corrosion;
  const double rest_V = base::curve_at(*rest_V_, soc, cell_V);
  const double potential_V = corrosion_potential_V(g, soc, cell_V - rest_V);
  const double speed = corrosion_speed(g, potential_V, temperature_C);
  if (potential_V < g.knee_V) {
    const double root = std::cbrt(speed);
    use_.slow_corrosion += 0.6 * speed * root * root * sums.hours;
  } else {
    use_.fast_corrosion += speed * sums.hours;
  }
}

PlateUse PlateRecorder::use() const {
  PlateRecorder ended = *this;
  if (ended.sums_.hours > 0.0) ended.weigh(ended.sums_);
  return ended.use_;
}

}  // namespace voltwright::ageing
