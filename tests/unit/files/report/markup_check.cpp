#include "tests/unit/files/report/markup_check.h"

#include <utility>
#include <vector>

namespace voltwright::files {

namespace {

/// End of the tag that starts at `from`, quotes respected; npos if it never ends.
std::size_t tag_end(std::string_view html, std::size_t from) {
  bool quoted = false;
  for (std::size_t i = from; i < html.size(); ++i) {
    if (html[i] == '"') quoted = !quoted;
    if (!quoted && html[i] == '>') return i;
    if (!quoted && i > from && html[i] == '<') return std::string_view::npos;
  }
  return std::string_view::npos;
}

}  // namespace

std::string unbalanced(std::string_view html) {
  std::vector<std::string> open;
  for (std::size_t at = html.find('<'); at != std::string_view::npos; at = html.find('<', at + 1)) {
    const std::size_t end = tag_end(html, at);
    if (end == std::string_view::npos) return "tag does not end: " + std::string(html.substr(at, 40));
    const std::string_view tag = html.substr(at + 1, end - at - 1);
    const bool closing = tag.starts_with('/');
    if (tag.starts_with('!') || tag.ends_with('/')) continue;
    const std::string name(tag.substr(closing ? 1 : 0, tag.find_first_of(" \n") - (closing ? 1 : 0)));
    if (!closing) {
      open.push_back(name);
      if (name == "style") at = html.find("</style", at) - 1;
      continue;
    }
    const std::string wanted(tag.substr(1));
    if (open.empty() || open.back() != wanted) return "unexpected </" + wanted + ">";
    open.pop_back();
  }
  return open.empty() ? "" : "left open: " + open.back();
}

std::string visible_text(std::string_view html) {
  std::string out;
  bool in_tag = false;
  const std::size_t style_end = html.find("</style>");
  for (const char c : html.substr(style_end == std::string_view::npos ? 0 : style_end)) {
    if (c == '<') in_tag = true;
    if (!in_tag) out += c;
    if (c == '>') in_tag = false, out += ' ';
  }
  static const std::pair<std::string_view, std::string_view> kReferences[] = {
      {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}, {"&amp;", "&"}};
  for (const auto& [reference, plain] : kReferences) {
    for (std::size_t at = out.find(reference); at != std::string::npos; at = out.find(reference, at + 1))
      out.replace(at, reference.size(), plain);
  }
  return out;
}

}  // namespace voltwright::files
