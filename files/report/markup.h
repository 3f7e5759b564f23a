#pragma once
// Small pieces of HTML that every part of the report uses.
#include <string>
#include <string_view>
#include <vector>

#include "engine/advise/verdict.h"

namespace voltwright::files::report {

/// Text with the characters that mean something in HTML replaced, for content and attributes alike.
std::string escaped(std::string_view text);

/// A figure with its unit that never breaks at the end of a line; escaped.
std::string value_text(double value, std::string_view unit);

/// "12.3": fixed decimals, true minus, thousands separated.
std::string fixed(double value, int decimals);

/// The verdict: joint mark and word. Closed joint = holds, open = falls short, dotted = not known.
std::string verdict_mark(advise::Holding holding);

/// A boxed warning with its number.
std::string caution(int number, std::string_view title, std::string_view text);

/// A section: heading, a sentence on how to read it, body, and notes for the margin (may be empty).
std::string section(std::string_view title, std::string_view how_to_read, std::string_view body,
                    std::string_view margin = {});

/// A fold, closed on screen and open on paper.
std::string fold(std::string_view summary, std::string_view body);

/// The table behind a picture, folded on screen and left off paper.
std::string data_fold(std::string_view summary, std::string_view body);

/// A list of escaped texts; `css_class` on the list.
std::string list_of(const std::vector<std::string>& texts, std::string_view css_class);

}  // namespace voltwright::files::report
