#include "engine/claims/equivalent.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/claims/claim_lab.h"
#include "engine/claims/rules.h"
#include "engine/units/figure.h"

namespace voltwright::claims {

namespace {

using units::figure;
using units::percent;

constexpr double kMeets = 0.95;  // rounding of whole sizes
constexpr double kSlow_h = 20.0;
constexpr double kQuick_h = 5.0;
constexpr const char* kReference = "agm";
constexpr double kLead_Wh_per_kg = 39.5;  // median of stated AGM batteries; for the warming only
constexpr double kOwn_Wh_per_kg = 110.0;  // median of stated iron-phosphate batteries; for the warming only

std::string shares(const char* when, const Compared& c, double lead_Ah) {
  return std::string(when) + " (" + figure(c.current_A, "A") + "): " + figure(c.own_usable_Wh, "Wh") +
         " against " + figure(c.lead_usable_Wh, "Wh") + " of " + figure(lead_Ah, "Ah") + " lead-acid";
}

/// Cells of the lead-acid battery that the other one stands in for: six for every 12 V.
int lead_cells(double nominal_V) {
  constexpr double kSystem_V = 12.0;
  constexpr int kCells = 6;
  return kCells * std::max(1, static_cast<int>(std::lround(nominal_V / kSystem_V)));
}

}  // namespace

Compared compare_with_lead(const Side& own, const Side& lead, double current_A) {
  Compared c;
  c.current_A = current_A;
  c.own_all_Wh =
      ClaimLab(own.chemistry, own.cells, own.capacity_Ah, own.Wh_per_kg).discharge(current_A).drawn_Wh();
  c.own_usable_Wh = own.depth * c.own_all_Wh;
  c.lead_usable_Wh =
      lead.depth *
      ClaimLab(lead.chemistry, lead.cells, lead.capacity_Ah, lead.Wh_per_kg).discharge(current_A).drawn_Wh();
  c.lead_Ah = lead.capacity_Ah * c.share();
  return c;
}

void check_equivalent(const Subject& s, Findings& findings) {
  const Sheet& sheet = s.sheet;
  const Kind* reference = s.evidence.kind(kReference);
  if (!sheet.replaces_lead_Ah || !sheet.capacity_Ah || !sheet.nominal_V || s.kind == nullptr || s.lead_acid ||
      !s.kind->chemistry.simulated || !s.series || reference == nullptr) {
    return;
  }
  const double lead_Ah = *sheet.replaces_lead_Ah;
  const Side own = {s.kind->chemistry, *s.series, *sheet.capacity_Ah,
                    sheet.usable_share.value_or(s.kind->chemistry.usable_depth),
                    s.Wh_per_kg.value_or(kOwn_Wh_per_kg)};
  const Side lead = {reference->chemistry, lead_cells(*sheet.nominal_V), lead_Ah,
                     reference->chemistry.usable_depth, kLead_Wh_per_kg};
  const Compared slow = compare_with_lead(own, lead, lead_Ah / kSlow_h);
  const Compared quick = compare_with_lead(own, lead, lead_Ah / kQuick_h);
  Finding f;
  f.id = "misleading.lead_equivalent";
  f.claim = "Replaces " + figure(lead_Ah, "Ah") + " of lead-acid";
  f.number = slow.lead_Ah;
  f.claimed = lead_Ah;
  f.unit = "Ah";
  f.most = std::max(slow.lead_Ah, lead_Ah * quick.share_of_all());
  f.source = "bank model at 25 °C; " + percent(lead.depth) + " of lead-acid and " + percent(own.depth) +
             " of this used: " + reference->practice_source;
  f.working = shares("20 h", slow, lead_Ah) + "; " + shares("5 h", quick, lead_Ah);
  const std::string stands_in = "By usable energy it stands in for about " + figure(slow.lead_Ah, "Ah") +
                                " of lead-acid when drawn slowly and " + figure(quick.lead_Ah, "Ah") +
                                " when drawn within five hours";
  if (slow.share() >= kMeets) {
    f.severity = Severity::kHolds;
    f.say = stands_in + ": the claim holds.";
  } else if (quick.share_of_all() >= kMeets) {
    f.severity = Severity::kNote;
    f.say = stands_in +
            ". The claim holds for quick or deep discharges only; compare by energy at your own load.";
  } else {
    f.severity = Severity::kDoubt;
    f.say = stands_in + ", and drawn to its very end within five hours for " +
            figure(lead_Ah * quick.share_of_all(), "Ah") +
            ". The claim counts ampere-hours that are not there.";
  }
  findings.push_back(std::move(f));
}

}  // namespace voltwright::claims
