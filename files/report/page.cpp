#include "files/report/page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "files/report/markup.h"
#include "files/report/parts.h"
#include "files/report/slide.h"

namespace voltwright::files::report {

namespace {

std::string framed(std::string_view title, std::string_view style, std::string_view css_class,
                   std::string_view body) {
  std::string out =
      "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/><title>" +
      escaped(title) + "</title><style>";
  out += style;
  out += "</style></head>\n<body><main class=\"" + std::string(css_class) + "\">\n";
  out += body;
  return out + "</main></body></html>\n";
}

}  // namespace

std::string page(std::string_view title, std::string_view body) {
  return framed(title, style_sheet(), "sheet", body);
}

std::string slide_page(std::string_view title, std::string_view body) {
  return framed(title, std::string(style_sheet()) + std::string(teaching_style()) + slide_rules(),
                "sheet broad", body);
}

std::string page_head(std::string_view name, std::string_view line, std::string_view right) {
  return "<header class=\"head\"><div><h1>" + escaped(name) + "</h1><p>" + escaped(line) +
         "</p></div><p class=\"run\">" + escaped(right) + "</p></header>\n";
}

std::string block_of(const std::vector<BlockField>& fields) {
  std::string out = "<footer class=\"block\">";
  for (const BlockField& field : fields)
    out += "<div><small>" + escaped(field.name) + "</small>" + escaped(field.value) + "</div>";
  return out + "</footer>\n";
}

std::string caution_section(const std::vector<std::string>& cautions) {
  std::string out;
  int number = 0;
  for (const std::string& sentence : cautions) {
    const std::size_t end = sentence.find(". ");
    const bool has_more = end != std::string::npos;
    out += caution(++number, has_more ? sentence.substr(0, end + 1) : sentence,
                   has_more ? sentence.substr(end + 2) : "");
  }
  return section("Cautions", "", "<div class=\"cautions\">" + out + "</div>");
}

std::string cited(const std::string& text) {
  constexpr std::string_view kMark = "bib:";
  std::string out = text;
  for (std::size_t at = out.find(kMark); at != std::string::npos; at = out.find(kMark, at + 1)) {
    std::size_t end = at + kMark.size();
    while (end < out.size() && (std::isalnum(static_cast<unsigned char>(out[end])) != 0 || out[end] == '_'))
      ++end;
    out.insert(end, "]");
    out.replace(at, kMark.size(), "[");
  }
  constexpr std::string_view kDegrees = "degC";
  for (std::size_t at = out.find(kDegrees); at != std::string::npos; at = out.find(kDegrees, at))
    out.replace(at, kDegrees.size(), "°C");
  return out;
}

std::string works_list(const std::vector<std::string>& works) {
  std::vector<std::string> lines;
  for (const std::string& work : works) lines.push_back(cited(work));
  return list_of(lines, "works two");
}

std::string NumberedSources::mark(const std::string& source) {
  if (source.empty()) return {};
  const std::string text = cited(source);
  const auto found = std::find(sources_.begin(), sources_.end(), text);
  const auto at = static_cast<std::size_t>(found - sources_.begin());
  if (found == sources_.end()) sources_.push_back(text);
  return fmt::format(R"(<a class="src" href="#source{0}" aria-label="source {0}">[{0}]</a>)", at + 1);
}

std::string NumberedSources::section(const std::vector<std::string>& works) const {
  if (sources_.empty() && works.empty()) return {};
  std::string body = "<ol class=\"sources\">";
  for (std::size_t i = 0; i < sources_.size(); ++i)
    body += fmt::format(R"(<li id="source{}">{}</li>)", i + 1, escaped(sources_[i]));
  body += "</ol>";
  if (sources_.empty()) body.clear();
  if (!works.empty()) body += "<h3>Works named in brackets</h3>" + works_list(works);
  return report::section("Sources", "Numbers beside the figures lead here.", body);
}

}  // namespace voltwright::files::report
