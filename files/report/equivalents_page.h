#pragma once
// What equals a battery that someone has, as a page and as a slide.
#include <string>
#include <vector>

#include "engine/advise/change.h"

namespace voltwright::files::report {

struct EquivalentRow {
  std::string name;
  const advise::Compared* compared = nullptr;
  std::vector<advise::Change> changes;  // empty for the incumbent
};

struct EquivalentsInput {
  const advise::SwapQuestion* question = nullptr;
  double target = 0.0;  // in the measure of the question
  EquivalentRow incumbent;
  std::vector<EquivalentRow> rows;
  std::vector<advise::LeftOut> left_out;
  std::vector<std::string> assumed;
  std::vector<std::string> cautions;
  std::vector<std::string> works;  // formatted references of the records
  std::string catalogue_mark, engine_version;
  std::string issue = "A";
};

/// HTML with inline style and pictures, no script, nothing loaded from elsewhere; every text is escaped. The
/// incumbent stands first in every table.
std::string equivalents_page(const EquivalentsInput& input);

/// A self-contained SVG of 16 to 9: the incumbent and up to eight equivalents with usable energy, mass, price
/// and energy over life (room or starting current in the place of mass where that is what was asked), as
/// figures with their spread and bars from zero.
std::string equivalents_slide(const EquivalentsInput& input);

/// "Equal by usable energy: at least 614 Wh, at a steady load of 60 W and 25 degC ...".
std::string equal_words(const EquivalentsInput& input);

}  // namespace voltwright::files::report
