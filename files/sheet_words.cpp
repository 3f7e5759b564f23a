// Claims said one by one, such as capacity=100 Ah, as one section of keys.
#include <algorithm>

#include "files/sheet_parts.h"

namespace voltwright::files {
namespace {

constexpr const char* kUnnamed = "Claims as said";

base::Problem problem_of(const std::string& name, int line, const std::string& said, const char* what,
                         const char* remedy) {
  base::Problem problem;
  problem.where = {name, line, 1};
  problem.what = what;
  problem.given = said;
  problem.remedy = remedy;
  return problem;
}

}  // namespace

TomlNode sheet_of_words(const std::vector<std::string>& claims, const std::string& name,
                        base::Problems& problems) {
  TomlNode node;
  int line = 0;
  for (const std::string& said : claims) {
    ++line;
    const std::size_t equals = said.find('=');
    if (equals == std::string::npos) {
      problems.push_back(problem_of(name, line, said, "A claim is a key and its value.",
                                    "Write it such as \"capacity=100 Ah\"."));
      continue;
    }
    const std::string key(trimmed(std::string_view(said).substr(0, equals)));
    const std::string_view value = trimmed(std::string_view(said).substr(equals + 1));
    if (node.member(key) != nullptr) {
      problems.push_back(problem_of(name, line, said, "This claim is made twice.", "Leave one."));
      continue;
    }
    const std::pair<int, int> place{line, static_cast<int>(equals) + 2};
    node.members.push_back({key, line, 1, sheet_value(key, value, place)});
  }
  if (node.member("name") == nullptr) {
    node.members.push_back({"name", 0, 0, sheet_value("name", kUnnamed, {0, 0})});
  }
  return node;
}

}  // namespace voltwright::files
