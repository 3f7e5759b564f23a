#pragma once
// Aligned columns for a terminal.
#include <string>
#include <vector>

namespace voltwright::cli {

enum class Align { kLeft, kRight };

struct Column {
  std::string title;
  Align align = Align::kLeft;
};

/// Rows under their titles, two spaces between columns, the last column not padded. Widths count characters
/// as a terminal shows them (UTF-8).
std::string table(const std::vector<Column>& columns, const std::vector<std::vector<std::string>>& rows);

/// Breaks a paragraph at spaces so that no line is longer than `width`; later lines are indented.
std::string wrapped(const std::string& text, std::size_t width, const std::string& indent);

}  // namespace voltwright::cli
