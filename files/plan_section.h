#pragma once
// One table of the plan file while it is read: typed access to its keys, with every problem noted and placed.
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/problem.h"
#include "engine/base/result.h"
#include "files/catalogue.h"
#include "files/gazetteer.h"
#include "files/toml_tree.h"

namespace voltwright::files {

/// What all sections share while one plan is read.
struct PlanReading {
  std::string file;
  const Catalogue& catalogue;
  const Gazetteer& gazetteer;
  bool complete = true;  // false: lines could not be read, so nothing counts as missing
  base::Problems problems;
  std::string start;  // day on which the journey is to begin instead; empty = as planned
  std::string moved;  // what moving it meant, in words
  std::string track;  // file from which the legs come; empty = from the plan
};

/// Allowed span of a value, both ends included, in words, and an example to offer when it is missing.
template <class Q>
struct Span {
  Q min;
  Q max;
  std::string_view words;
  std::string_view example;
};

template <class Q>
using Parser = base::Result<Q> (*)(std::string_view);

class Section {
 public:
  /// `path` names the section in problems: "load[2]"; empty for the top level.
  Section(PlanReading& reading, const TomlNode& table, std::string path)
      : reading_(&reading), table_(&table), path_(std::move(path)) {}

  /// The value of a key, null if absent. Asking makes the key known.
  const TomlNode* find(std::string_view key);
  bool has(std::string_view key) { return find(key) != nullptr; }
  /// Makes keys known that are not asked for in every case.
  void know(std::initializer_list<std::string_view> keys);

  /// Value with unit; absent or unreadable gives nothing, and unreadable is noted.
  template <class Q>
  std::optional<Q> value(std::string_view key, Parser<Q> parse, const Span<Q>& span) {
    const TomlNode* node = find(key);
    if (node == nullptr) return std::nullopt;
    const std::optional<std::string> text = value_text(key, *node, span.example);
    if (!text) return std::nullopt;
    base::Result<Q> result = parse(*text);
    if (!result) {
      note_parse_problems(key, *node, result.problems());
      return std::nullopt;
    }
    if (!(result.value() >= span.min && result.value() <= span.max)) {
      note_out_of_range(key, *node, *text, span.words);
      return std::nullopt;
    }
    return result.value();
  }

  /// As value(), and absence is noted.
  template <class Q>
  std::optional<Q> wanted(std::string_view key, Parser<Q> parse, const Span<Q>& span) {
    if (!has(key)) note_missing(key, span.example);
    return value(key, parse, span);
  }

  /// Overwrites `target` if the key is there and right.
  template <class Q, class T>
  void set(std::string_view key, Parser<Q> parse, const Span<Q>& span, T& target) {
    if (const std::optional<Q> v = value(key, parse, span)) target = *v;
  }

  /// As set(), and absence is noted.
  template <class Q, class T>
  void set_wanted(std::string_view key, Parser<Q> parse, const Span<Q>& span, T& target) {
    if (const std::optional<Q> v = wanted(key, parse, span)) target = *v;
  }

  std::optional<std::string> text(std::string_view key);
  std::optional<long long> whole(std::string_view key, long long min, long long max);
  std::optional<double> number(std::string_view key, double min, double max);
  std::optional<bool> flag(std::string_view key);
  /// Index of the word that stands there among `words`.
  std::optional<std::size_t> choice(std::string_view key, const std::vector<std::string>& words);
  /// A list of texts; "all" gives an empty list.
  std::vector<std::pair<std::string, const TomlNode*>> list_or_all(std::string_view key);

  std::optional<Section> section(std::string_view key);
  /// The tables of "[[key]]".
  std::vector<Section> sections(std::string_view key, std::size_t most);

  /// Notes every key that nobody asked for, with the nearest known one.
  void finish();

  /// Notes a problem at a value, at a key of this section, or at the section itself.
  base::Problem& note(const TomlNode& at, std::string_view key, std::string what);
  base::Problem& note(std::string_view key, std::string what);
  void note_missing(std::string_view key, std::string_view example);
  void warn(std::string_view key, std::string what, std::string remedy);

  PlanReading& reading() { return *reading_; }
  const TomlNode& table() const { return *table_; }
  std::string field(std::string_view key) const;

 private:
  std::optional<std::string> value_text(std::string_view key, const TomlNode& node, std::string_view example);
  void note_parse_problems(std::string_view key, const TomlNode& node, const base::Problems& problems);
  void note_out_of_range(std::string_view key, const TomlNode& node, const std::string& given,
                         std::string_view words);

  PlanReading* reading_;
  const TomlNode* table_;
  std::string path_;
  std::vector<std::string> known_;
};

/// What stands in a value, for messages: at most 60 bytes, cut at a character.
std::string shown(const TomlNode& node);
std::string shown(std::string_view text);

/// Whether the key `format` says that this program reads the file; noted if it is absent or another. `files`
/// says what kind of file it is, such as "plan files". An absent one counts as known.
bool format_is_known(Section& top, std::string_view files, int format);

}  // namespace voltwright::files
