#include "files/plan_section.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "files/suggest.h"

namespace voltwright::files {
namespace {

constexpr std::size_t kLongestText = 20'000;

std::string number_text(const TomlNode& node) {
  return node.kind == TomlKind::kWhole ? fmt::format("{}", node.whole) : fmt::format("{}", node.real);
}

bool is_number(const TomlNode& node) { return node.kind == TomlKind::kWhole || node.kind == TomlKind::kReal; }

std::string joined(const std::vector<std::string>& words, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? last : std::string_view(", ");
    out += '"' + words[i] + '"';
  }
  return out;
}

/// "solar[1].shade" as it is written in a file: "solar.shade".
std::string without_numbers(const std::string& field) {
  std::string plain;
  bool inside = false;
  for (const char c : field) {
    inside = inside || c == '[';
    if (!inside) plain += c;
    inside = inside && c != ']';
  }
  return plain;
}

}  // namespace

std::string shown(std::string_view text) {
  constexpr std::size_t kMost = 60;
  std::string out(text.substr(0, kMost));
  if (text.size() > kMost) {
    while (!out.empty() && (static_cast<unsigned char>(out.back()) & 0xC0U) == 0x80U) out.pop_back();
    if (!out.empty() && static_cast<unsigned char>(out.back()) >= 0xC0U) out.pop_back();
    out += " ...";
  }
  for (char& c : out) {
    if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) c = ' ';
  }
  return out;
}

std::string shown(const TomlNode& node) {
  switch (node.kind) {
    case TomlKind::kText:
      return shown(node.text);
    case TomlKind::kWhole:
    case TomlKind::kReal:
      return number_text(node);
    case TomlKind::kFlag:
      return node.flag ? "true" : "false";
    case TomlKind::kDate:
      return fmt::format("{:04}-{:02}-{:02}", node.year, node.month, node.day);
    case TomlKind::kTime:
      return fmt::format("{:02}:{:02}", node.second_of_day / 3600, node.second_of_day / 60 % 60);
    case TomlKind::kTable:
      return "a section";
    case TomlKind::kArray:
      return "a list";
    case TomlKind::kOther:
      break;
  }
  return "a date with a time";
}

const TomlNode* Section::find(std::string_view key) {
  know({key});
  const TomlMember* member = table_->member(key);
  return member == nullptr ? nullptr : &member->value;
}

void Section::know(std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (std::find(known_.begin(), known_.end(), key) == known_.end()) known_.emplace_back(key);
  }
}

std::string Section::field(std::string_view key) const {
  if (path_.empty()) return std::string(key);
  if (key.empty()) return path_;
  return fmt::format("{}.{}", path_, key);
}

base::Problem& Section::note(const TomlNode& at, std::string_view key, std::string what) {
  base::Problem problem;
  problem.where = {reading_->file, at.line, at.column};
  problem.field = field(key);
  problem.what = std::move(what);
  reading_->problems.push_back(std::move(problem));
  return reading_->problems.back();
}

base::Problem& Section::note(std::string_view key, std::string what) {
  const TomlMember* member = table_->member(key);
  return note(member == nullptr ? *table_ : member->value, key, std::move(what));
}

void Section::warn(std::string_view key, std::string what, std::string remedy) {
  base::Problem& problem = note(key, std::move(what));
  problem.severity = base::Severity::kWarning;
  problem.remedy = std::move(remedy);
}

void Section::note_missing(std::string_view key, std::string_view example) {
  if (!reading_->complete) return;
  base::Problem& problem = note(*table_, key, fmt::format("`{}` is missing.", key));
  if (!example.empty()) problem.remedy = fmt::format("Add {} = {}.", key, example);
}

void Section::note_out_of_range(std::string_view key, const TomlNode& node, const std::string& given,
                                std::string_view words) {
  base::Problem& problem = note(node, key, "The value lies outside what is possible here.");
  problem.given = shown(given);
  problem.limit = words;
}

void Section::note_parse_problems(std::string_view key, const TomlNode& node,
                                  const base::Problems& problems) {
  for (const base::Problem& p : problems) {
    base::Problem& noted = note(node, key, p.what);
    noted.given = shown(p.given);
    noted.limit = p.limit;
    noted.remedy = p.remedy;
  }
}

std::optional<std::string> Section::value_text(std::string_view key, const TomlNode& node,
                                               std::string_view example) {
  if (node.kind == TomlKind::kText) return node.text;
  if (is_number(node)) return number_text(node);
  if (node.kind == TomlKind::kTime) return shown(node);
  base::Problem& problem = note(node, key, "A value with its unit is wanted, written as a text.");
  problem.given = shown(node);
  if (!example.empty()) problem.remedy = fmt::format("Write {} = {}.", key, example);
  return std::nullopt;
}

std::optional<std::string> Section::text(std::string_view key) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind != TomlKind::kText) {
    base::Problem& problem = note(*node, key, "A text in quotes is wanted.");
    problem.given = shown(*node);
    return std::nullopt;
  }
  if (node->text.size() > kLongestText) {
    note(*node, key, "The text is too long.").limit = fmt::format("up to {} bytes", kLongestText);
    return std::nullopt;
  }
  return node->text;
}

std::optional<long long> Section::whole(std::string_view key, long long min, long long max) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::kWhole && node->whole >= min && node->whole <= max) return node->whole;
  base::Problem& problem = note(*node, key, "A whole number is wanted, without quotes and unit.");
  problem.given = shown(*node);
  problem.limit = fmt::format("{} to {}", min, max);
  return std::nullopt;
}

std::optional<double> Section::number(std::string_view key, double min, double max) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (is_number(*node) && std::isfinite(node->real) && node->real >= min && node->real <= max) {
    return node->real;
  }
  base::Problem& problem = note(*node, key, "A number is wanted, without quotes and unit.");
  problem.given = shown(*node);
  problem.limit = fmt::format("{} to {}", min, max);
  return std::nullopt;
}

std::optional<bool> Section::flag(std::string_view key) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::kFlag) return node->flag;
  base::Problem& problem = note(*node, key, "Yes or no is wanted, written true or false without quotes.");
  problem.given = shown(*node);
  return std::nullopt;
}

std::optional<std::size_t> Section::choice(std::string_view key, const std::vector<std::string>& words) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::kText) {
    const auto found = std::find(words.begin(), words.end(), node->text);
    if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  }
  base::Problem& problem =
      note(*node, key, fmt::format("\"{}\" is not one of the words for this.", shown(*node)));
  problem.limit = joined(words, " or ");
  const std::string near = node->kind == TomlKind::kText ? nearest_word(node->text, words) : std::string();
  if (!near.empty()) problem.remedy = fmt::format("Did you mean \"{}\"?", near);
  return std::nullopt;
}

std::vector<std::pair<std::string, const TomlNode*>> Section::list_or_all(std::string_view key) {
  std::vector<std::pair<std::string, const TomlNode*>> texts;
  const TomlNode* node = find(key);
  if (node == nullptr) return texts;
  if (node->kind == TomlKind::kText && node->text == "all") return texts;
  if (node->kind != TomlKind::kArray) {
    base::Problem& problem = note(*node, key, "A list of names is wanted, or \"all\".");
    problem.given = shown(*node);
    problem.remedy = fmt::format("Write {} = [\"...\", \"...\"].", key);
    return texts;
  }
  if (node->items.empty()) {
    note(*node, key, "The list is empty, so nothing could be chosen.").remedy =
        "Write \"all\", or name some.";
  }
  for (const TomlNode& item : node->items) {
    if (item.kind == TomlKind::kText) {
      texts.emplace_back(item.text, &item);
    } else {
      note(item, key, "A name in quotes is wanted.").given = shown(item);
    }
  }
  return texts;
}

std::optional<Section> Section::section(std::string_view key) {
  const TomlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::kTable) return Section(*reading_, *node, field(key));
  base::Problem& problem = note(*node, key, "A section with keys of its own is wanted.");
  problem.given = shown(*node);
  problem.remedy = node->kind == TomlKind::kArray ? fmt::format("There is one only: write [{}].", field(key))
                                                  : fmt::format("Write [{}].", field(key));
  return std::nullopt;
}

std::vector<Section> Section::sections(std::string_view key, std::size_t most) {
  std::vector<Section> found;
  const TomlNode* node = find(key);
  if (node == nullptr) return found;
  const bool all_tables = node->kind == TomlKind::kArray &&
                          std::all_of(node->items.begin(), node->items.end(),
                                      [](const TomlNode& n) { return n.kind == TomlKind::kTable; });
  if (!all_tables) {
    base::Problem& problem = note(*node, key, "There can be several of these, each in a section of its own.");
    problem.given = shown(*node);
    problem.remedy = fmt::format("Write [[{}]] in double brackets.", without_numbers(field(key)));
    return found;
  }
  if (node->items.size() > most) {
    base::Problem& problem = note(*node, key, "There are too many of these sections.");
    problem.given = fmt::format("{}", node->items.size());
    problem.limit = fmt::format("up to {}", most);
    return found;
  }
  for (std::size_t i = 0; i < node->items.size(); ++i) {
    found.emplace_back(*reading_, node->items[i], fmt::format("{}[{}]", field(key), i + 1));
  }
  return found;
}

void Section::finish() {
  for (const TomlMember& member : table_->members) {
    if (std::find(known_.begin(), known_.end(), member.key) != known_.end()) continue;
    TomlNode at;
    at.line = member.line;
    at.column = member.column;
    base::Problem& problem =
        note(at, shown(member.key), fmt::format("There is no key \"{}\" here.", shown(member.key)));
    const std::string near = nearest_word(member.key, known_);
    if (!near.empty()) {
      problem.remedy = fmt::format("Did you mean {}?", near);
    } else {
      std::string all;
      for (const std::string& word : known_) all += (all.empty() ? "" : ", ") + word;
      problem.limit = all;
    }
  }
}

bool format_is_known(Section& top, std::string_view files, int format) {
  const std::string wanted = std::to_string(format);
  const TomlNode* node = top.find("format");
  if (node == nullptr) {
    top.note_missing("format", wanted);
    return true;
  }
  if (node->kind == TomlKind::kWhole && node->whole == format) return true;
  base::Problem& problem =
      top.note(*node, "format", fmt::format("This program reads {} of format {}.", files, wanted));
  problem.given = shown(*node);
  problem.remedy = node->kind == TomlKind::kWhole ? "Take a newer version of the program."
                                                  : fmt::format("Write format = {}.", wanted);
  return false;
}

}  // namespace voltwright::files
