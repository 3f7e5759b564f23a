#pragma once
// What the pages share: the frame, the head, numbered sources, cautions, and the block with the marks.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace voltwright::files::report {

/// A whole page with its style; `body` is markup, `title` is not.
std::string page(std::string_view title, std::string_view body);

/// The same for a page that shows a slide: wider, with the rules for slides and for what stands on them.
std::string slide_page(std::string_view title, std::string_view body);

/// The head of a page: its name, a line below it, and a word on the right.
std::string page_head(std::string_view name, std::string_view line, std::string_view right);

struct BlockField {
  std::string_view name;
  std::string value;
};

/// The title block at the end of a page; six fields.
std::string block_of(const std::vector<BlockField>& fields);

/// Cautions, each a sentence that becomes its title and whatever follows it.
std::string caution_section(const std::vector<std::string>& cautions);

/// As a page cites and writes: "bib:key, 25 degC" becomes "[key], 25 °C".
std::string cited(const std::string& text);

/// Formatted references in two columns where there is room.
std::string works_list(const std::vector<std::string>& works);

/// Figures of a table name their source by number; the list follows at the end.
class NumberedSources {
 public:
  /// The mark of this source, "[3]", as a link to its line. Empty for an empty text.
  std::string mark(const std::string& source);
  /// All that were named, with the works that they name.
  std::string section(const std::vector<std::string>& works) const;

 private:
  std::vector<std::string> sources_;
};

}  // namespace voltwright::files::report
