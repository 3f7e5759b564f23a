#include "files/report/claims_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "files/report/claim_lines.h"
#include "files/report/claim_scale.h"
#include "files/report/markup.h"
#include "files/report/page.h"

namespace voltwright::files::report {

namespace {

using claims::Finding;
using claims::Severity;

std::string small(const std::string& text) {
  return text.empty() ? "" : "<small>" + escaped(text) + "</small>";
}

std::string working_of(const ClaimLine& line, NumberedSources& sources) {
  std::string out;
  for (const Finding* f : {line.finding, line.beside}) {
    if (f == nullptr) continue;
    out += "<small class=\"working\">" + escaped(f->working) + " " + sources.mark(f->source) + "</small>";
  }
  return out;
}

std::string row_of(const ClaimLine& line, bool with_picture, NumberedSources& sources) {
  const Finding& f = *line.finding;
  std::string out =
      "<tr><td><b>" + escaped(f.claim) + "</b>" + small(worked_out_words(f)) + small(range_words(f));
  if (line.beside != nullptr) out += small(range_words(*line.beside));
  out += "</td>";
  if (with_picture) out += "<td>" + claim_picture(line) + "</td>";
  return out + "<td>" + severity_mark(f.severity) + "</td><td class=\"wide-text\">" + escaped(f.say) +
         working_of(line, sources) + "</td></tr>";
}

std::string lines_section(const std::vector<ClaimLine>& lines, bool with_picture, NumberedSources& sources) {
  std::string rows;
  for (const ClaimLine& line : lines) {
    if (line.has_scale() == with_picture) rows += row_of(line, with_picture, sources);
  }
  if (rows.empty()) return {};
  if (with_picture) {
    return section(
        "Claim by claim",
        "The flag is what the sheet says; the band is what others state, or what the claim was held against; "
        "the "
        "red wall is a limit of the chemistry or of arithmetic, hatched on the side beyond it; a ring is "
        "what the "
        "sheet's own figures give. The last column can be read to the client as it stands; below it stands "
        "the "
        "working.",
        "<table class=\"claims\"><thead><tr><th>Claim</th><th>Flag and band</th><th>Verdict</th><th>What to "
        "say, and the working</th></tr></thead><tbody>" +
            rows + "</tbody></table>");
  }
  return section(
      "To ask, and to know", "What the sheet leaves unsaid, and what means another thing than it seems to.",
      "<table class=\"changes asked\"><thead><tr><th>Claim</th><th>Verdict</th><th>What to say, and the "
      "working</th></tr></thead><tbody>" +
          rows + "</tbody></table>");
}

std::string ask_first(const std::vector<ClaimLine>& lines) {
  if (lines.empty() || lines.front().finding->severity < Severity::kDoubt) {
    return " Nothing on it excludes anything else.";
  }
  return " To ask about first: " + lines.front().finding->claim + ".";
}

std::string signs_key() {
  std::string out = "<p class=\"sub\">";
  const char* gap = "";
  for (const auto& [severity, words] :
       {std::pair{Severity::kHolds, "within what it is held against"},
        std::pair{Severity::kNote, "worth asking or knowing, nothing speaks against it"},
        std::pair{Severity::kDoubt, "ask for proof: beyond what was ever seen, or less than it seems"},
        std::pair{Severity::kContradiction, "cannot all be true together"}}) {
    out += gap + severity_mark(severity) + " " + escaped(words);
    gap = "; ";
  }
  return out + ".</p>";
}

std::string sheet_part(const ClaimsSheet& sheet, bool first, NumberedSources& sources) {
  const std::vector<ClaimLine> lines = claim_lines(*sheet.findings);
  std::string out = first ? "" : "<div class=\"next-sheet\"></div>";
  out += page_head("Claims", sheet.name, "sold as " + sheet.kind);
  out += "<p class=\"say\"><b>" + escaped(sheet.summary) + "</b>" + escaped(ask_first(lines)) + "</p>\n";
  if (first) out += signs_key();
  // One after the other: the sources are numbered as they are met.
  out += lines_section(lines, true, sources);
  out += lines_section(lines, false, sources);
  return out;
}

}  // namespace

std::string claims_page(const ClaimsInput& input) {
  NumberedSources sources;
  std::string body;
  for (const ClaimsSheet& sheet : input.sheets)
    body += sheet_part(sheet, &sheet == &input.sheets.front(), sources);
  body += caution_section(input.cautions);
  body += sources.section(input.works);
  const std::string what = input.sheets.size() == 1 ? input.sheets.front().name
                                                    : fmt::format("{} data sheets", input.sheets.size());
  body += block_of({{"Battery", what},
                    {"Sheet", "Claims"},
                    {"Mark of the data sheet", input.sheet_mark},
                    {"Catalogue", input.catalogue_mark},
                    {"Engine", input.engine_version},
                    {"Issue", input.issue}});
  return slide_page("Claims, " + what, body);
}

}  // namespace voltwright::files::report
