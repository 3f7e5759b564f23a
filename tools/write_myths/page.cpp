#include "tools/write_myths/page.h"

#include <fmt/format.h>

#include <regex>
#include <sstream>

namespace voltwright::tools {

namespace {

constexpr const char* kFolder = "docs/handbook/myths/";
constexpr std::size_t kWidth = 110;

/// Whether a line may not end between two words: a figure stays with its unit.
bool sticks(const std::string& before, const std::string& word) {
  constexpr std::size_t kLongestUnit = 6;  // in bytes
  const bool figure = before.find_first_of("0123456789") != std::string::npos;
  return figure && word.size() <= kLongestUnit && word.find_first_of("0123456789(") == std::string::npos &&
         before.find_last_of(".:;,") != before.size() - 1;
}

/// Words that stay on one line.
std::vector<std::string> pieces_of(const std::string& text) {
  std::istringstream words(text);
  std::vector<std::string> pieces;
  std::string before;
  std::string word;
  while (words >> word) {
    if (sticks(before, word)) {
      pieces.back() += ' ' + word;
    } else {
      pieces.push_back(word);
    }
    before = word;
  }
  return pieces;
}

/// Breaks a paragraph at blanks; lines after the first begin with `indent` blanks.
std::string wrapped(const std::string& text, std::size_t indent) {
  std::string out;
  std::size_t column = 0;
  for (const std::string& piece : pieces_of(text)) {
    if (column > 0 && column + 1 + piece.size() > kWidth) {
      out += '\n' + std::string(indent, ' ');
      column = indent;
    } else if (column > 0) {
      out += ' ';
      ++column;
    }
    out += piece;
    column += piece.size();
  }
  return out + '\n';
}

std::string number_text(const app::Myth& myth) {
  return fmt::format("{:.{}f} {}", myth.value, myth.decimals, myth.unit);
}

/// A page of the method that a text names by its path, as a link from the handbook's pages.
std::string with_links(const std::string& text) {
  static const std::regex kPage("docs/method/([a-z_]+)[.]md");
  return std::regex_replace(text, kPage, "[$1](../../method/$1.md)");
}

std::string source_text(const app::MythSource& source) {
  return source.key.empty() ? with_links(source.note) : fmt::format("[{}] {}", source.key, source.note);
}

std::string page_of(const app::Myth& m) {
  std::string page = fmt::format("# {}\n\n", m.title);
  page += wrapped(fmt::format("**It is said:** {}", m.claim), 0) + '\n';
  page += wrapped(fmt::format("**{}.** {}",
                              m.verdict == app::MythVerdict::kWrong      ? "That is wrong"
                              : m.verdict == app::MythVerdict::kHalfTrue ? "That is half true"
                                                                         : "That mixes things up",
                              m.answer),
                  0);
  page += "\n## Working\n";
  for (const std::string& step : m.working) page += wrapped("- " + step, 2);
  page += "\n## When it is nearly true\n" + wrapped(m.nearly_true, 0);
  if (!m.caution.empty()) page += '\n' + wrapped("**Caution.** " + m.caution, 0);
  page += "\n## Sources\n";
  for (const app::MythSource& source : m.sources) page += wrapped("- " + source_text(source), 2);
  return page + "\n[All of them](README.md)\n";
}

constexpr const char* kOpening =
    "# What is often said, and the number\n\n"
    "Thirty claims about house batteries that one hears again and again, each with the number that puts it "
    "right, "
    "the\nworking, and when the claim is nearly true. The program computes every number from the catalogue's "
    "records with the\nsame engine that sizes a bank, and writes these pages; a test holds them to what it "
    "computes "
    "now. To write them again:\n\n"
    "    cmake --build --preset release --target write_myths\n\n"
    "The list itself is in `app/myths/`. Keys in square brackets are those of `catalogue/references.bib`. "
    "Whatever "
    "the data\nsheet of your part, the local code or a licensed person says goes first.\n";

constexpr const char* kChecks =
    "\n## Checks\n"
    "`tests/published/myths/myths_test.cpp`: every number against what was published or is common practice, "
    "and these "
    "pages\nas the program writes them now.\n";

std::string index_of(const std::vector<app::Myth>& list) {
  std::vector<std::string> families;  // in the order of their first entry
  for (const app::Myth& m : list) {
    bool known = false;
    for (const std::string& family : families) known = known || family == m.family;
    if (!known) families.push_back(m.family);
  }
  std::string page = kOpening;
  for (const std::string& family : families) {
    page += fmt::format("\n## {}\n\n| | Said | Verdict | Number |\n|--:|---|---|---|\n", family);
    for (const app::Myth& m : list) {
      if (m.family != family) continue;
      page += fmt::format("| {} | [{}]({}.md) | {} | {} |\n", m.number, m.title, m.id,
                          app::name_of(m.verdict), number_text(m));
    }
  }
  return page + kChecks;
}

}  // namespace

std::vector<WrittenPage> write_myths(const std::vector<app::Myth>& list) {
  std::vector<WrittenPage> pages;
  pages.push_back({std::string(kFolder) + "README.md", index_of(list)});
  for (const app::Myth& m : list) pages.push_back({kFolder + m.id + ".md", page_of(m)});
  return pages;
}

}  // namespace voltwright::tools
