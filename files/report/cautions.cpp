#include "engine/advise/caution.h"
#include "files/report/markup.h"
#include "files/report/parts.h"

namespace voltwright::files::report {

std::string cautions(const ReportInput& input) {
  const advise::Ranked* shown = shown_bank(input);
  int number = 0;
  std::string out;
  for (const advise::Caution& c : shown != nullptr ? advise::cautions_of(*input.plan, shown->trial)
                                                   : advise::usual_cautions(*input.plan)) {
    out += caution(++number, c.title, c.text);
  }
  for (const advise::Caution& c : input.sun_cautions) out += caution(++number, c.title, c.text);
  out +=
      "<p class=\"sub\">A planning aid. Local codes, the makers' instructions and a licensed person "
      "decide.</p>";
  return section("Cautions", "", "<div class=\"cautions\">" + out + "</div>");
}

}  // namespace voltwright::files::report
