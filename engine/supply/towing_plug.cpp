#include "engine/supply/towing_plug.h"

#include <algorithm>

#include "engine/supply/dc_dc.h"

namespace voltwright::supply {

namespace {

// Blade fuses of road vehicles: 110 % of the rating is carried for 100 h, 135 % opens within minutes
// (ISO 8820-3, from memory).
constexpr double kFuseHolds = 1.10;
constexpr double kFuseOpens = 1.35;

void judge(const TowingPlug& plug, TowingCharge& charge) {
  charge.pin_overloaded = plug.pin_A > 0.0 && charge.current_A > plug.pin_A;
  charge.fuse = fuse_fate(plug.fuse_A, charge.current_A);
  if (charge.fuse == FuseFate::kOpens) charge.charges = false;
}

}  // namespace

FuseFate fuse_fate(double fuse_A, double current_A) {
  if (fuse_A <= 0.0 || current_A <= kFuseHolds * fuse_A) return FuseFate::kHolds;
  return current_A <= kFuseOpens * fuse_A ? FuseFate::kDoubtful : FuseFate::kOpens;
}

TowingCharge tow_direct(const TowingPlug& plug, double alternator_V, double alternator_A, double rest_V,
                        double bank_ohm) {
  const double lead_ohm = plug.loop_ohm + plug.contacts_ohm;
  TowingCharge charge;
  charge.current_A = std::clamp((alternator_V - rest_V) / (lead_ohm + bank_ohm), 0.0, alternator_A);
  charge.drop_V = lead_ohm * charge.current_A;
  charge.input_V = rest_V + bank_ohm * charge.current_A;
  charge.charges = charge.current_A > 0.0;
  judge(plug, charge);
  return charge;
}

TowingCharge tow_converter(const TowingPlug& plug, double alternator_V, double output_W, double efficiency,
                           double lock_out_V) {
  const double lead_ohm = plug.loop_ohm + plug.contacts_ohm;
  const DcDcInput input = dc_dc_input(alternator_V, lead_ohm, output_W, efficiency);
  TowingCharge charge;
  if (!input.possible) return charge;
  charge.current_A = input.current_A;
  charge.drop_V = lead_ohm * input.current_A;
  charge.input_V = input.input_V;
  charge.charges = output_W > 0.0 && input.input_V >= lock_out_V;
  judge(plug, charge);
  return charge;
}

}  // namespace voltwright::supply
