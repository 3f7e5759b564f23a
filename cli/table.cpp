#include "cli/table.h"

#include <algorithm>

namespace voltwright::cli {

namespace {

std::size_t shown_width(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::size_t have = shown_width(text);
  const std::string space(have < width ? width - have : 0, ' ');
  return align == Align::kRight ? space + text : text + space;
}

}  // namespace

std::string table(const std::vector<Column>& columns, const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const Column& column : columns) widths.push_back(shown_width(column.title));
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size() && i < widths.size(); ++i)
      widths[i] = std::max(widths[i], shown_width(row[i]));
  }
  std::string text;
  const auto line = [&](auto cell_of) {
    std::string row;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (i > 0) row += "  ";
      row += i + 1 == columns.size() && columns[i].align == Align::kLeft
                 ? cell_of(i)
                 : padded(cell_of(i), widths[i], columns[i].align);
    }
    while (!row.empty() && row.back() == ' ') row.pop_back();
    text += row + "\n";
  };
  line([&](std::size_t i) { return columns[i].title; });
  for (const auto& row : rows) line([&](std::size_t i) { return i < row.size() ? row[i] : std::string(); });
  return text;
}

std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
  std::string out;
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t space = text.find(' ', at);
    if (space == std::string::npos) space = text.size();
    const std::string word = text.substr(at, space - at);
    if (!line.empty() && shown_width(line) + 1 + shown_width(word) > width) {
      out += line + "\n";
      line = indent + word;
    } else {
      line += (line.empty() ? "" : " ") + word;
    }
    at = space + 1;
  }
  return out + line + "\n";
}

}  // namespace voltwright::cli
