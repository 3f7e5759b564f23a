#pragma once
// How long a bank lasts, as a page and as a slide.
#include <string>
#include <vector>

#include "engine/advise/bank_life.h"

namespace voltwright::files::report {

/// A law's line in the table, in words where the numbers are told.
struct LifeRow {
  const advise::LawLife* law = nullptr;
  std::string basis, reach;
  double over_measured = 0.0;  // loss over that measured in a first year at rest; 0 = not held against it
};

struct LifeInput {
  std::string plan, bank;
  std::string sentence;
  advise::StatedLife at_80, at_70, plan_end;
  const advise::BankLife* life = nullptr;
  std::vector<LifeRow> rows;
  std::vector<std::string> assumptions, cautions;
  std::vector<std::string> works;  // formatted references
  std::string plan_mark, catalogue_mark, engine_version;
  std::string issue = "A";
};

/// HTML with inline style and pictures, no script, nothing loaded from elsewhere; every text is escaped.
std::string life_page(const LifeInput& input);

/// A self-contained SVG of 16 to 9: capacity against years by every law, the leading one with the band of all
/// doubt; dotted: laws that are not counted. Beside it the three dates and what makes it last.
std::string life_slide(const LifeInput& input);

/// The end of the plan in words for a table: "about 9 years (6 to 13)", "still carried at 60 %", "not now".
std::string plan_end_words(const LifeInput& input);

/// "1.5 times: cooler by 10 K".
std::string gain_words(const ageing::Gain& gain);

}  // namespace voltwright::files::report
