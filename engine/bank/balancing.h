#pragma once
// The fullest cell of a string runs ahead of the mean: it meets the upper limit first, and balancing bleeds
// it. See docs/method/protection.md.
#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {

/// Bank voltage if every cell stood as high as the fullest one [V]: what the protection's upper limit sees.
/// Beyond full the last slope of the open-circuit curve is continued.
template <class R>
R fullest_cell_V(const Parameters<R>& p, const State<R>& s, const R& bank_V) {
  using base::look_up;
  using L = base::Lanes<R>;
  if (!L::any(s.ahead > R(0.0))) return bank_V;
  const auto mean = look_up<R>(p.tables, &cell::Tables::ocv_V, s.charge);
  const auto top = look_up<R>(p.tables, &cell::Tables::ocv_V, s.charge + s.ahead);
  return bank_V + p.cells * (top.value - mean.value);
}

/// Takes charge from the fullest cell while it stands above the balancing voltage. What this costs is the
/// bled charge of one cell, too little to be booked.
template <class R>
void bleed(const Parameters<R>& p, State<R>& s, const R& fullest_V) {
  using L = base::Lanes<R>;
  if (!L::any(s.ahead > R(0.0))) return;
  const auto bleeding = fullest_V > p.balance_V * p.cells && p.balance_V > R(0.0);
  const R bled = p.bleed_A * p.step_s / (R(3600.0) * p.capacity_Ah);
  s.ahead = base::max_of<R>(s.ahead - L::select(bleeding, bled, R(0.0)), R(0.0));
}

}  // namespace voltwright::bank
