#include "files/report/slide.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "files/report/markup.h"

namespace voltwright::files::report {

namespace {

// Dashes, shapes and words carry the meaning, so that it reads in grey print. $name stands for a colour.
constexpr std::string_view kRules = R"css(
svg.slide text{font-family:'Noto Sans','Liberation Sans','DejaVu Sans',Arial,sans-serif;font-size:17px;fill:$ink}
svg.slide .title{font-size:38px;font-weight:600}svg.slide .how{font-size:18px;fill:$ink2}
svg.slide .head{font-size:20px;font-weight:600}svg.slide .tick{font-size:16px;fill:$ink2}
svg.slide .name{font-size:22px;font-weight:600}svg.slide .plain{font-size:16px;fill:$ink2}
svg.slide .value{font-size:18px}svg.slide .soft{font-style:italic}svg.slide .points{font-size:16px}
svg.slide .none{font-size:16px;font-style:italic;fill:$ink2}svg.slide .big{font-size:28px;font-weight:600}
svg.slide .word{font-size:22px;font-weight:600}svg.slide .say{font-size:20px}
svg.slide .madder{fill:$madder}svg.slide .pencil{fill:$pencil}
svg.slide .paper{fill:$sheet}svg.slide .wash{fill:$wash}svg.slide .rule{stroke:$rule}
svg.slide .strong-rule{stroke:$ink;stroke-width:2}svg.slide .grid{stroke:$grid}
svg.slide .span{stroke:$ink;stroke-width:3}svg.slide .guess{stroke:$ink;stroke-width:3;stroke-dasharray:5 4}
svg.slide .then{stroke:$edge;stroke-width:3}
svg.slide .mark{fill:$sheet;stroke:$ink;stroke-width:2.4;stroke-linejoin:round}
svg.slide .wall{stroke:$madder;stroke-width:2.5}svg.slide .axis{stroke:$ink;stroke-width:1.6}
svg.slide .band{fill:$slate3;stroke:$slate;stroke-width:1.5}svg.slide .forbidden{stroke:$madder;stroke-width:1.5}
svg.slide .bar{fill:$slate2;stroke:$slate;stroke-width:1.5}svg.slide .bar-now{fill:$ink;stroke:$ink}
svg.slide .now{stroke:$ink;stroke-width:1.5;stroke-dasharray:2 4}
svg.slide .flag{fill:none;stroke:$ink;stroke-width:3}svg.slide .flag.full{fill:$ink}
svg.slide .flag.ask{stroke:$pencil;fill:$sheet}svg.slide .flag.bad{stroke:$madder;fill:$madder}
svg.slide .worked{fill:$sheet;stroke:$ink;stroke-width:2.4}
svg.slide .joint{fill:none;stroke:$ink;stroke-width:2.4}svg.slide .joint.ask{stroke:$pencil;stroke-linecap:butt}
svg.slide .joint.bad{stroke:$madder}
)css";

struct Colour {
  std::string_view name;
  std::string_view on_paper;
};

// Longer names first: one is the beginning of another.
constexpr std::array<Colour, 12> kColours = {{{"slate3", "#D3E1E2"},
                                              {"slate2", "#8FB3B9"},
                                              {"slate", "#2B5B68"},
                                              {"madder", "#A12A22"},
                                              {"pencil", "#626D72"},
                                              {"sheet", "#FFFFFF"},
                                              {"wash", "#F1F4F0"},
                                              {"rule", "#B4BDB7"},
                                              {"grid", "#DCE2DE"},
                                              {"edge", "#8A9490"},
                                              {"ink2", "#48565D"},
                                              {"ink", "#18242B"}}};

std::string rules(bool on_a_page) {
  std::string out(kRules);
  for (const Colour& colour : kColours) {
    const std::string name = "$" + std::string(colour.name);
    const std::string value =
        on_a_page ? "var(--" + std::string(colour.name) + ")" : std::string(colour.on_paper);
    for (std::size_t at = out.find(name); at != std::string::npos; at = out.find(name, at + value.size()))
      out.replace(at, name.size(), value);
  }
  return out;
}

bool begins_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

std::size_t letters_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_letter));
}

/// The bytes of the first `most` letters.
std::string_view first_letters(std::string_view text, std::size_t most) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (begins_letter(text[i]) && seen++ == most) return text.substr(0, i);
  }
  return text;
}

constexpr std::string_view kStyleFrom = "<style>";
constexpr std::string_view kStyleTo = "</style>";
constexpr std::string_view kStart = "<svg ";

}  // namespace

Drawing begin_slide(std::string_view summary) {
  Drawing d(kSlideWidth, kSlideHeight, "slide", summary);
  d.raw(std::string(kStyleFrom) + rules(false) + std::string(kStyleTo));
  d.box(0.0, 0.0, kSlideWidth, kSlideHeight, "paper");
  return d;
}

std::string finish_slide(Drawing&& drawing) {
  std::string text = std::move(drawing).finish();
  text.insert(kStart.size(), fmt::format(R"(xmlns="http://www.w3.org/2000/svg" width="{}" height="{}" )",
                                         px(kSlideWidth), px(kSlideHeight)));
  return text + "\n";
}

std::string slide_rules() { return rules(true); }

std::string slide_figure(std::string_view svg, std::string_view how_to_read) {
  std::string picture(svg.substr(0, svg.find_last_not_of('\n') + 1));
  const std::size_t from = picture.find(kStyleFrom);
  const std::size_t to = picture.find(kStyleTo);
  if (from != std::string::npos && to != std::string::npos) picture.erase(from, to + kStyleTo.size() - from);
  // Size and namespace are those of a file of its own; here the page decides.
  const std::size_t css_class = picture.find("class=");
  if (css_class != std::string::npos && css_class > kStart.size())
    picture.erase(kStart.size(), css_class - kStart.size());
  return "<figure class=\"slide\"><div class=\"pan\" tabindex=\"0\">" + picture + "</div><figcaption>" +
         escaped(how_to_read) + "</figcaption></figure>\n";
}

std::vector<std::string> broken_lines(std::string_view text, std::size_t most, std::size_t most_lines) {
  std::vector<std::string> lines(1);
  while (!text.empty()) {
    const std::size_t blank = text.find(' ');
    std::string_view word = text.substr(0, blank);
    text.remove_prefix(blank == std::string_view::npos ? text.size() : blank + 1);
    while (!word.empty()) {
      const std::size_t have = letters_of(lines.back());
      const std::size_t room = have == 0 ? most : (have + 1 < most ? most - have - 1 : 0);
      if (letters_of(word) <= room) {
        lines.back() += (have == 0 ? "" : " ") + std::string(word);
        break;
      }
      if (have == 0) {
        const std::string_view part = first_letters(word, std::max<std::size_t>(most, 1));
        lines.back() = part;
        word.remove_prefix(part.size());
      }
      lines.emplace_back();
    }
  }
  if (lines.size() > 1 && lines.back().empty()) lines.pop_back();
  if (lines.size() <= most_lines) return lines;
  lines.resize(std::max<std::size_t>(most_lines, 1));
  std::string& last = lines.back();
  if (letters_of(last) >= most) last = first_letters(last, most - 1);
  last += "…";
  return lines;
}

std::size_t letters_in(double width, double type_size) {
  // The widest of the fonts takes somewhat less than this for running text.
  constexpr double kWidest = 0.6;
  return static_cast<std::size_t>(std::max(1.0, width / (kWidest * type_size)));
}

}  // namespace voltwright::files::report
