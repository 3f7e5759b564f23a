#pragma once
// A claim as a flag on a scale: band = what is usual, wall = what is possible.
#include "files/report/axis.h"
#include "files/report/claim_lines.h"

namespace voltwright::files::report {

/// Where a scale stands and how large it is drawn.
struct ScalePlace {
  double x = 0.0, y = 0.0;  // left end of the axis
  double width = 0.0;       // of the axis; the unit stands to its right
  double size = 1.0;        // 1 = type of 11 and a band 9 high
};

/// Draws the scale of a line that has one; the same strokes on page and slide.
void draw_claim(Drawing& drawing, const ClaimLine& line, const ScalePlace& place);

/// What is read out instead: "114 Wh/kg; possible: at most 145 Wh/kg; holds".
std::string claim_summary(const ClaimLine& line);

/// The scale of a line as a picture for the table of a page.
std::string claim_picture(const ClaimLine& line);

}  // namespace voltwright::files::report
