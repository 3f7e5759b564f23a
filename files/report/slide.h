#pragma once
// What all slides share: their size, their style, and how a page shows the same picture.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "files/report/axis.h"

namespace voltwright::files::report {

inline constexpr double kSlideWidth = 1600.0;
inline constexpr double kSlideHeight = 900.0;

/// A slide of 16 to 9 without anything on it but its ground; `summary` is read out instead of the picture.
Drawing begin_slide(std::string_view summary);

/// The slide as a file of its own: white ground, dark ink.
std::string finish_slide(Drawing&& drawing);

/// The rules for slides on a page, in the page's own colours, light and dark. Part of its style sheet.
std::string slide_rules();

/// A figure of a page with the shapes and words of `svg`, which finish_slide() made.
std::string slide_figure(std::string_view svg, std::string_view how_to_read);

/// Breaks a text at blanks into lines of at most `most` letters, at least 1; a longer word is cut. What goes
/// beyond `most_lines` ends in an ellipsis.
std::vector<std::string> broken_lines(std::string_view text, std::size_t most, std::size_t most_lines);

/// The letters that surely fit into a width at a size of type, whichever of the fonts is there.
std::size_t letters_in(double width, double type_size);

}  // namespace voltwright::files::report
