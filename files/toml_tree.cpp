#include "files/toml_tree.h"

#include <algorithm>
#include <cstddef>
#include <exception>
#include <optional>
#include <utility>

// The library's own depth limit is raised only by deep inline values, which no file of ours needs.
#define TOML_EXCEPTIONS 0
#define TOML_HEADER_ONLY 1
#define TOML_MAX_NESTED_VALUES 16
// It asserts what it then reports as an error of the text, such as three brackets in a row.
#define TOML_ASSERT(expr) static_assert(true)
#include <toml++/toml.h>

namespace voltwright::files {
namespace {

constexpr int kMostBrokenLines = 20;
constexpr std::ptrdiff_t kMostPointsInLine = 200;

/// The text with line feeds only and without a byte order mark.
std::string with_line_feeds(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\r') {
      out += text[i];
    } else if (i + 1 >= text.size() || text[i + 1] != '\n') {
      out += '\n';
    }
  }
  return out;
}

void place(TomlNode& node, const toml::source_region& source) {
  node.line = static_cast<int>(source.begin.line);
  node.column = static_cast<int>(source.begin.column);
}

TomlNode converted(const toml::node& from);

void convert_table(const toml::table& table, TomlNode& node) {
  node.kind = TomlKind::kTable;
  for (const auto& [key, value] : table) {
    TomlMember member;
    member.key = std::string(key.str());
    member.line = static_cast<int>(key.source().begin.line);
    member.column = static_cast<int>(key.source().begin.column);
    member.value = converted(value);
    node.members.push_back(std::move(member));
  }
  const auto before = [](const TomlMember& a, const TomlMember& b) {
    return a.line != b.line ? a.line < b.line : a.column < b.column;
  };
  std::stable_sort(node.members.begin(), node.members.end(), before);
}

TomlNode converted(const toml::node& from) {
  TomlNode node;
  node.kind = TomlKind::kOther;
  place(node, from.source());
  if (const toml::table* table = from.as_table()) {
    convert_table(*table, node);
  } else if (const toml::array* array = from.as_array()) {
    node.kind = TomlKind::kArray;
    for (const toml::node& item : *array) node.items.push_back(converted(item));
  } else if (const auto* text = from.as_string()) {
    node.kind = TomlKind::kText;
    node.text = text->get();
  } else if (const auto* whole = from.as_integer()) {
    node.kind = TomlKind::kWhole;
    node.whole = whole->get();
    node.real = static_cast<double>(whole->get());
  } else if (const auto* real = from.as_floating_point()) {
    node.kind = TomlKind::kReal;
    node.real = real->get();
  } else if (const auto* flag = from.as_boolean()) {
    node.kind = TomlKind::kFlag;
    node.flag = flag->get();
  } else if (const auto* date = from.as_date()) {
    node.kind = TomlKind::kDate;
    node.year = date->get().year;
    node.month = date->get().month;
    node.day = date->get().day;
  } else if (const auto* time = from.as_time()) {
    node.kind = TomlKind::kTime;
    node.second_of_day = 3600 * time->get().hour + 60 * time->get().minute + time->get().second;
  }
  return node;
}

base::Problem at(const std::string& name, int line, int column, std::string what, std::string remedy) {
  base::Problem problem;
  problem.where = {name, line, column};
  problem.what = std::move(what);
  problem.remedy = std::move(remedy);
  return problem;
}

/// Byte range of a line counted from 1, without its line feed.
std::pair<std::size_t, std::size_t> line_range(const std::string& text, int line) {
  std::size_t begin = 0;
  for (int i = 1; i < line; ++i) {
    const std::size_t feed = text.find('\n', begin);
    if (feed == std::string::npos) return {text.size(), text.size()};
    begin = feed + 1;
  }
  return {begin, std::min(text.find('\n', begin), text.size())};
}

/// What forbids handing the text to the parser at all.
std::optional<base::Problem> unreadable(const std::string& text, const std::string& name) {
  int line = 1;
  std::size_t begin = 0;
  while (begin <= text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view row(text.data() + begin, end - begin);
    if (const std::size_t zero = row.find('\0'); zero != std::string_view::npos) {
      return at(name, line, static_cast<int>(zero) + 1, "The file holds bytes that are not text.",
                "Save the plan as UTF-8 text.");
    }
    if (std::count(row.begin(), row.end(), '.') > kMostPointsInLine) {
      return at(name, line, 1, "The line holds more than 200 points.", "Break it into several lines.");
    }
    begin = end + 1;
    ++line;
  }
  return std::nullopt;
}

/// Library wording as a sentence of ours.
base::Problem syntax_problem(const toml::parse_error& error, const std::string& name) {
  std::string detail(error.description());
  const std::string_view prefix = "Error while parsing ";
  if (detail.starts_with(prefix)) detail.erase(0, prefix.size());
  for (char& c : detail) {
    if (static_cast<unsigned char>(c) < 0x20) c = ' ';
  }
  if (detail.size() > 160) detail.resize(160);
  return at(name, static_cast<int>(error.source().begin.line), static_cast<int>(error.source().begin.column),
            "This line is not TOML (" + detail + ").",
            "Write key = value, with texts in double quotes, such as power = \"45 W\".");
}

void read_lines(std::string text, const std::string& name, TomlTree& tree) {
  int last_line = 0;
  for (int attempt = 0; attempt <= kMostBrokenLines; ++attempt) {
    toml::parse_result result = toml::parse(std::string_view(text));
    if (result) {
      convert_table(result.table(), tree.root);
      tree.root.line = 1;
      tree.root.column = 1;
      return;
    }
    const toml::parse_error& error = result.error();
    const int line = static_cast<int>(error.source().begin.line);
    // Only errors further down are news; one further up follows from a line taken out.
    if (line <= last_line) return;
    last_line = line;
    tree.complete = false;
    tree.problems.push_back(syntax_problem(error, name));
    const auto [begin, end] = line_range(text, line);
    const std::size_t first = text.find_first_not_of(" \t", begin);
    const bool is_header = first < end && text[first] == '[';
    if (begin == end || is_header) return;
    std::fill(text.begin() + static_cast<std::ptrdiff_t>(begin),
              text.begin() + static_cast<std::ptrdiff_t>(end), ' ');
  }
}

}  // namespace

const TomlMember* TomlNode::member(std::string_view key) const {
  for (const TomlMember& m : members) {
    if (m.key == key) return &m;
  }
  return nullptr;
}

TomlTree read_toml(std::string_view text, const std::string& name) {
  TomlTree tree;
  tree.root.line = 1;
  tree.root.column = 1;
  if (text.size() > kLongestToml) {
    tree.complete = false;
    tree.problems.push_back(at(name, 0, 0, "The file is longer than one million bytes.",
                               "A plan is a short text; keep measured data in files of their own."));
    return tree;
  }
  const std::string plain = with_line_feeds(text);
  if (std::optional<base::Problem> problem = unreadable(plain, name)) {
    tree.complete = false;
    tree.problems.push_back(std::move(*problem));
    return tree;
  }
  try {
    read_lines(plain, name, tree);
  } catch (const std::exception&) {
    tree.complete = false;
    tree.problems.push_back(
        at(name, 0, 0, "The file could not be read as TOML.", "Compare it with the example."));
  }
  return tree;
}

}  // namespace voltwright::files
