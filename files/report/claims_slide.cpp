#include "files/report/claims_slide.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "files/report/claim_lines.h"
#include "files/report/claim_scale.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

using claims::Finding;
using claims::Severity;

constexpr double kLeft = 40.0;
constexpr double kRight = kSlideWidth - 40.0;
constexpr double kRowsFrom = 172.0;
constexpr double kRowsTo = 838.0;
constexpr double kClaim = 292.0;
constexpr double kScale = 624.0;
constexpr double kScaleWidth = 250.0;
constexpr double kSay = 984.0;
constexpr double kLine = 25.0;  // from one line of words to the next
constexpr double kPad = 16.0;
constexpr std::size_t kMany = 99;

struct Row {
  ClaimLine line;
  std::vector<std::string> claim, notes, say;
  double height = 0.0;
};

Row row_of(const ClaimLine& line) {
  const Finding& f = *line.finding;
  Row row;
  row.line = line;
  const double claim_width = (line.has_scale() ? kScale : kSay) - kClaim - 22.0;
  row.claim = broken_lines(f.claim, letters_in(claim_width, 22.0), 2);
  std::vector<std::string> notes = {worked_out_words(f), range_words(f)};
  if (line.beside != nullptr) notes.push_back(range_words(*line.beside));
  for (const std::string& note : notes) {
    if (note.empty()) continue;
    for (std::string& part : broken_lines(note, letters_in(claim_width, 16.0), 2))
      row.notes.push_back(std::move(part));
  }
  row.say = broken_lines(f.say, letters_in(kRight - kSay, 20.0), kMany);
  const double left =
      28.0 * static_cast<double>(row.claim.size()) + 21.0 * static_cast<double>(row.notes.size());
  const double right = kLine * static_cast<double>(row.say.size());
  constexpr double kPicture = 66.0;
  row.height = std::max({left, right, line.has_scale() ? kPicture : 0.0}) + kPad;
  return row;
}

void draw(Drawing& d, const Row& row, double top) {
  const Severity severity = row.line.finding->severity;
  const std::string css(class_of(severity));
  // The sign is drawn in a box of 22 by 12 and stands larger here.
  d.raw(fmt::format(R"x(<g transform="translate({} {}) scale(1.5)"><path class="joint {}" d="{}"/></g>)x",
                    px(kLeft), px(top + 12.0), css, sign_of(severity)));
  d.text(kLeft + 42.0, top + 28.0, claims::name_of(severity), "start",
         css == "bad" ? "word madder" : (css == "ask" ? "word pencil" : "word"));
  double y = top + 28.0;
  for (const std::string& text : row.claim) {
    d.text(kClaim, y, text, "start", "name");
    y += 28.0;
  }
  y -= 5.0;
  for (const std::string& text : row.notes) {
    d.text(kClaim, y, text, "start", "plain");
    y += 21.0;
  }
  draw_claim(d, row.line, {kScale, top + 42.0, kScaleWidth, 1.45});
  y = top + 27.0;
  for (const std::string& text : row.say) {
    d.text(kSay, y, text, "start", "say");
    y += kLine;
  }
}

std::string counted(const std::vector<ClaimLine>& lines, std::size_t from) {
  std::size_t holds = 0;
  for (std::size_t i = from; i < lines.size(); ++i)
    holds += lines[i].finding->severity == Severity::kHolds ? 1U : 0U;
  const std::size_t left = lines.size() - from;
  if (left == 0) return "";
  std::string text = fmt::format("{} more {} not shown", left, left == 1 ? "line" : "lines");
  text += holds == left ? (left == 1 ? "; it holds." : "; all of them hold.")
                        : fmt::format("; {} of them hold.", holds);
  return text;
}

}  // namespace

std::string claims_slide(const std::string& name, const std::string& summary,
                         const claims::Findings& findings) {
  const std::vector<ClaimLine> lines = claim_lines(findings);
  Drawing d = begin_slide("Claims of " + name + ". " + summary);
  d.text(kLeft, 62.0, broken_lines(name, letters_in(kRight - kLeft, 38.0), 1).front(), "start", "title");
  d.text(kLeft, 102.0, summary, "start", "say");
  d.text(kLeft, 150.0, "Verdict", "start", "tick");
  d.text(kClaim, 150.0, "Claim", "start", "tick");
  d.text(kScale, 150.0, "Flag: claim. Band: usual. Red: limit.", "start", "tick");
  d.text(kSay, 150.0, "What to say", "start", "tick");
  d.line(kLeft, kRowsFrom - 10.0, kRight, kRowsFrom - 10.0, "strong-rule");
  double top = kRowsFrom - 6.0;
  std::size_t shown = 0;
  for (const ClaimLine& line : lines) {
    const Row row = row_of(line);
    if (top + row.height > kRowsTo && shown > 0) break;
    draw(d, row, top);
    top += row.height;
    d.line(kLeft, top, kRight, top, "rule");
    ++shown;
  }
  d.text(kLeft, 866.0, counted(lines, shown), "start", "how");
  d.text(kLeft, 888.0,
         "A sheet was judged, not a battery. A doubt is a question and no accusation; only a capacity test "
         "tells what is inside.",
         "start", "how");
  return finish_slide(std::move(d));
}

}  // namespace voltwright::files::report
