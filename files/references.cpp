#include "files/references.h"

#include <algorithm>
#include <array>
#include <utility>

#include "files/embedded.h"

namespace voltwright::files {

namespace {

/// The text of a field of a BibTeX entry without its braces; empty if there is none.
std::string field_of(std::string_view entry, std::string_view name) {
  std::size_t at = 0;
  while ((at = entry.find(name, at)) != std::string_view::npos) {
    const std::size_t after = entry.find_first_not_of(" \t", at + name.size());
    const bool starts = at > 0 && (entry[at - 1] == ' ' || entry[at - 1] == ',' || entry[at - 1] == '\n');
    at += name.size();
    if (!starts || after == std::string_view::npos || entry[after] != '=') continue;
    const std::size_t open = entry.find_first_of("{0123456789", after);
    if (open == std::string_view::npos) return "";
    if (entry[open] != '{') {
      return std::string(entry.substr(open, entry.find_first_not_of("0123456789", open) - open));
    }
    int depth = 0;
    std::string text;
    for (std::size_t i = open; i < entry.size(); ++i) {
      const char c = entry[i];
      if (c == '{') {
        ++depth;
      } else if (c == '}') {
        if (--depth == 0) return text;
      } else {
        text += c;
      }
    }
    return text;
  }
  return "";
}

std::string_view bibliography() {
  const auto files = embedded_catalogue();
  const auto found = std::find_if(files.begin(), files.end(),
                                  [](const EmbeddedFile& f) { return f.name == "references.bib"; });
  return found == files.end() ? std::string_view() : found->bytes;
}

/// The entry with this key, from its "@" to before the next one.
std::string_view entry_of(std::string_view all, std::string_view key) {
  std::size_t at = 0;
  while ((at = all.find("\n@", at)) != std::string_view::npos) {
    const std::size_t brace = all.find('{', ++at);
    if (brace == std::string_view::npos) return {};
    const std::size_t comma = all.find(',', brace);
    const std::size_t end = all.find("\n@", at);
    if (comma != std::string_view::npos && all.substr(brace + 1, comma - brace - 1) == key) {
      return all.substr(at, end == std::string_view::npos ? end : end - at);
    }
  }
  return {};
}

/// The escapes of the bibliography as letters.
std::string as_letters(std::string text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 8> kLetters = {{{"\\\"a", "ä"},
                                                                                      {"\\\"o", "ö"},
                                                                                      {"\\\"u", "ü"},
                                                                                      {"\\\"U", "Ü"},
                                                                                      {"\\'o", "ó"},
                                                                                      {"\\'e", "é"},
                                                                                      {"\\_", "_"},
                                                                                      {"\\&", "&"}}};
  for (const auto& [escape, letter] : kLetters) {
    for (std::size_t at = text.find(escape); at != std::string::npos; at = text.find(escape, at + 1))
      text.replace(at, escape.size(), letter);
  }
  return text;
}

std::string line_of(std::string_view entry) {
  std::string authors = field_of(entry, "author");
  for (std::size_t at = authors.find(" and "); at != std::string::npos; at = authors.find(" and ")) {
    authors.replace(at, 5, "; ");
  }
  const std::string year = field_of(entry, "year");
  std::string line = authors.empty() ? "" : authors + (year.empty() ? ": " : " (" + year + "): ");
  line += field_of(entry, "title") + ".";
  for (const std::string_view name : {"journal", "booktitle", "institution", "publisher", "howpublished"}) {
    if (const std::string where = field_of(entry, name); !where.empty()) {
      line += " " + where;
      if (const std::string volume = field_of(entry, "volume"); !volume.empty()) line += " " + volume;
      line += ".";
      break;
    }
  }
  return as_letters(std::move(line));
}

bool in_a_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}

/// The keys of a text behind "bib:" or in brackets, appended where they are new.
void add_keys(std::string_view text, std::vector<std::string_view>& keys) {
  constexpr std::string_view kMark = "bib:";
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool bracket = text[at] == '[';
    if (!bracket && !text.substr(at).starts_with(kMark)) continue;
    const std::size_t from = at + (bracket ? 1 : kMark.size());
    std::size_t end = from;
    while (end < text.size() && in_a_key(text[end])) ++end;
    const std::string_view key = text.substr(from, end - from);
    if (key.empty() || (bracket && (end == text.size() || text[end] != ']'))) continue;
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  }
}

std::vector<std::string> keyed_lines(const std::vector<std::string_view>& keys) {
  std::vector<std::string> lines;
  for (const std::string_view key : keys) {
    for (const std::string& line : reference_lines(std::span(&key, 1)))
      lines.push_back("[" + std::string(key) + "] " + line);
  }
  return lines;
}

}  // namespace

std::vector<std::string> works_named_in(std::span<const std::string> texts) {
  std::vector<std::string_view> keys;
  for (const std::string& text : texts) add_keys(text, keys);
  return keyed_lines(keys);
}

std::vector<std::string> works_named_by_records(std::span<const std::string> records) {
  std::vector<std::string_view> keys;
  for (const std::string& record : records) {
    for (const EmbeddedFile& file : embedded_catalogue()) {
      if (file.name == record) add_keys(file.bytes, keys);
    }
  }
  return keyed_lines(keys);
}

std::vector<std::string> reference_lines(std::span<const std::string_view> keys) {
  std::vector<std::string> lines;
  const std::string_view all = bibliography();
  for (const std::string_view key : keys) {
    if (const std::string_view entry = entry_of(all, key); !entry.empty()) lines.push_back(line_of(entry));
  }
  return lines;
}

}  // namespace voltwright::files
