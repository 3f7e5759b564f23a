#pragma once
// A TOML text as a plain tree with line and column of every key and value.
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/problem.h"

namespace voltwright::files {

enum class TomlKind { kTable, kArray, kText, kWhole, kReal, kFlag, kDate, kTime, kOther };

struct TomlMember;

/// One value. Only the fields of its kind are set.
struct TomlNode {
  TomlKind kind = TomlKind::kTable;
  int line = 0;
  int column = 0;
  std::string text;
  std::int64_t whole = 0;
  double real = 0.0;
  bool flag = false;
  int year = 0;  // kDate
  int month = 0;
  int day = 0;
  int second_of_day = 0;            // kTime
  std::vector<TomlMember> members;  // kTable, in the order of the text
  std::vector<TomlNode> items;      // kArray

  const TomlMember* member(std::string_view key) const;
};

struct TomlMember {
  std::string key;
  int line = 0;
  int column = 0;
  TomlNode value;
};

/// What was read. With problems the tree holds what could still be read, and `whole` is false: then something
/// may be missing from it only because its line could not be read.
struct TomlTree {
  TomlNode root;
  base::Problems problems;
  bool complete = true;
};

inline constexpr std::size_t kLongestToml = 1'000'000;

/// Reads TOML 1.0 of at most one million bytes, at most 16 brackets deep and at most 200 points in a line.
/// Lone carriage returns count as line ends; a byte order mark is skipped. Reads on behind a broken line, so
/// that several broken lines are reported at once. Never throws.
TomlTree read_toml(std::string_view text, const std::string& name);

}  // namespace voltwright::files
