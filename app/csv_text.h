#pragma once
// Texts as fields of a comma-separated table.
#include <string>

namespace voltwright::app {

/// Quoted for CSV; quotes inside are doubled.
inline std::string in_quotes(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

}  // namespace voltwright::app
