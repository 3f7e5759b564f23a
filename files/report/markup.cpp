#include "files/report/markup.h"

#include <fmt/format.h>

#include <cmath>

#include "engine/advise/wording.h"

namespace voltwright::files::report {

std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        // Control characters have no place in HTML; line breaks and tabs are blanks.
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return out;
}

std::string value_text(double value, std::string_view unit) {
  return "<span class=\"nb\">" + escaped(advise::figure(value, std::string(unit))) + "</span>";
}

std::string fixed(double value, int decimals) {
  std::string digits = fmt::format("{:.{}f}", std::fabs(value), decimals);
  const bool zero = digits.find_first_of("123456789") == std::string::npos;
  std::size_t at = digits.find('.');
  if (at == std::string::npos) at = digits.size();
  while (at > 3) {
    at -= 3;
    digits.insert(at, ",");
  }
  return value < 0.0 && !zero ? "\u2212" + digits : digits;
}

std::string verdict_mark(advise::Holding holding) {
  const char* kind = "holds";
  const char* drawing = R"(<path d="M0 6H13M13 0V12"/>)";
  if (holding == advise::Holding::kFallsShort) {
    kind = "short";
    drawing = R"(<path d="M0 6H6.5M13 0V12"/>)";
  } else if (holding == advise::Holding::kNotKnown) {
    kind = "unknown";
    drawing =
        R"(<path d="M0 6H12" stroke-dasharray="1.6 2.6"/><path d="M13 0V12" stroke-width="1.2" stroke-dasharray="2 2"/>)";
  }
  return fmt::format(
      R"(<span class="verdict {}"><svg class="joint" viewBox="0 0 16 12" aria-hidden="true">{}</svg>{}</span>)",
      kind, drawing, advise::name_of(holding));
}

std::string caution(int number, std::string_view title, std::string_view text) {
  return fmt::format(R"(<div class="caution"><b>Caution {}. {}</b>{}</div>)", number, escaped(title),
                     escaped(text));
}

std::string section(std::string_view title, std::string_view how_to_read, std::string_view body,
                    std::string_view margin) {
  std::string out = margin.empty() ? "<section class=\"wide\">" : "<section>";
  out += "<div class=\"main\"><h2>" + escaped(title) + "</h2>";
  if (!how_to_read.empty()) out += "<p class=\"sub\">" + escaped(how_to_read) + "</p>";
  out += body;
  out += "</div>";
  if (!margin.empty()) out += "<aside class=\"margin\">" + std::string(margin) + "</aside>";
  return out + "</section>\n";
}

std::string fold(std::string_view summary, std::string_view body) {
  return "<details><summary>" + escaped(summary) + "</summary>" + std::string(body) + "</details>\n";
}

std::string data_fold(std::string_view summary, std::string_view body) {
  return "<details class=\"data\"><summary>" + escaped(summary) + "</summary>" + std::string(body) +
         "</details>\n";
}

std::string list_of(const std::vector<std::string>& texts, std::string_view css_class) {
  std::string out = fmt::format("<ul class=\"{}\">", css_class);
  for (const std::string& text : texts) out += "<li>" + escaped(text) + "</li>";
  return out + "</ul>";
}

}  // namespace voltwright::files::report
