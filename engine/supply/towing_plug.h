#pragma once
// The charging lead through a towing plug: a long thin cable with contacts, a pin and a fuse. See
// docs/method/engine_side.md.

namespace voltwright::supply {

struct TowingPlug {
  double loop_ohm = 0.08;     // cable there and back
  double contacts_ohm = 0.0;  // plug, fuse holder and lugs, both ways
  double pin_A = 0.0;         // what the contact may carry; 0 = not known
  double fuse_A = 0.0;        // 0 = none
};

enum class FuseFate {
  kHolds,     // up to 1.1 times its rating
  kDoubtful,  // above: it may open after hours
  kOpens,     // above 1.35 times: within minutes
};

/// What a trailer's bank or converter gets through the plug.
struct TowingCharge {
  double current_A = 0.0;  // in the lead
  double drop_V = 0.0;     // along it
  double input_V = 0.0;    // at its far end
  bool charges = false;
  bool pin_overloaded = false;
  FuseFate fuse = FuseFate::kHolds;
};

/// What a blade fuse does at a steady current.
FuseFate fuse_fate(double fuse_A, double current_A);

/// A bank joined straight to the plug: I = (V_alt - E) / (R_lead + R_bank), nothing if negative, at most
/// `alternator_A`.
TowingCharge tow_direct(const TowingPlug& plug, double alternator_V, double alternator_A, double rest_V,
                        double bank_ohm);

/// A DC-DC converter behind the plug that gives `output_W`; it stops below `lock_out_V` at its input and the
/// fuse that opens stops it too. The numbers are those of its full output.
TowingCharge tow_converter(const TowingPlug& plug, double alternator_V, double output_W, double efficiency,
                           double lock_out_V);

}  // namespace voltwright::supply
